import { type BySide, SIDES, type Side } from '../../geometry/sides.ts';
import type { Job } from '../../job/job.ts';
import { defined } from '../../problems/defined.ts';
import { error, fail, type Problem, type Result, succeed } from '../../problems/problem.ts';
import { excessOf } from '../figure.ts';
import { contradictionProblems } from '../reasons/contradiction.ts';
import { arranged } from './arranged.ts';
import { diagonalShare } from './diagonal.ts';
import type { Given } from './given.ts';
import { givensOf } from './givens.ts';
import { type Excess, groupOf, NO_EXCESS } from './group.ts';
import type { System } from './linear.ts';
import { notEnough } from './missing.ts';
import type { AllSizes, Unplaced } from './model.ts';
import { roughSpans, spansFrom } from './spans.ts';
import { givenReveal, type Plan, structure } from './structure.ts';
import { lengthsIn, systemOf } from './system.ts';
import { HORIZONTAL, opening, overlap, reveal, seenLayers, VERTICAL } from './unknowns.ts';

const bySide = (length: (side: Side) => number): BySide<number> => ({
  top: length('top'),
  right: length('right'),
  bottom: length('bottom'),
  left: length('left'),
});

/** What the solved lengths say of each kind of opening, by the index of the first of its kind. */
function unplaced({ job, group }: Plan, lengths: ReadonlyMap<string, number>): ReadonlyMap<number, Unplaced> {
  const get = (name: string): number => lengths.get(name)!;
  return new Map(
    group.kinds.map((of) => {
      const request = job.openings[of]!;
      const seen = seenLayers(job, request);
      const reveals = job.mat.layers.map((_, layer) => {
        if (layer === 0) return bySide(() => 0);
        if (!seen.includes(layer)) return undefined;
        return givenReveal(job, of, layer) ?? bySide(() => get(reveal(layer)));
      });
      const sizes = { reveals, opening: { width: get(opening(HORIZONTAL, of)), height: get(opening(VERTICAL, of)) } };
      const made =
        request.artwork === undefined ? sizes : { ...sizes, overlap: bySide((side) => get(overlap(side, of))) };
      return [of, made] as const;
    }),
  );
}

/** What the sizes were laid out from, for whoever moves them on. */
export interface SolvedSizes extends AllSizes {
  readonly laid: {
    readonly plan: Plan;
    readonly givens: readonly Given[];
    readonly lengths: ReadonlyMap<string, number>;
    readonly made: ReadonlyMap<number, Unplaced>;
  };
}

interface Settled {
  readonly givens: readonly Given[];
  readonly system: System;
  readonly lengths: ReadonlyMap<string, number>;
}

const contradictions = (plan: Plan, givens: readonly Given[]): readonly Problem[] =>
  plan.kept === undefined ? contradictionProblems(structure(plan), givens, plan.job.units) : [];

/** Unless it is `checked`, what contradicts is passed over: the least trusted gives way. */
function settle(plan: Plan, givens: readonly Given[], checked: boolean): Result<Settled> {
  const problems = checked ? contradictions(plan, givens) : [];
  if (problems.length > 0) return fail(problems);
  const system = systemOf(plan, givens);
  const lengths = lengthsIn(plan, system, givens);
  if (lengths === undefined) return fail([notEnough(plan, givens)]);
  return succeed({ givens, system, lengths });
}

/** What was settled without asking, unless givens contradict each other. */
function unlessContradicted(plan: Plan, settled: Settled): Result<Settled> {
  const problems = contradictions(plan, settled.givens);
  return problems.length > 0 ? fail(problems) : succeed(settled);
}

/** Plenty: the share is right at once unless the widths hang on the heights by way of a missing overlap or reveal. */
const TRIES = 60;
const STEADY = 1e-13;
/** Stands in for a share that is not known, where only what would settle the sizes is asked. */
const ANY_SHARE = 0.4;

/** The share is taken from the widths as they are without it; where the answer's own is another, by the secant method. */
function settleByDiagonal(plan: Plan, checked: boolean): Result<Settled> {
  const givens = givensOf(plan);
  const problems = checked ? contradictions(plan, givens) : [];
  if (problems.length > 0) return fail(problems);
  let share = diagonalShare(systemOf(plan, givens));
  let last: { readonly share: number; readonly off: number } | undefined;
  for (let tried = 0; share !== undefined && share > 0 && tried < TRIES; tried++) {
    const answer = settle(plan, givensOf(plan, share), checked);
    if (!answer.ok) return answer;
    const off = (diagonalShare(answer.value.system) ?? Number.NaN) - share;
    if (Math.abs(off) < STEADY) return answer;
    const step: number = last === undefined ? off : (-off * (share - last.share)) / (off - last.off);
    last = { share, off };
    share += step;
  }
  return fail([notEnough(plan, givensOf(plan, ANY_SHARE))]);
}

