import type { BlankType, Stock } from '../instance.ts';
import type { Bundle } from './bundle.ts';

/** A way that a type may lie. */
export interface Way {
  readonly type: number;
  readonly width: number;
  readonly height: number;
}

/** A sheet's worth of blanks. */
export interface Pattern {
  readonly bundle: Bundle;
  /** Copies of each type. */
  readonly copies: Int32Array;
}

/** Finds patterns of good worth for one kind of sheet: each blank has a price, and may lie on it as often as there is room. */
export interface PatternMaker {
  /** True where `best` is the most that any pattern is worth; else it is what a good one is worth. */
  readonly complete: boolean;
  /** Steps of the search that it took so far. */
  readonly steps: number;
  /** Steps that one call takes, roughly. */
  readonly size: number;
  /** The best worth of a sheet at these prices, none of them negative. */
  best(prices: Float64Array): number;
  /** The best patterns at the prices of the last call, that of the best worth first. */
  patterns(most: number): Pattern[];
}

/** What one step of the search is worth in sums compared: measured. */
export const COMPARED_PER_STEP = 8;

/** Sums of prices are doubles: equal but for that much. */
export const NOISE = 1e-12;

export function waysOf(stock: Stock, types: readonly BlankType[]): Way[] {
  return types.flatMap(({ width, height, turn }, type) => {
    const ways = [{ type, width, height }];
    if (turn && width !== height) ways.push({ type, width: height, height: width });
    return ways.filter((way) => way.width <= stock.width && way.height <= stock.height);
  });
}

export function patternOf(bundle: Bundle, types: number): Pattern {
  const copies = new Int32Array(types);
  const count = (each: Bundle): void => {
    if ('type' in each) copies[each.type]!++;
    else each.parts.forEach(count);
  };
  count(bundle);
  return { bundle, copies };
}

/** Two bundles beside each other along x or y. */
export function pairOf(along: 'x' | 'y', first: Bundle, second: Bundle): Bundle {
  const width = along === 'x' ? first.width + second.width : Math.max(first.width, second.width);
  const height = along === 'y' ? first.height + second.height : Math.max(first.height, second.height);
  return { along, parts: [first, second], width, height };
}

/** True where whatever lies on the sheet lies on it turned by a quarter too. */
export const isSymmetric = (stock: Stock, types: readonly BlankType[]): boolean =>
  stock.width === stock.height && types.every(({ width, height, turn }) => turn || width === height);
