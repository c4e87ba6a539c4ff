import type { Job } from '../job/model.ts';
import { error, type Problem } from '../problems/problem.ts';
import type { Given } from './givens.ts';
import { type Equation, equation } from './linear.ts';
import { lengthsIn, systemOf } from './system.ts';
import { AXES, border, opening, outer, reveal, revealed } from './unknowns.ts';

interface Candidate {
  readonly where: string;
  readonly equations: readonly Equation[];
}

/** What a job can add; the lengths themselves do not matter, only what they would settle. */
function candidates(job: Job): readonly Candidate[] {
  const known = (variable: string): Equation => equation({ [variable]: 1 }, 1);
  return [
    { where: 'mat.outer (or mat.frame)', equations: AXES.map((axis) => known(outer(axis))) },
    { where: 'mat.border', equations: (['left', 'right', 'top'] as const).map((side) => known(border(side))) },
    {
      where: 'openings[0].artwork (or openings[0].size)',
      equations: AXES.map((axis) => known(opening(axis))),
    },
    ...(revealed(job).length === 0
      ? []
      : [{ where: 'the reveals', equations: revealed(job).map((layer) => known(reveal(layer))) }]),
  ];
}

/** The sets of sizes, as small as can be, each of which would settle everything; none where only a share is missing. */
function enough(job: Job, givens: readonly Given[]): readonly string[] {
  const options = candidates(job);
  const settles = (chosen: readonly Candidate[]): boolean => {
    const more = chosen.flatMap((each) => each.equations);
    return lengthsIn(job, systemOf(job, givens, more), givens) !== undefined;
  };
  if (settles([])) return [];
  const single = options.filter((each) => settles([each])).map((each) => each.where);
  if (single.length > 0) return single;
  return options.flatMap((first, index) =>
    options
      .slice(index + 1)
      .filter((second) => settles([first, second]))
      .map((second) => `${first.where} together with ${second.where}`),
  );
}

/** The job's sizes leave something open. */
export function notEnough(job: Job, givens: readonly Given[]): Problem {
  const opening = job.openings[0]!;
  const path = opening.artwork === undefined && opening.size === undefined ? ['openings', 0] : ['mat'];
  const options = enough(job, givens);
  const stated = givens.map((each) => each.what);
  return error(
    'sizes-not-enough',
    path,
    `the sizes given (${stated.length === 0 ? 'none' : stated.join(', ')}) do not settle the mat`,
    `give ${options.length === 0 ? 'the reveals and the overlap too' : options.join(', or ')}`,
  );
}
