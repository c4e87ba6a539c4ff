import type { Fonts } from '../fonts/model.ts';
import type { Box } from '../geometry/box.ts';
import type { Size } from '../geometry/point.ts';
import type { BySide } from '../geometry/sides.ts';
import type { Paper, SheetPaper } from '../papers/model.ts';
import type { Printer } from '../shop/printer.ts';
import type { Units } from '../units/units.ts';

/** What a caller asks for instead of what the job and the shop say. Plain data. */
export interface SettleOptions {
  readonly paper?: string;
  /** A printer of the shop; `none`: no printer is corrected for. */
  readonly printer?: string;
  /** Of bare numbers and of words, where no job says it. */
  readonly units?: Units;
  /** The day as it is to be printed. */
  readonly date?: string;
  /** Of the first job, as the shop counts. */
  readonly number?: string;
}

/** What of a sheet may be drawn on where nothing is scaled. */
export interface Margined extends Size {
  /** The wider of the wished and the printer's own. */
  readonly margin: BySide<number>;
  /** Within the margins, from the sheet's top left. */
  readonly area: Box;
}

/** A single sheet, upright. */
export interface SettledSheet extends SheetPaper, Margined {
  readonly onItsSide: Margined;
}

/** Everything of paper, printer and words that is decided before anything is drawn: once, for every output. Lengths are mm. */
export interface Settled {
  readonly units: Units;
  /** For full-scale work that may be joined: a sheet, a roll, or one page. */
  readonly paper: Paper;
  /** For what goes on single sheets: the paper, or the usual sheet where that is a roll or one page. */
  readonly sheet: SettledSheet;
  /** As it was wished; a sheet never has less than its printer leaves blank. */
  readonly margin: BySide<number>;
  /** The one whose margins count for everything and whose scale counts for full-scale work. */
  readonly printer?: Printer;
  /** Which printer is corrected for, in words, or that none is: for every full-scale sheet and for the terminal. */
  readonly stamp: string;
  /** For everything that is set, each part where it is wanted. */
  readonly fonts: Fonts;
  readonly date?: string;
  readonly number?: string;
}
