import type { Stroke } from '../../bench/model.ts';
import type { Step } from '../../bench/order.ts';
import type { Fonts } from '../../fonts/model.ts';
import type { Job } from '../../job/job.ts';
import type { Mat } from '../../mat/model.ts';
import type { Margined } from '../../settle/settled.ts';

/** A job as the bench has it. */
export interface BenchJob {
  readonly job: Job;
  readonly mat: Mat;
  /** In the order of work, with what is done before each. */
  readonly strokes: readonly Stroke[];
  readonly steps: readonly Step[];
  /** As the shop counts its jobs; left to be written in where there is none. */
  readonly number?: string;
}

export interface TicketOptions {
  readonly paper: Margined;
  /** Which of how many tickets in one file. */
  readonly of?: { readonly index: number; readonly count: number };
  readonly fonts: Fonts;
}
