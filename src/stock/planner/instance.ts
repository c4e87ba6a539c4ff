/**
 * The problem on its grid: whole numbers only. The kerf is added once to the width and height of every sheet and every
 * blank; then a cut takes no room of its own, and blanks that fit so are exactly those that fit with a kerf between them
 * (and none after the last). Trim is already taken off the sheets.
 */
export interface Instance {
  readonly stocks: readonly Stock[];
  readonly types: readonly BlankType[];
  readonly kerf: number;
  /** What counts first of a plan's price. */
  readonly first: First;
  /** Longest cut, with the kerf added as to a width; Infinity where there is no limit. */
  readonly longest: number;
}

export interface Stock {
  readonly width: number;
  readonly height: number;
  /** How many there are; Infinity where there is no limit. */
  readonly limit: number;
  /** A free one (offcut, fallout) is not counted among the sheets. */
  readonly free: boolean;
  readonly cost: number;
  /** Must be bought, while others are on hand. */
  readonly bought: boolean;
  /** Untrimmed factory edges: how many of left and right, and of top and bottom. */
  readonly edgesX: number;
  readonly edgesY: number;
  /** False where a blank as large as the sheet could not be trimmed within the longest cut. */
  readonly whole: boolean;
}

export interface BlankType {
  readonly width: number;
  readonly height: number;
  readonly demand: number;
  readonly turn: boolean;
  /** Needs a factory edge. */
  readonly edge: boolean;
}

export type First = 'sheets' | 'cost';

/** What a plan takes. */
export interface Price {
  readonly sheets: number;
  readonly cost: number;
  /** What of it is not on hand: sheets or cost, whichever counts first. */
  readonly bought: number;
}

export const NOTHING: Price = { sheets: 0, cost: 0, bought: 0 };
export const ANY_PRICE: Price = { sheets: Infinity, cost: Infinity, bought: Infinity };

/** With one more sheet of the stock. */
export function withOne(instance: Instance, price: Price, stock: number): Price {
  const { free, cost, bought } = instance.stocks[stock]!;
  const one = free ? 0 : 1;
  return {
    sheets: price.sheets + one,
    cost: price.cost + cost,
    bought: price.bought + (bought ? (instance.first === 'cost' ? cost : one) : 0),
  };
}

/** `opened`: how many of each stock. Sums in the order of the stocks, so that equal plans have equal prices. */
export function priceOf(instance: Instance, opened: ArrayLike<number>): Price {
  let [sheets, cost, bought] = [0, 0, 0];
  instance.stocks.forEach((stock, s) => {
    const count = stock.free ? 0 : opened[s]!;
    sheets += count;
    cost += opened[s]! * stock.cost;
    if (stock.bought) bought += instance.first === 'cost' ? count * stock.cost : count;
  });
  return { sheets, cost, bought };
}

/** Less to buy is cheaper, then less of what counts first, then less of the other. */
export function cheaper({ first }: Pick<Instance, 'first'>, a: Price, b: Price): boolean {
  if (a.bought !== b.bought) return a.bought < b.bought;
  if (a[first] !== b[first]) return a[first] < b[first];
  return first === 'sheets' ? a.cost < b.cost : a.sheets < b.sheets;
}

export const fits = (
  width: number,
  height: number,
  stock: { readonly width: number; readonly height: number },
): boolean => width <= stock.width && height <= stock.height;

/** True where the blank fits the sheet in one of the ways it may lie. */
export const holds = (stock: Stock, type: BlankType): boolean =>
  fits(type.width, type.height, stock) || (type.turn && fits(type.height, type.width, stock));
