import type { Size } from '../geometry/point.ts';
import type { Units } from '../units/units.ts';
import type { Board } from './board.ts';
import type { Moulding, PackagePart, ReadyFrame } from './frame.ts';
import type { Guide } from './guide.ts';
import type { Head } from './head.ts';
import type { Machine } from './machine.ts';
import type { Prices } from './prices.ts';
import type { Printer } from './printer.ts';
import type { ShelfOffcut, StockSettings } from './stock.ts';

/** A checked shop; the names are those that jobs use. Lengths are mm. */
export interface Shop {
  readonly units: Units;
  readonly boards: ReadonlyMap<string, Board>;
  readonly heads: ReadonlyMap<string, Head>;
  readonly machines: ReadonlyMap<string, Machine>;
  /** Undefined where the shop says nothing of it: its default follows the job's units. */
  readonly guide?: Guide;
  readonly printers: ReadonlyMap<string, Printer>;
  readonly papers: ReadonlyMap<string, Size>;
  readonly mouldings: ReadonlyMap<string, Moulding>;
  readonly frames: ReadonlyMap<string, ReadyFrame>;
  readonly glazing: ReadonlyMap<string, PackagePart>;
  readonly backing: ReadonlyMap<string, PackagePart>;
  /** Outer sizes that the shop likes to use, as they are listed. */
  readonly sizes: readonly Size[];
  readonly prices?: Prices;
  /** Offcuts that lie on the shelf, as they are listed. */
  readonly shelf: readonly ShelfOffcut[];
  readonly stock: StockSettings;
}
