/**
 * Raster points of one direction (G. Scheithauer and J. Terno, The G4-heuristic for the pallet loading problem, Journal
 * of the Operational Research Society 47, 1996, from memory): of all lengths that blanks side by side can have, those
 * that are left of the sheet beside some such length, rounded down to one. A best pattern with cuts at these exists.
 */
export interface Raster {
  /** Ascending; the last is the most that the sheet can hold. */
  readonly points: readonly number[];
  /** False where there are too many points, so that some are left out: a pattern is a good one then, perhaps not the best. */
  readonly complete: boolean;
}

/** So many sums are worked out; with more the raster is too fine to be complete. */
const MOST_SUMS = 4000;

/** `sizes`: of the blanks along this direction; `most`: how many points are wanted at most. */
export function rasterOf(length: number, sizes: readonly number[], most: number): Raster {
  const usable = [...new Set(sizes)].filter((size) => size <= length).sort((a, b) => a - b);
  const sums = sumsOf(length, usable);
  const points = sums === undefined ? fewSums(length, usable) : reduced(length, sums);
  const complete = sums !== undefined && points.length <= most;
  return { points: complete ? points : thinned(points, most), complete };
}

/** Every sum of sizes up to `length`, ascending, 0 included; undefined where there are too many. */
function sumsOf(length: number, sizes: readonly number[]): number[] | undefined {
  const known = new Set([0]);
  for (const size of sizes) {
    // A set hands out what is added while it is walked: so multiples of the size come too.
    for (const sum of known) {
      if (sum + size <= length) known.add(sum + size);
      if (known.size > MOST_SUMS) return undefined;
    }
  }
  return [...known].sort((a, b) => a - b);
}

/** The largest of the ascending `sums` up to `value`. */
function below(sums: readonly number[], value: number): number {
  let [low, high] = [0, sums.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (sums[middle]! <= value) low = middle;
    else high = middle - 1;
  }
  return sums[low]!;
}

const reduced = (length: number, sums: readonly number[]): number[] =>
  [...new Set(sums.map((sum) => below(sums, length - sum)))].filter((point) => point > 0).sort((a, b) => a - b);

/** Where there are too many sums: those of one size, of two sizes, and what these leave. */
function fewSums(length: number, sizes: readonly number[]): number[] {
  const known = new Set<number>(sizes);
  for (const size of sizes) {
    for (let sum = size; sum <= length; sum += size) {
      known.add(sum);
      for (const other of sizes) if (sum + other <= length) known.add(sum + other);
    }
  }
  return reduced(
    length,
    [...known].sort((a, b) => a - b),
  );
}

/** At most so many points, evenly chosen, the last one among them. */
function thinned(points: readonly number[], most: number): number[] {
  if (points.length <= most) return [...points];
  return Array.from({ length: most }, (_, i) => points[Math.floor(((i + 1) * points.length) / most) - 1]!);
}
