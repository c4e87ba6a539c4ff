import type { Problem } from '../../problems/problem.ts';
import type { Rule, Summand } from '../sizes/sum-equation.ts';

/** Why a size is what it is. */
export interface Reason {
  /** `outer.width`, `border.left`, `reveals[1]`, `gap.width`, `openings[0].opening.width`, `openings[0].sight.height` … */
  readonly size: string;
  /** e.g. `left border`. */
  readonly what: string;
  /** mm, as the mat has it. */
  readonly value: number;
  /** Where the job states it. */
  readonly given?: Problem['path'];
  /** True where it is stated although the other sizes say it already: it is a check. */
  readonly spare?: true;
  /** What it follows from: `times × length`, summed up, make what the sizes alone come to. */
  readonly from: readonly Summand[];
  /** What else it follows from: weightings and proportions that the job states, and habits where it says nothing. */
  readonly rules: readonly Rule[];
  /** What the sizes alone come to, where snapping or what was cut moved it. */
  readonly before?: number;
}

/** Below this a length has not moved. */
const STILL = 1e-9;

export const moved = (before: number, now: number | undefined): Pick<Reason, 'value' | 'before'> =>
  now === undefined || Math.abs(now - before) <= STILL ? { value: before } : { value: now, before };
