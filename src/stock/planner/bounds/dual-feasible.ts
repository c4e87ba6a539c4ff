/**
 * Dual-feasible functions for lengths: each gives sizes a weight so that whatever fits side by side into a length `room`
 * never weighs more than `holds(room)`. All but the last are superadditive, so a room holds its own weight. Sources:
 * S. Fekete and J. Schepers, New classes of fast lower bounds for bin packing problems (Mathematical Programming 91,
 * 2001): cut-off and steps; J. Carlier, F. Clautiaux and A. Moukrim, New reduction procedures and lower bounds for the
 * two-dimensional bin packing problem with fixed orientation (Computers & Operations Research 34, 2007; both from memory): halves, counting.
 */
export interface LengthWeight {
  readonly name: string;
  /** Weight of a size from 0 to the base length, whose own weight is at most 1. */
  readonly of: (size: number) => number;
  /** The most that sizes of the problem weigh together when they fit side by side into `room`. */
  readonly holds: (room: number) => number;
}

const superadditive = (name: string, of: (size: number) => number): LengthWeight => ({ name, of, holds: of });

export const plain = (base: number): LengthWeight => superadditive('the area', (x) => x / base);

/** Sizes over base − cut count whole, sizes below `cut` not at all; 0 < cut ≤ base/2. */
export const cutOff = (base: number, cut: number): LengthWeight =>
  superadditive('cut-off', (x) => (x > base - cut ? 1 : x < cut ? 0 : x / base));

/** x where (k+1)·x/base is whole, else ⌊(k+1)·x/base⌋/k. */
export const steps = (base: number, k: number): LengthWeight =>
  superadditive('steps', (x) => (((k + 1) * x) % base === 0 ? x / base : Math.floor(((k + 1) * x) / base) / k));

/** Whole steps of `unit` from 0 up to the half and, mirrored, from the base down to it; 0 < unit ≤ base/2. */
export function halves(base: number, unit: number): LengthWeight {
  const whole = Math.floor(base / unit);
  return superadditive('halves', (x) => {
    if (2 * x === base) return 0.5;
    if (2 * x > base) return 1 - Math.floor((base - x) / unit) / whole;
    return Math.floor(x / unit) / whole;
  });
}

/**
 * Depends on the sizes of the problem: each from `least` to base/2 counts one, a larger one as many as it drives out of
 * the base. `sizes` ascend, one for every blank and way it may lie. Undefined where nothing counts.
 */
export function counting(base: number, least: number, sizes: readonly number[]): LengthWeight | undefined {
  const sums: number[] = [0];
  for (const size of sizes) {
    if (size < least) continue;
    const sum = sums.at(-1)! + size;
    if (2 * size > base || sum > base) break;
    sums.push(sum);
  }
  const into = (room: number): number => {
    let [low, high] = [0, sums.length - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (sums[middle]! <= room) low = middle;
      else high = middle - 1;
    }
    return low;
  };
  const whole = into(base);
  if (whole === 0) return undefined;
  const of = (x: number): number => (2 * x > base ? whole - into(base - x) : x >= least ? 1 : 0) / whole;
  const large = [...new Set(sizes)].filter((size) => 2 * size > base);
  const holds = (room: number): number => {
    let best = into(room) / whole;
    for (const size of large) if (size <= room) best = Math.max(best, of(size) + into(room - size) / whole);
    return best;
  };
  return { name: 'counting', of, holds };
}