/** Nothing is worked out from lengths that are no numbers; a job that was read from text holds none. */
function notFinite(givens: readonly Given[]): readonly Problem[] {
  return givens
    .filter((each) => !Number.isFinite(each.value))
    .map((each) =>
      error('size-not-finite', each.path, `${each.what} is not a length`, 'give a number of the job’s unit'),
    );
}

/** How often it is asked again which opening is the widest, and how far slanting sides reach out. */
const ROUNDS = 40;
/** Where that has not settled by now, it is worked out where it leads. */
const PATIENT = 12;
/** How far sides may still reach out otherwise than they were taken to, where it goes on for ever; mm. */
const AGREES = 1e-6;

/**
 * Every length of the mat, or all contradictions among the givens, or which sizes would be enough. With the borders as
 * they were planned in `kept` nothing contradicts: what does not go with the outer size gives way.
 */
export function solveSizes(job: Job, kept?: BySide<number>): Result<SolvedSizes> {
  const group = groupOf(job);
  const more = defined({ kept });
  let plan: Plan = { job, group, excess: NO_EXCESS, spans: roughSpans(job, group), ...more };
  let givens = givensOf(plan);
  const problems = notFinite(givens);
  if (problems.length > 0) return fail(problems);
  const diagonal = job.mat.weighting?.kind === 'diagonal' && group.arranged.length > 0;
  const settled = (checked: boolean): Result<Settled> =>
    diagonal ? settleByDiagonal(plan, checked) : settle(plan, givens, checked);
  const before: Excess[] = [];
  for (let round = 0; ; round++) {
    // How far slanting sides reach out is not known before: only then can sizes be said to contradict each other.
    let answer = settled(false);
    if (!answer.ok) answer = settled(true);
    if (!answer.ok) return answer;
    const made = unplaced(plan, answer.value.lengths);
    const excess = excessOf(job, made);
    const spans = spansFrom(plan, made, excess);
    const steady = sameExcess(excess, plan.excess, STEADY_EXCESS);
    if (round >= ROUNDS && !sameExcess(excess, plan.excess, AGREES))
      return fail([notEnough(plan, answer.value.givens)]);
    if (round >= ROUNDS || (sameLeads(spans, plan.spans) && steady)) {
      const last = diagonal ? settled(true) : unlessContradicted(plan, answer.value);
      if (!last.ok) return last;
      const settledPlan = { ...plan, excess };
      const laid = { ...answer.value, plan: settledPlan, made };
      return succeed({ ...arranged(settledPlan, laid.lengths, made), laid });
    }
    before.push(excess);
    const leads = round >= PATIENT && round % 3 === 0;
    plan = { ...plan, excess: leads ? limitOf(before.slice(-3)) : excess, spans };
    givens = givensOf(plan);
  }
}

/** Where three of a row lead that goes by equal ratios, side by side (A. Aitken's way, from memory); also one that runs away. */
function limitOf([first, second, third]: readonly Excess[]): Excess {
  const at = (excess: Excess | undefined, of: number, side: Side): number => excess?.get(of)?.[side] ?? 0;
  return new Map(
    [...third!.keys()].map((of) => [
      of,
      bySide((side) => {
        const [a, b, c] = [at(first, of, side), at(second, of, side), at(third, of, side)];
        const bend = c - 2 * b + a;
        return Math.abs(bend) < STEADY_EXCESS ? c : c - (c - b) ** 2 / bend;
      }),
    ]),
  );
}

const sameLeads = (a: Plan['spans'], b: Plan['spans']): boolean =>
  a.width.join() === b.width.join() && a.height.join() === b.height.join();

const STEADY_EXCESS = 1e-10;

function sameExcess(a: Excess, b: Excess, within: number): boolean {
  const of = [...new Set([...a.keys(), ...b.keys()])];
  return of.every((each) =>
    SIDES.every((side) => Math.abs((a.get(each)?.[side] ?? 0) - (b.get(each)?.[side] ?? 0)) < within),
  );
}
