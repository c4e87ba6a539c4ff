import type { Fonts } from '../../fonts/model.ts';
import type { Margined } from '../../settle/settled.ts';

export interface TicketOptions {
  readonly paper: Margined;
  /** Which of how many tickets in one file. */
  readonly of?: { readonly index: number; readonly count: number };
  readonly fonts: Fonts;
}
