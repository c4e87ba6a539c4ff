import type { Job } from '../job/job.ts';
import type { Mat } from '../mat/model.ts';
import type { GrooveStroke } from './grooves.ts';
import type { Stroke } from './model.ts';

/** A solved job as the bench has it. */
export interface BenchJob {
  readonly job: Job;
  readonly mat: Mat;
  /** In the order of work. */
  readonly strokes: readonly Stroke[];
  /** On the face of the top mat, numbered by themselves. */
  readonly grooves: readonly GrooveStroke[];
  /** As the shop counts its jobs; left to be written in where there is none. */
  readonly number?: string;
}
