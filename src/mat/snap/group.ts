import type { BySide } from '../../geometry/sides.ts';
import type { Job } from '../../job/job.ts';
import { type Problem, warning } from '../../problems/problem.ts';
import { shapeOf } from '../../shapes/shapes.ts';
import { showLength } from '../../units/print.ts';
import { LEAST_OVERLAP } from '../checks/opening.ts';
import type { Moved } from '../model.ts';
import { openingName } from '../names.ts';
import { AGREEMENT } from '../reasons/contradiction.ts';
import { arranged } from '../sizes/arranged.ts';
import type { AllSizes, Unplaced } from '../sizes/model.ts';
import type { SolvedSizes } from '../sizes/sizes.ts';
import { spansFrom, topSize } from '../sizes/spans.ts';
import { type Plan, rowGap } from '../sizes/structure.ts';
import { AXES, type Axis, border, gap, outer } from '../sizes/unknowns.ts';

/** The borders at which the guide reads a graduation: `zero` and every `step` from there. */
export interface Scale {
  readonly zero: number;
  readonly step: number;
}

export interface SnappedGroup {
  readonly sizes: AllSizes;
  readonly moved: readonly Moved[];
  readonly warnings: readonly Problem[];
}

/** What adding up leaves of a length that is right. */
const NOISE = 1e-9;

const off = (length: number, { zero, step }: Scale): number => {
  const rest = (((length - zero) % step) + step) % step;
  return rest < AGREEMENT || step - rest < AGREEMENT ? 0 : rest;
};
const nearest = (length: number, { zero, step }: Scale): number => zero + Math.round((length - zero) / step) * step;

/**
 * Snaps a group of openings as one: its openings to whole graduations by way of their overlaps, alike on opposite sides;
 * its gaps, all alike, to whole graduations; then its borders, so that the group stays in the middle where that is to be
 * had. So every reading of a row of equal openings lies on the graduation, and all gaps stay equal. Sizes that the job states stay
 * as they are: where they lie off the graduation, what follows from them does too, and the readings say scant or full.
 */
export function snapGroup(job: Job, all: SolvedSizes, scaleOf: (axis: Axis) => Scale): SnappedGroup {
  const { plan, lengths, made } = all.laid;
  const moved: Moved[] = [];
  const warnings: Problem[] = [];
  const snapped = new Map(made);
  for (const axis of AXES) {
    if (isFixed(job, axis)) continue;
    const { step } = scaleOf(axis);
    for (const of of plan.group.kinds) {
      if (!plan.group.arranged.flat().some((index) => plan.group.alikes[index] === of)) continue;
      const own = snapped.get(of)!;
      const by = widthMove(job, of, own, topSize(plan, snapped, plan.excess, of)[axis.extent], axis, step);
      if (by !== 0) snapped.set(of, widened(own, axis, by));
    }
  }
  const next = new Map(lengths);
  for (const axis of AXES) axisLengths(job, plan, axis, scaleOf(axis), made, snapped, next, moved, warnings);
  const spans = spansFrom(plan, snapped, plan.excess);
  const sizes = arranged({ ...plan, spans }, next, snapped);
  for (const of of plan.group.kinds) {
    for (const { extent } of AXES) {
      const [from, to] = [made.get(of)!.opening[extent], snapped.get(of)!.opening[extent]];
      if (from !== to) moved.push({ what: `${extent} of ${openingName(job, of)} and its like`, from, to });
    }
  }
  return { sizes, moved, warnings };
}

const statedBorders = (job: Job, { near, far }: Axis) =>
  [near, far].filter((side) => job.mat.border[side] !== undefined);

const wholeIsGiven = ({ mat: { outer: whole, frame } }: Job): boolean =>
  whole !== undefined || frame?.inside !== undefined || frame?.nominal !== undefined;

/** Where the mat's size and a border of it are both given, nothing can give way. */
const isFixed = (job: Job, axis: Axis): boolean => wholeIsGiven(job) && statedBorders(job, axis).length > 0;

/** How much wider an opening becomes, so that its face in the top mat is a whole number of graduations; negative: narrower. */
function widthMove(job: Job, of: number, own: Unplaced, face: number, axis: Axis, step: number): number {
  const request = job.openings[of]!;
  if (request.size !== undefined || request.artwork === undefined || own.overlap === undefined) return 0;
  const shape = shapeOf(request.shape);
  if (shape.reveals !== 'any side') return 0;
  const rest = off(face, { zero: 0, step });
  if (rest === 0) return 0;
  const floated = request.float !== undefined;
  const ways = rest <= step / 2 ? [-rest, step - rest] : [step - rest, -rest];
  const room = (by: number): boolean => {
    // Half of it goes to each side: less overlap where the opening grows, less float where it shrinks.
    const spent = floated ? -by / 2 : by / 2;
    const has = Math.min(own.overlap![axis.near], own.overlap![axis.far]) * (floated ? -1 : 1);
    return spent <= 0 || has - spent >= LEAST_OVERLAP - NOISE;
  };
  return ways.find(room) ?? 0;
}

