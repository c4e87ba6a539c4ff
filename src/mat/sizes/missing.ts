import { error, type Problem } from '../../problems/problem.ts';
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

/** Of many openings in a row or column so many are thought of as the greatest. */
const MOST_SPANS = 6;

/** The plan with each opening that may turn out the greatest of its row or column: which one does depends on what is given. */
function everySpan(plan: Plan): readonly Plan[] {
  const { arranged, arrange } = plan.group;
  const instead = (spans: readonly number[], at: number, of: readonly (number | undefined)[]): readonly number[][] =>
    of
      .slice(0, MOST_SPANS)
      .flatMap((each) =>
        each === undefined || each === spans[at] ? [] : [spans.map((span, i) => (i === at ? each : span))],
      );
  const heights = arranged.flatMap((row, r) => instead(plan.spans.height, r, row));
  const widths = arrange.columns
    ? plan.spans.width.flatMap((_, c) =>
        instead(
          plan.spans.width,
          c,
          arranged.map((row) => row[c]),
        ),
      )
    : arranged.slice(0, MOST_SPANS).filter((row) => row.join() !== plan.spans.width.join());
  return [
    plan,
    ...heights.map((height) => ({ ...plan, spans: { ...plan.spans, height } })),
    ...widths.map((width) => ({ ...plan, spans: { ...plan.spans, width } })),
  ];
}

type Settles = (chosen: readonly Candidate[]) => boolean;

/** Of more kinds of openings than this it is not tried out what would be enough, which takes long. */
const MOST_KINDS = 20;
const MOST_PLANS = 24;

/** The mat, and every opening that says nothing of its size: that is always enough, though less may be. */
function surely({ job, group }: Plan, all: readonly Candidate[]): string {
  const sizes = group.kinds.filter(
    (of) => job.openings[of]!.artwork === undefined && job.openings[of]!.size === undefined,
  );
  const names = sizes.map((of) => `openings[${of}].size`);
  const more = names.length > 3 ? [...names.slice(0, 3), `${names.length - 3} more sizes`] : names;
  return [all[0]!.where, ...more].join(' together with ');
}

/** Of very many openings the first few kinds are enough to say what is missing. */
const MOST_OPTIONS = 12;

/** The sets of sizes, as small as can be, each of which would settle everything; none where only a share is missing. */
function enough(plan: Plan, givens: readonly Given[]): readonly string[] {
  const all = candidates(plan);
  const plans = everySpan(plan).slice(0, MOST_PLANS);
  const settlesIn = (chosen: readonly Candidate[], each: Plan): boolean => {
    const more = chosen.flatMap((one) => one.equations);
    return lengthsIn(each, systemOf(each, givens, more), givens) !== undefined;
  };
  if (settlesIn([], plan)) return [];
  if (plan.group.kinds.length > MOST_KINDS) return [surely(plan, all)];
  const settles: Settles = (chosen) => plans.every((each) => settlesIn(chosen, each));
  const options = all.slice(0, MOST_OPTIONS);
  const single = options.filter((each) => settles([each])).map((each) => [each]);
  const sets = single.length > 0 ? single : pairs(options, settles);
  const found = sets.length > 0 ? sets : [fewest(all, settles)];
  return found.map((each) => each.map(({ where }) => where).join(' together with '));
}

const pairs = (options: readonly Candidate[], settles: Settles): readonly (readonly Candidate[])[] =>
  options.flatMap((first, i) =>
    options.slice(i + 1).flatMap((second) => (settles([first, second]) ? [[first, second]] : [])),
  );

/** One set of which nothing can be left out, the last of the list given up first. */
function fewest(all: readonly Candidate[], settles: Settles): readonly Candidate[] {
  return all.toReversed().reduce<readonly Candidate[]>((kept, each) => {
    const less = kept.filter((one) => one !== each);
    return settles(less) ? less : kept;
  }, all);
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
