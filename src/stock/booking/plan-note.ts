import type { Size } from '../../geometry/point.ts';
import type { Material } from '../blanks.ts';

/** What a plan changes in the shop's file once it is cut: all that booking needs to know of it. Lengths are mm. */
export interface StockChange {
  /** New sheets that are opened; what is counted becomes fewer. */
  readonly sheets: readonly OpenedSheets[];
  /** Offcuts that are cut up. */
  readonly used: readonly UsedOffcut[];
  /** Offcuts that come onto the shelf. */
  readonly kept: readonly NewOffcut[];
}

export interface OpenedSheets extends Size {
  readonly kind: Material['kind'];
  /** As the shop's file calls it. */
  readonly board: string;
  /** Which of the board's sizes of sheet it was, from 0. */
  readonly index: number;
  readonly count: number;
}

export interface UsedOffcut extends Size {
  readonly id: string;
  readonly board: string;
  readonly note?: string;
}

export interface NewOffcut extends Size {
  /** What is written on it. */
  readonly id: string;
  readonly board: string;
  /** A sheet's size, another offcut's mark, or a fallout. */
  readonly from: string;
}

/** A plan as it was printed. */
export interface PlanNote {
  /** Two times four digits, which stand on its pages. */
  readonly number: string;
  /** What the jobs are called. */
  readonly jobs: readonly string[];
  readonly change: StockChange;
}

/** A plan that was just made. */
export interface NewPlan extends PlanNote {
  /** Nothing to book: it opens no sheet that is counted, and nothing comes onto the shelf or off it. */
  readonly idle: boolean;
}

/** A plan in the journal beside the shop's file. */
export interface KnownPlan extends PlanNote {
  /** The day on which it was printed first. */
  readonly made: string;
  /** When it was booked, and what that really changed. */
  readonly booked?: { readonly date: string; readonly change: StockChange };
}
