import type { Size } from '../geometry/point.ts';
import type { BySide } from '../geometry/sides.ts';

/** A piece of board that is left from earlier work. */
export interface ShelfOffcut extends Size {
  /** What is written on it; unique on the shelf. */
  readonly id: string;
  /** A board or a backing of the shop. */
  readonly board: string;
  readonly note?: string;
}

/** How sheets of board are broken down. */
export interface StockSettings {
  /** Comes off each edge of a sheet before anything else. */
  readonly trim: BySide<number>;
  /** Width of a cut: 0 for a knife. */
  readonly kerf: number;
  /** What is smaller than this, either way round, is not worth keeping. */
  readonly leastOffcut: Size;
  /** The longest cut that the trimming head makes; undefined where it reaches across every sheet. */
  readonly longestCut?: number;
  /** True where every blank must have an edge of its sheet, untrimmed. */
  readonly factoryEdge: boolean;
  /** Off each side of what drops out of an opening, before it is stock. */
  readonly falloutMargin: number;
  /** The board that each piece gets another blank of, behind the artwork. */
  readonly backing?: string;
}
