import type { Size } from '../geometry/point.ts';
import type { BySide, Job } from '../job/model.ts';
import { error, fail, type Problem, type Result, succeed } from '../problems/problem.ts';
import { contradictionProblems } from './contradiction.ts';
import { diagonalShare } from './diagonal.ts';
import { type Given, givensOf } from './givens.ts';
import type { System } from './linear.ts';
import { notEnough } from './missing.ts';
import { lengthsIn, systemOf } from './system.ts';
import { border, HORIZONTAL, outer, overlap, reveal, revealed, structure, VERTICAL } from './unknowns.ts';

/** The lengths that settle a mat with one opening. */
export interface Sizes {
  readonly outer: Size;
  /** Outer edge to the top mat's face line. */
  readonly border: BySide<number>;
  /** One for each layer, 0 for the top mat. */
  readonly reveals: readonly number[];
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
  const lengths = lengthsIn(job, system, givens);
  if (lengths === undefined) return fail([notEnough(job, givens)]);
  return succeed({ system, sizes: sizesFrom(job, lengths) });
}

/** Plenty: the share is right at once unless the widths hang on the heights by way of a missing overlap or reveal. */
const TRIES = 60;
const STEADY = 1e-13;
/** Stands in for a share that is not known, where only what would settle the sizes is asked. */
const ANY_SHARE = 0.4;

/** The share is taken from the widths as they are without it; where the answer's own is another, by the secant method. */
function settleByDiagonal(job: Job): Result<Settled> {
  const givens = givensOf(job);
  const problems = contradictionProblems(structure(job), givens, job.units);
  if (problems.length > 0) return fail(problems);
  let share = diagonalShare(systemOf(job, givens));
  let last: { readonly share: number; readonly off: number } | undefined;
  for (let tried = 0; share !== undefined && share > 0 && tried < TRIES; tried++) {
    const answer = settle(job, givensOf(job, share));
    if (!answer.ok) return answer;
    const off = (diagonalShare(answer.value.system) ?? Number.NaN) - share;
    if (Math.abs(off) < STEADY) return answer;
    const step: number = last === undefined ? off : (-off * (share - last.share)) / (off - last.off);
    last = { share, off };
    share += step;
  }
  return fail([notEnough(job, givensOf(job, ANY_SHARE))]);
}

/** Nothing is worked out from lengths that are no numbers; a job that was read from text holds none. */
function notFinite(job: Job): readonly Problem[] {
  return givensOf(job)
    .filter((each) => !Number.isFinite(each.value))
    .map((each) =>
      error('size-not-finite', each.path, `${each.what} is not a length`, 'give a number of the job’s unit'),
    );
}

/** Every length of the mat, or all contradictions among the givens, or which sizes would be enough. */
export function solveSizes(job: Job): Result<Sizes> {
  const problems = notFinite(job);
  if (problems.length > 0) return fail(problems);
  const answer = job.mat.weighting?.kind === 'diagonal' ? settleByDiagonal(job) : settle(job, givensOf(job));
  return answer.ok ? succeed(answer.value.sizes) : answer;
}
