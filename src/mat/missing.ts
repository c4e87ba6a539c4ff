import { error, type Problem } from '../problems/problem.ts';
import type { Given } from './given.ts';
import { type Equation, equation } from './linear.ts';
import type { Plan } from './structure.ts';
import { lengthsIn, systemOf } from './system.ts';
import { AXES, border, gap, opening, outer, place, reveal, revealed } from './unknowns.ts';

interface Candidate {
  readonly where: string;
  readonly equations: readonly Equation[];
}

/** What a job can add; the lengths themselves do not matter, only what they would settle. */
function candidates({ job, group, spans }: Plan): readonly Candidate[] {
  const known = (variable: string): Equation => equation({ [variable]: 1 }, 1);
  return [
    { where: 'mat.outer (or mat.frame)', equations: AXES.map((axis) => known(outer(axis))) },
    ...(group.arranged.length === 0
      ? []
      : [{ where: 'mat.border', equations: (['left', 'right', 'top'] as const).map((side) => known(border(side))) }]),
    ...group.kinds.map((of) => ({
      where: `openings[${of}].artwork (or openings[${of}].size)`,
      equations: AXES.map((axis) => known(opening(axis, of))),
    })),
    ...group.placed.map((index) => ({
      where: `openings[${index}].place`,
      equations: (['left', 'right', 'top', 'bottom'] as const).map((side) => known(place(side, index))),
    })),
    ...(Math.max(spans.width.length, spans.height.length) < 2
      ? []
      : [{ where: 'arrange.gap', equations: AXES.map((axis) => known(gap(axis))) }]),
    ...(revealed(job).length === 0
      ? []
      : [{ where: 'the reveals', equations: revealed(job).map((layer) => known(reveal(layer))) }]),
  ];
}

/** The sets of sizes, as small as can be, each of which would settle everything; none where only a share is missing. */
function enough(plan: Plan, givens: readonly Given[]): readonly string[] {
  // Of very many openings the first few kinds are enough to say what is missing.
  const options = candidates(plan).slice(0, 12);
  const settles = (chosen: readonly Candidate[]): boolean => {
    const more = chosen.flatMap((each) => each.equations);
    return lengthsIn(plan, systemOf(plan, givens, more), givens) !== undefined;
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
export function notEnough(plan: Plan, givens: readonly Given[]): Problem {
  const opening = plan.job.openings[0]!;
  const path = opening.artwork === undefined && opening.size === undefined ? ['openings', 0] : ['mat'];
  const options = enough(plan, givens);
  const stated = givens.map((each) => each.what);
  return error(
    'sizes-not-enough',
    path,
    `the sizes given (${stated.length === 0 ? 'none' : stated.join(', ')}) do not settle the mat`,
    `give ${options.length === 0 ? 'the reveals and the overlap too' : options.join(', or ')}`,
  );
}
