import type { Size } from '../geometry/point.ts';

/** What a pattern is printed on. Lengths are mm; sizes are given with the sheet upright. */
export type Paper = SheetPaper | RollPaper | FitPaper;

export interface SheetPaper extends Size {
  readonly kind: 'sheet';
  /** As it is written in a job: `letter`, `jis-b4`, `300 x 400 mm`. */
  readonly id: string;
  /** As it is printed: `Letter`, `B4 (JIS)`. */
  readonly name: string;
}

/** One page as wide as the roll and as long as it must be. */
export interface RollPaper {
  readonly kind: 'roll';
  readonly id: string;
  readonly name: string;
  readonly width: number;
}

/** One page as large as what is drawn. */
export interface FitPaper {
  readonly kind: 'fit';
  readonly id: 'fit';
  readonly name: string;
}

/** A row of the table of papers, or a paper of the shop's own. */
export interface NamedPaper extends Size {
  readonly id: string;
  readonly name: string;
  readonly aliases?: readonly string[];
  /** The standard or the handbook that states it. */
  readonly source?: string;
}

/** Smaller paper has no room for a cross and a name. */
export const SMALLEST_PAPER = 50;
/** 200 in: the largest page of a PDF whose unit is the point (Adobe PDF Reference 1.7, Appendix C). */
export const LARGEST_PAPER = 5080;
