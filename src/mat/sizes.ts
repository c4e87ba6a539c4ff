import type { Size } from '../geometry/point.ts';
import type { BySide, Job } from '../job/model.ts';
import { fail, type Result, succeed } from '../problems/problem.ts';
import { contradictionProblems } from './contradiction.ts';
import { diagonalShare } from './diagonal.ts';
import { type Given, givensOf } from './givens.ts';
import type { System } from './linear.ts';
import { notEnough } from './missing.ts';
import { lengthsIn, systemOf } from './system.ts';
import { border, HORIZONTAL, opening, outer, overlap, reveal, revealed, structure, VERTICAL } from './unknowns.ts';

/** The lengths that settle a mat with one opening. */
export interface Sizes {
  readonly outer: Size;
  /** Outer edge to the top mat's face line. */
  readonly border: BySide<number>;
  /** One for each layer, 0 for the top mat. */
  readonly reveals: readonly number[];
  /** Face opening of the lowest layer. */
  readonly opening: Size;
  /** Over the artwork at the edge that the job measures at, negative where it floats. */
  readonly overlap?: BySide<number>;
}

function sizesFrom(job: Job, lengths: ReadonlyMap<string, number>): Sizes {
  const get = (name: string): number => lengths.get(name)!;
  const sides = (name: (side: keyof BySide<number>) => string): BySide<number> => ({
    top: get(name('top')),
    right: get(name('right')),
    bottom: get(name('bottom')),
    left: get(name('left')),
  });
  const sizes = {
    outer: { width: get(outer(HORIZONTAL)), height: get(outer(VERTICAL)) },
    border: sides(border),
    reveals: [0, ...revealed(job).map((layer) => get(reveal(layer)))],
    opening: { width: get(opening(HORIZONTAL)), height: get(opening(VERTICAL)) },
  };
  return job.openings[0]!.artwork === undefined ? sizes : { ...sizes, overlap: sides(overlap) };
}

interface Settled {
  readonly system: System;
  readonly sizes: Sizes;
}

function settle(job: Job, givens: readonly Given[]): Result<Settled> {
  const problems = contradictionProblems(structure(job), givens, job.units);
  if (problems.length > 0) return fail(problems);
  const system = systemOf(job, givens);
  const lengths = lengthsIn(job, system);
  if (lengths === undefined) return fail([notEnough(job, givens)]);
  return succeed({ system, sizes: sizesFrom(job, lengths) });
}

/** Enough for shares that hang on themselves by way of the overlap or the reveals; one try is the usual case. */
const TRIES = 60;
const STEADY = 1e-14;

/** The diagonal's share is taken from the widths as they are without it, then again from the answer until it stays. */
function settleByDiagonal(job: Job): Result<Settled> {
  const givens = givensOf(job);
  const problems = contradictionProblems(structure(job), givens, job.units);
  if (problems.length > 0) return fail(problems);
  let share = diagonalShare(systemOf(job, givens));
  for (let tried = 0; share !== undefined && tried < TRIES; tried++) {
    const answer = settle(job, givensOf(job, share));
    if (!answer.ok) return answer;
    const next = diagonalShare(answer.value.system);
    if (next !== undefined && Math.abs(next - share) < STEADY) return answer;
    share = next;
  }
  return fail([notEnough(job, givens)]);
}

/** Every length of the mat, or all contradictions among the givens, or which sizes would be enough. */
export function solveSizes(job: Job): Result<Sizes> {
  const answer = job.mat.weighting?.kind === 'diagonal' ? settleByDiagonal(job) : settle(job, givensOf(job));
  return answer.ok ? succeed(answer.value.sizes) : answer;
}
