/**
 * The search works with whole numbers. Lengths in mm are whole on a grid of 1/16000 mm when they are decimals to the
 * thousandth of a millimetre (16 each) or fractions of an inch down to 1/128 (3175 each): 16000 = 2⁷ · 5³. Thirds and
 * sevenths have finer grids. What is on none of them is rounded so that the plan stays good: stock down, pieces and kerf up.
 */
export interface Grid {
  /** Grid units for one unit of length. */
  readonly perUnit: number;
  /** True where every length lies on the grid. */
  readonly exact: boolean;
  readonly up: (length: number) => number;
  readonly down: (length: number) => number;
  readonly length: (units: number) => number;
}

const FINENESS = [1, 16_000, 48_000, 112_000, 144_000];
/** How far off the grid, in lengths, counts as on it: the error of sums and conversions, far below any real difference. */
const NOISE = 1e-8;
/** Whole numbers and their products by two stay exact in 32 bits. */
const MOST_UNITS = 2 ** 30;

const near = (length: number, perUnit: number): boolean =>
  Math.abs(length * perUnit - Math.round(length * perUnit)) <= NOISE * perUnit;

function commonDivisor(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y !== 0) [x, y] = [y, x % y];
  return x;
}

/** The coarsest grid on which all the lengths are whole, or the finest that is safe. `lengths` are finite and not negative. */
export function gridFor(lengths: readonly number[]): Grid {
  const longest = Math.max(...lengths);
  const exact = FINENESS.find((perUnit) => lengths.every((length) => near(length, perUnit)));
  const fine = exact ?? MOST_UNITS / longest;
  let step = 1;
  if (exact !== undefined) step = lengths.reduce((sum, length) => commonDivisor(sum, Math.round(length * exact)), 0);
  if ((longest * fine) / step > MOST_UNITS) return makeGrid(MOST_UNITS / longest, false);
  return makeGrid(fine / step, exact !== undefined);
}

function makeGrid(perUnit: number, exact: boolean): Grid {
  return {
    perUnit,
    exact,
    up: (length) => Math.max(0, Math.ceil((length - NOISE) * perUnit)),
    down: (length) => Math.floor((length + NOISE) * perUnit),
    length: (units) => units / perUnit,
  };
}
