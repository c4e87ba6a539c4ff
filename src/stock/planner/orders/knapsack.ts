/** Knapsack tables over ascending points, 0 the first: the most that parts beside each other are worth, up to every point. */

/** One kind of part more, which may come again and again: a shorter table has it already. `before` may be `worth` itself. */
export function fill(worth: Float64Array, before: Float64Array, rest: Int32Array, price: number): void {
  for (let i = 0; i < worth.length; i++) {
    let best = before[i]!;
    const at = rest[i]!;
    if (at >= 0) {
      const sum = worth[at]! + price;
      if (sum > best) best = sum;
    }
    worth[i] = best;
  }
}

/** For each point the largest one up to what is left of it beside `size`, −1 where that does not fit. */
export function restBeside(points: readonly number[], size: number): Int32Array {
  const rests = new Int32Array(points.length).fill(-1);
  let rest = 0;
  for (let i = 0; i < points.length; i++) {
    const room = points[i]! - size;
    if (room < 0) continue;
    while (rest + 1 < points.length && points[rest + 1]! <= room) rest++;
    rests[i] = rest;
  }
  return rests;
}

/** The largest point up to what is left of a point beside a smaller one. */
export function pointBeside(points: readonly number[], at: number, part: number): number {
  const room = points[at]! - points[part]!;
  let [low, high] = [0, at];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (points[middle]! <= room) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Fills `total` by `parts`, which ascend and are points with their worth; returns how many sums were compared. */
export function join(
  points: readonly number[],
  worth: Float64Array,
  parts: readonly number[],
  total: Float64Array,
): number {
  total.fill(0);
  let compared = 0;
  for (const part of parts) {
    const [value, size] = [worth[part]!, points[part]!];
    let rest = 0;
    for (let i = part; i < points.length; i++) {
      const room = points[i]! - size;
      while (rest + 1 < points.length && points[rest + 1]! <= room) rest++;
      const sum = total[rest]! + value;
      if (sum > total[i]!) total[i] = sum;
    }
    compared += 2 * (points.length - part);
  }
  for (let i = 1; i < points.length; i++) if (total[i - 1]! > total[i]!) total[i] = total[i - 1]!;
  return compared;
}
