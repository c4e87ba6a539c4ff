import type { Size } from '../../../geometry/point.ts';
import type { Instance } from '../instance.ts';
import { BestPattern } from './best-pattern.ts';
import type { Wanted } from './wanted.ts';

/** Of the coarse grid, along a sheet's longer side. */
const POINTS = 400;

/**
 * By weak duality no plan costs less than its blanks are worth: at prices that are made smaller until no pattern of a
 * stock without limit is worth more than its sheet, less what limited stock could gain. `best`: of each stock what no
 * pattern is worth more than.
 */
export function dualBound(
  { need, limits }: Wanted,
  costs: readonly number[],
  prices: Float64Array,
  best: readonly number[],
): number {
  if (best.includes(Infinity)) return Number.NEGATIVE_INFINITY;
  let scale = 1;
  limits.forEach((limit, s) => {
    if (limit === Infinity && best[s]! > costs[s]!) scale = Math.min(scale, costs[s]! / best[s]!);
  });
  let bound = prices.reduce((sum, price, type) => sum + scale * price * need[type]!, 0);
  limits.forEach((limit, s) => {
    if (limit < Infinity) bound -= limit * Math.max(0, scale * best[s]! - costs[s]!);
  });
  return bound;
}

/**
 * What no pattern is worth more than, where rasters are too fine for the best one: on a coarse grid onto which sheets and
 * blanks are rounded down. What fits side by side does so there too. Infinity where a blank comes to nothing.
 */
export function mostWorth(
  { stocks, types }: Instance,
  prices: Float64Array,
): { readonly best: readonly number[]; readonly steps: number } {
  let steps = 0;
  const best = stocks.map((stock) => {
    const scale = POINTS / Math.max(stock.width, stock.height);
    const smaller = <T extends Size>(size: T): T => ({
      ...size,
      width: Math.floor(size.width * scale),
      height: Math.floor(size.height * scale),
    });
    const rough = types.map(smaller);
    if (rough.some(({ width, height }) => Math.min(width, height) === 0)) return Infinity;
    const maker = new BestPattern(smaller(stock), rough, POINTS);
    const worth = maker.best(prices);
    steps += maker.steps;
    return worth;
  });
  return { best, steps };
}
