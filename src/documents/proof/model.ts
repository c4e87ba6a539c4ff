import type { Drawing } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import type { Box } from '../../geometry/box.ts';
import type { Size } from '../../geometry/point.ts';
import type { Job } from '../../job/job.ts';
import type { Mat } from '../../mat/model.ts';
import type { Margined } from '../../settle/settled.ts';
import type { PriceList } from '../../stock/prices.ts';
import type { ShownLetterhead } from '../words/letterhead-block.ts';

/** One way to make the piece. Where there are several, `label` says what is different. */
export interface Variant {
  readonly mat: Mat;
  readonly job: Job;
  readonly prices: PriceList | undefined;
  readonly label?: string;
  readonly number?: string;
}

export interface ProofOptions {
  /** Either way up; the proof takes the better one. */
  readonly paper: Margined & { readonly onItsSide: Margined };
  /** As it is to be printed. */
  readonly date?: string;
  /** Of the shop. */
  readonly letterhead?: ShownLetterhead;
  readonly dimensions: boolean;
  /** Pixels of the picture of each opening of the job, upright; undefined where there is none. */
  readonly pictures: readonly (Size | undefined)[];
  readonly fonts: Fonts;
}

/** A part of a picture that the proof shows, by the name that its items give it. */
export interface WantedPicture {
  readonly id: string;
  /** Index of the opening whose picture it is. */
  readonly opening: number;
  /** Pixels of the upright picture. */
  readonly crop: Box;
  /** On the sheet, mm. */
  readonly size: Size;
  /** True where the picture's proportions are not those of the artwork, by more than measuring explains. */
  readonly cut: boolean;
}

export interface Proof {
  readonly title: string;
  /** Each as large as its paper. */
  readonly sheets: readonly Drawing[];
  /** mm of the sheet for each of the piece. */
  readonly scale: number;
  readonly pictures: readonly WantedPicture[];
}

/** In the order in which a sheet is painted, and read. */
export const PROOF_GROUPS = [
  ['head', 'Title, customer, date'],
  ['piece', 'The piece'],
  ['dimensions', 'Dimensions'],
  ['sizes', 'Sizes and scale'],
  ['materials', 'Materials'],
  ['prices', 'Prices'],
  ['approval', 'Choice and signature'],
  ['foot', 'A word on colours'],
] as const;

export type ProofGroup = (typeof PROOF_GROUPS)[number][0];
