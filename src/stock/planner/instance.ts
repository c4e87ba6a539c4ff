/**
 * The problem on its grid: whole numbers only. The kerf is added once to the width and height of every sheet and every
 * blank; then a cut takes no room of its own, and blanks that fit so are exactly those that fit with a kerf between them
 * (and none after the last). Trim is already taken off the sheets.
 */
export interface Instance {
  readonly stocks: readonly Stock[];
  readonly types: readonly BlankType[];
  readonly kerf: number;
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

/** What a plan costs: fewer sheets count before all money. */
export interface Price {
  readonly sheets: number;
  readonly cost: number;
}

/** `opened`: how many of each stock. Sums in the order of the stocks, so that equal plans have equal prices. */
export function priceOf(instance: Instance, opened: ArrayLike<number>): Price {
  let [sheets, cost] = [0, 0];
  instance.stocks.forEach((stock, s) => {
    if (!stock.free) sheets += opened[s]!;
    cost += opened[s]! * stock.cost;
  });
  return { sheets, cost };
}

export const cheaper = (a: Price, b: Price): boolean =>
  a.sheets < b.sheets || (a.sheets === b.sheets && a.cost < b.cost);

export const fits = (
  width: number,
  height: number,
  stock: { readonly width: number; readonly height: number },
): boolean => width <= stock.width && height <= stock.height;

/** True where the blank fits the sheet in one of the ways it may lie. */
export const holds = (stock: Stock, type: BlankType): boolean =>
  fits(type.width, type.height, stock) || (type.turn && fits(type.height, type.width, stock));
