import type { Box } from '../../geometry/box.ts';
import type { Size } from '../../geometry/point.ts';
import type { Side } from '../../geometry/sides.ts';

/**
 * Plain rectangles in, a cutting plan out. Lengths are mm (any one unit will do), x runs right and y down from a
 * sheet's top left corner.
 */
export interface StockInput {
  readonly sheets: readonly StockSheet[];
  readonly pieces: readonly StockPiece[];
  readonly options?: StockOptions;
}

export interface StockSheet {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  /** How many there are; left out: as many as are needed. */
  readonly count?: number;
  /** Price of one. Every sheet has one, or none has; an offcut's is 0. */
  readonly cost?: number;
  /** Lies on the shelf already: is used before a sheet is opened and does not count as one. */
  readonly offcut?: boolean;
  /** In place of the options' trim; an offcut's is 0. */
  readonly trim?: number | SideLengths;
}

export type SideLengths = Readonly<Partial<Record<Side, number>>>;

export interface StockPiece {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  /** 1 where left out. */
  readonly count?: number;
  /** May lie turned by a quarter; true where left out. */
  readonly turn?: boolean;
  /** What messages call it, e.g. job and layer; the id where left out. */
  readonly label?: string;
  /** Must lie with one side at least on an untrimmed edge of a sheet that is no offcut. */
  readonly factoryEdge?: boolean;
  /** The usable rectangles that drop out of each copy once it is cut. */
  readonly fallouts?: readonly Size[];
}

export interface StockOptions {
  /** Width of a cut; 0 for a knife. It lies between pieces only. */
  readonly kerf?: number;
  /** Taken off the factory edges before anything else, that cut's kerf included. */
  readonly trim?: number | SideLengths;
  /** How long to search: 1 is about a second for a hundred pieces, counted in steps and not in time. */
  readonly effort?: number;
  /** Whole number; another seed is another search. */
  readonly seed?: number;
  readonly longestCut?: number;
  /** The smallest offcut worth keeping: both sides at least this, or one side the width and the other the height. */
  readonly leastOffcut?: number | Size;
  /**
   * What counts first of a plan: how many sheets it takes (where left out), or what these cost, where they have prices.
   * Before either, sheets with a count are on hand, and are used before others are bought.
   */
  readonly first?: 'sheets' | 'cost';
  /** What a kept offcut is worth, as a share of its part of what its sheet costs: from 0 (where left out) to 1. */
  readonly offcutCredit?: number;
  /** Uses the pieces' fallouts as stock. */
  readonly fallouts?: boolean;
}

export interface StockPlan {
  /** In an order in which they can be cut. */
  readonly sheets: readonly UsedSheet[];
  readonly laid: readonly LaidPiece[];
  /** Sheets opened; offcuts and fallouts are not counted. */
  readonly count: number;
  /** Undefined where no prices were given. */
  readonly cost?: number;
  /** What the kept offcuts are worth, where the options say at what rate: it comes off the cost. */
  readonly credit?: number;
  /** What counted first, and what bound, status and gap are about: `sheets` where nothing has a price. */
  readonly first: 'sheets' | 'cost';
  readonly bound: Bound;
  /** `optimal` only where the plan takes no more than the bound asks for. */
  readonly status: 'optimal' | 'open';
  /** Sheets, or cost, above the bound. */
  readonly gap: number;
  /** The same in words. */
  readonly verdict: string;
  /** The best plan found where the other one counts first, if that differs. */
  readonly other?: { readonly first: 'sheets' | 'cost'; readonly count: number; readonly cost: number };
  /** The largest piece of board left in one piece, where it is worth keeping. */
  readonly largestOffcut?: Offcut;
  readonly area: Areas;
}

export interface Bound {
  /** No plan needs fewer sheets, or costs less, whichever counts first. */
  readonly value: number;
  /** What proves it. */
  readonly by: string;
}

export interface Areas {
  /** Of the sheets used, offcuts and fallouts included. */
  readonly used: number;
  readonly pieces: number;
  /** Offcuts that are worth keeping. */
  readonly offcuts: number;
  /** All else: slivers, trim, kerf. */
  readonly waste: number;
}

export type Origin =
  | { readonly kind: 'sheet' }
  | { readonly kind: 'offcut' }
  /** The fallout at `which` in the list of a piece, from 0, of that copy, which must be cut, and its opening too, before this can be used. */
  | { readonly kind: 'fallout'; readonly piece: string; readonly copy: number; readonly which: number };

export interface UsedSheet {
  /** From 1, in the order of cutting. */
  readonly number: number;
  /** The stock sheet's id; the piece's id for a fallout. */
  readonly id: string;
  readonly origin: Origin;
  readonly width: number;
  readonly height: number;
  readonly cost?: number;
  readonly tree: CutNode;
}

export interface LaidPiece extends Box {
  /** The used sheet's number. */
  readonly sheet: number;
  readonly sheetId: string;
  readonly piece: string;
  /** From 1, over all copies of the piece. */
  readonly copy: number;
  readonly turned: boolean;
}

export interface Offcut extends Box {
  readonly sheet: number;
}

/** The tree of cuts of one sheet: every cut runs from edge to edge of its node. */
export type CutNode = PieceNode | OffcutNode | TrimNode | CutsNode;

export interface PieceNode extends Box {
  readonly kind: 'piece';
  readonly piece: string;
  readonly copy: number;
  readonly turned: boolean;
}

/** A width or height of 0 where what is left is no wider than the kerf and is sawn away. */
export interface OffcutNode extends Box {
  readonly kind: 'offcut';
  /** Large enough to be kept. */
  readonly keep: boolean;
}

export interface TrimNode extends Box {
  readonly kind: 'trim';
}

export interface CutsNode extends Box {
  readonly kind: 'cuts';
  /** The direction in which the parts follow each other: a cut, as wide as the kerf, runs across it between two parts. */
  readonly along: 'x' | 'y';
  readonly parts: readonly CutNode[];
}