function widened(own: Unplaced, { extent, near, far }: Axis, by: number): Unplaced {
  const overlap = own.overlap as BySide<number>;
  return {
    ...own,
    opening: { ...own.opening, [extent]: own.opening[extent] + by },
    overlap: { ...overlap, [near]: overlap[near] - by / 2, [far]: overlap[far] - by / 2 },
  };
}

/** The gap, the two borders and, where they are given, the outer size along one axis. */
function axisLengths(
  job: Job,
  plan: Plan,
  axis: Axis,
  scale: Scale,
  made: ReadonlyMap<number, Unplaced>,
  snapped: Map<number, Unplaced>,
  next: Map<string, number>,
  moved: Moved[],
  warnings: Problem[],
): void {
  const { extent, near, far } = axis;
  const { step } = scale;
  const show = (mm: number): string => showLength(mm, job.units);
  const spans = spansFrom(plan, snapped, plan.excess)[extent];
  const before = plan.spans[extent];
  const sum = (of: readonly number[], kinds: ReadonlyMap<number, Unplaced>): number =>
    of.reduce((total, index) => total + topSize(plan, kinds, plan.excess, index)[extent], 0);
  const gaps = spans.length - 1;
  const given = extent === 'width' ? plan.group.arrange.across : plan.group.arrange.down;
  const { times, more } = rowGap(plan.group);
  const weighted = extent === 'height' && (times !== 1 || more !== 0);
  const was = next.get(gap(axis)) ?? 0;
  let now = was;
  if (gaps > 0 && !weighted && off(was, { zero: 0, step }) !== 0) {
    if (given === undefined) now = nearest(was, { zero: 0, step });
    else {
      const message = `the gap of ${show(given)} is given and lies off the graduation of ${show(job.bench.graduation)}`;
      const hint = 'give a gap on the graduation, or take the settings scant or full';
      warnings.push(warning('snap-not-possible', ['arrange', 'gap'], message, hint));
    }
  }
  const [b, f] = [next.get(border(near))!, next.get(border(far))!];
  const grown = sum(spans, snapped) - sum(before, made) + gaps * (weighted ? 0 : now - was);
  for (const side of statedBorders(job, axis)) {
    const length = job.mat.border[side]!;
    if (off(length, scale) === 0) continue;
    const message = `the ${side} border of ${show(length)} is given and lies off the graduation of ${show(job.bench.graduation)}`;
    const hint = 'give a size on the graduation, or take the setting scant or full';
    warnings.push(warning('snap-not-possible', ['mat', 'border', side], message, hint));
  }
  if (isFixed(job, axis)) return;
  const tell = (what: string, from: number, to: number): void => {
    if (Math.abs(from - to) > 1e-9) moved.push({ what, from, to });
  };
  if (wholeIsGiven(job)) {
    // What the openings gain the borders lose, the same on both sides, each to a graduation where it may move.
    let [n, e] = [b - grown / 2, f - grown / 2];
    const rest = off(n, scale);
    const half = rest !== 0 && Math.abs(rest - step / 2) < AGREEMENT && gaps % 2 === 1 && given === undefined;
    if (half && !weighted) {
      // An odd number of gaps, each a graduation narrower, gives half a graduation to both borders.
      now -= step;
      n += (gaps * step) / 2;
      e += (gaps * step) / 2;
    }
    if (off(n, scale) !== 0) {
      const to = nearest(n, scale);
      e += n - to;
      n = to;
    }
    next.set(border(near), n);
    next.set(border(far), e);
  } else {
    next.set(outer(axis), next.get(outer(axis))! + grown);
    tell(`outer ${extent}`, next.get(outer(axis))! - grown, next.get(outer(axis))!);
  }
  if (!weighted) next.set(gap(axis), now);
  if (gaps > 0) tell(`gap ${extent === 'width' ? 'between neighbours' : 'between rows'}`, was, now);
  tell(`${near} border`, b, next.get(border(near))!);
  tell(`${far} border`, f, next.get(border(far))!);
}
