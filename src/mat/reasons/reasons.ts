import type { Job } from '../../job/job.ts';
import { defined } from '../../problems/defined.ts';
import type { Problem } from '../../problems/problem.ts';
import { rescue } from '../as-cut.ts';
import type { Given } from '../sizes/given.ts';
import { type System, systemFrom } from '../sizes/linear.ts';
import { type SolvedSizes, solveSizes } from '../sizes/sizes.ts';
import { structure } from '../sizes/structure.ts';
import { systemOf } from '../sizes/system.ts';
import { type Snapped, snap } from '../snap/snap.ts';
import { checked } from './contradiction.ts';
import { moved, type Reason } from './reason.ts';
import { seenSizes } from './seen-sizes.ts';
import { nameSizes } from './size-names.ts';
import { type Sum, sumOf, together } from './sums.ts';

/** Why every size of a job that can be solved is what it is; nothing for one that cannot. */
export function reasons(job: Job): readonly Reason[] {
  const { asCut: _, ...plan } = job;
  const solved = solveSizes(plan);
  if (!solved.ok) return [];
  const now = afterwards(job, solved.value);
  const { plan: settled, givens } = solved.value.laid;
  const system = systemOf(settled, givens, [], true);
  return [...stated(solved.value, now, system), ...seenSizes(solved.value, now, system)];
}

/** The sizes as the mat has them in the end. */
function afterwards(job: Job, solved: SolvedSizes): Snapped {
  const snapped = snap(job, solved);
  if (job.asCut === undefined) return snapped;
  const rescued = rescue(job, solved, snapped);
  return rescued.ok ? rescued.value : snapped;
}

function stated(solved: SolvedSizes, now: Snapped, system: System): readonly Reason[] {
  const { plan, givens, lengths } = solved.laid;
  const spare = sparesOf(solved);
  return nameSizes(plan, now).map(({ size, what, unknown, sign, value, opening }): Reason => {
    const given = givens.find((each) => each.terms.size === 1 && each.terms.has(unknown));
    const all: Sum =
      given === undefined
        ? sumOf(system.takenFor(unknown) ?? new Map())
        : together([{ sum: { summands: given.summands, rules: [] }, times: 1 / given.terms.get(unknown)! }]);
    const { summands, rules } = together([{ sum: all, times: sign }]);
    return {
      size,
      what,
      ...moved(sign * lengths.get(unknown)!, value),
      ...defined({
        given: given === undefined ? undefined : placeOf(given, opening),
        spare: given !== undefined && spare.has(given) ? (true as const) : undefined,
      }),
      from: summands,
      rules,
    };
  });
}

/** Openings that are alike state the same, each in its own place. */
const placeOf = ({ path }: Given, opening: number | undefined): Problem['path'] =>
  opening === undefined ? path : [path[0]!, opening, ...path.slice(2)];

/** Givens that others say already. */
function sparesOf({ laid: { plan, givens } }: SolvedSizes): ReadonlySet<Given> {
  const { agreeing } = checked(systemFrom(structure(plan), { traced: true }), givens);
  return new Set(agreeing.flatMap(({ taken }) => givens.filter((each) => taken.has(each))));
}
