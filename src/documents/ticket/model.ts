import type { GrooveStroke } from '../../bench/grooves.ts';
import type { Stroke } from '../../bench/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import type { Job } from '../../job/job.ts';
import type { Mat } from '../../mat/model.ts';
import type { Margined } from '../../settle/settled.ts';

/** A job as the bench has it. */
export interface BenchJob {
  readonly job: Job;
  readonly mat: Mat;
  /** In the order of work. */
  readonly strokes: readonly Stroke[];
  /** On the face, numbered by themselves. */
  readonly grooves: readonly GrooveStroke[];
  /** As the shop counts its jobs; left to be written in where there is none. */
  readonly number?: string;
}

export interface TicketOptions {
  readonly paper: Margined;
  /** Which of how many tickets in one file. */
  readonly of?: { readonly index: number; readonly count: number };
  readonly fonts: Fonts;
}
