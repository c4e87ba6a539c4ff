import type { SheetHead } from '../documents/words/running-head.ts';
import type { Fonts } from '../fonts/model.ts';
import type { BySide } from '../geometry/sides.ts';
import type { Paper } from '../papers/model.ts';
import type { Problem } from '../problems/problem.ts';
import type { Printer } from '../shop/printer.ts';
import type { LengthUnit } from '../units/units.ts';

/** How a drawing goes on paper. Lengths are mm. */
export interface LayoutOptions {
  readonly paper: Paper;
  /** Wished; where the printer's unprintable margin is wider, that one counts. */
  readonly margin: BySide<number>;
  /** The strip that neighbouring sheets share; they may share more, never less. Butted sheets share none. */
  readonly lap: number;
  readonly join: 'lap' | 'butt';
  /** `whole`: sheets taped into one pattern; `corners`: sheets laid on one by one by the board's own corners. */
  readonly extent: 'whole' | 'corners';
  readonly printer?: Printer;
  /** Which printer is corrected for, or that none is, for the first sheet. */
  readonly stamp: string;
  /** The unit that the first sheet's words give lengths in. */
  readonly units: LengthUnit;
  /** What every sheet says it belongs to; the drawing's title where left out. */
  readonly title?: string;
  /** What tells every sheet from those of other jobs. */
  readonly head?: SheetHead;
  /** What the file is about, for its metadata. */
  readonly subject?: string;
  readonly language?: string;
  /** No layers that can be shown and hidden: everything that is to be seen is seen. */
  readonly flat?: boolean;
  /** The fonts for characters of the title that the prepared ones lack. */
  readonly fonts: Fonts;
  /** Where the paper, the margins and the lap stand in the job, for problems. */
  readonly path?: Problem['path'];
}
