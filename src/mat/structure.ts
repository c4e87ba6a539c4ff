import type { BySide, Side } from '../geometry/sides.ts';
import type { Job } from '../job/job.ts';
import { shapeOf } from '../shapes/shapes.ts';
import { type Excess, excessAt, type Group } from './group.ts';
import { type Equation, equation } from './linear.ts';
import {
  AXES,
  type Axis,
  border,
  gap,
  HORIZONTAL,
  measuredInset,
  opening,
  outer,
  overlap,
  place,
  reveal,
  revealed,
  seenLayers,
  usualGap,
  usualStep,
  VERTICAL,
} from './unknowns.ts';

/** A job together with how its openings hang together, as far as that is known. */
export interface Plan {
  readonly job: Job;
  readonly group: Group;
  readonly excess: Excess;
  /** The opening that is widest in each column (or the one row), and highest in each row. */
  readonly leads: { readonly width: readonly number[]; readonly height: readonly number[] };
  /**
   * The borders as they were planned, where the mat came out in another size: sizes that were asked for then give way
   * instead of contradicting, and borders that were asked for give way evenly.
   */
  readonly kept?: BySide<number>;
}

/** A sum of unknowns and a length. */
interface Extent {
  readonly terms: Map<string, number>;
  length: number;
}

function addTo(sum: Extent, name: string, factor: number): void {
  sum.terms.set(name, (sum.terms.get(name) ?? 0) + factor);
}

/** The reveal of a layer in an opening, where it is a length that is given. */
export function givenReveal(job: Job, of: number, layer: number): BySide<number> | undefined {
  const step = job.openings[of]!.steps?.[layer - 1];
  if (typeof step === 'object') return step;
  return job.mat.layers[layer]!.reveals;
}

/** From an opening's lowest face out to its face in the top mat, on one side. */
function addReveals(sum: Extent, plan: Plan, of: number, side: Side, factor: number): void {
  for (const layer of seenLayers(plan.job, plan.job.openings[of]!).slice(1)) {
    const given = givenReveal(plan.job, of, layer);
    if (given === undefined) addTo(sum, reveal(layer), factor);
    else sum.length += factor * given[side];
  }
  sum.length += factor * excessAt(plan.excess, of, side);
}

/** The face opening of the top mat, from side to side. */
function addOpening(sum: Extent, plan: Plan, index: number, axis: Axis, factor: number): void {
  const of = plan.group.alikes[index]!;
  addTo(sum, opening(axis, of), factor);
  addReveals(sum, plan, of, axis.near, factor);
  addReveals(sum, plan, of, axis.far, factor);
}

/** The gap below a row, as a multiple of the gap and a length more. */
export function rowGap({ arrange }: Group): { readonly times: number; readonly more: number } {
  const weighting = arrange.rowWeighting;
  if (weighting === undefined) return { times: 1, more: 0 };
  return 'add' in weighting ? { times: 1, more: weighting.add } : { times: weighting.ratio, more: 0 };
}

/** outer = border + openings with their reveals and gaps + border, for the group and for every placed opening. */
export function structure(plan: Plan): readonly Equation[] {
  const { group } = plan;
  const equations = AXES.flatMap((axis): Equation[] => {
    const leads = plan.leads[axis.extent];
    const found: Equation[] = [];
    if (leads.length > 0) {
      const sum: Extent = { terms: new Map(), length: 0 };
      addTo(sum, outer(axis), 1);
      addTo(sum, border(axis.near), -1);
      addTo(sum, border(axis.far), -1);
      for (const lead of leads) addOpening(sum, plan, lead, axis, -1);
      if (leads.length > 1) {
        const { times, more } = axis === VERTICAL ? rowGap(group) : { times: 1, more: 0 };
        addTo(sum, gap(axis), -(leads.length - 1) * times);
        sum.length -= (leads.length - 1) * more;
      }
      found.push(equationOf(sum));
      if (group.arrange.fill) {
        // Equal margins and gaps; the weighting alone may make the bottom larger.
        found.push(equation({ [border(axis.near)]: 1, [gap(axis)]: -1 }, 0));
        if (axis === HORIZONTAL || plan.job.mat.weighting === undefined)
          found.push(equation({ [border(axis.far)]: 1, [gap(axis)]: -1 }, 0));
      }
    }
    for (const index of group.placed) {
      const sum: Extent = { terms: new Map(), length: 0 };
      addTo(sum, outer(axis), 1);
      addTo(sum, place(axis.near, index), -1);
      addTo(sum, place(axis.far, index), -1);
      addOpening(sum, plan, index, axis, -1);
      found.push(equationOf(sum));
    }
    return found;
  });
  return [...equations, ...aspects(plan)];
}

const equationOf = ({ terms, length }: Extent): Equation => equation(Object.fromEntries(terms), -length);

/** Shapes with a fixed proportion: width = aspect × height at the edge that is measured. */
function aspects({ job, group }: Plan): readonly Equation[] {
  return group.kinds.flatMap((of) => {
    const request = job.openings[of]!;
    const aspect = shapeOf(request.shape).aspect?.(request.fields ?? {});
    if (aspect === undefined) return [];
    const inset = 2 * measuredInset(job, request);
    return [equation({ [opening(HORIZONTAL, of)]: 1, [opening(VERTICAL, of)]: -aspect }, inset * (1 - aspect))];
  });
}

/** Every name that must come out with a length. */
export function unknowns({ job, group, leads }: Plan): readonly string[] {
  const sides = ['top', 'right', 'bottom', 'left'] as const;
  return [
    ...AXES.map(outer),
    ...group.kinds.flatMap((of) => AXES.map((axis) => opening(axis, of))),
    ...(group.arranged.length > 0 ? sides.map(border) : []),
    ...AXES.flatMap((axis) => (leads[axis.extent].length > 1 ? [gap(axis)] : [])),
    ...group.placed.flatMap((index) => sides.map((side) => place(side, index))),
    ...revealed(job).map(reveal),
    ...group.kinds.flatMap((of) =>
      job.openings[of]!.artwork === undefined ? [] : sides.map((side) => overlap(side, of)),
    ),
  ];
}

const same = (a: string, b: string): Equation => equation({ [a]: 1, [b]: -1 }, 0);

/**
 * What is assumed where the job says nothing, in this order, each only as far as the sizes before it leave it open:
 * left = right; top = bottom, unless there is a weighting; placed openings centred where they say nothing; overlaps alike
 * on opposite sides, then on both axes, then from opening to opening; missing reveals alike, then of the usual step; the
 * overlap of the usual step; gaps alike, then the usual one; sides = top.
 */
export function assumptions(plan: Plan): readonly Equation[] {
  const { job, group } = plan;
  const equations: Equation[] = [same(border('left'), border('right'))];
  if (job.mat.weighting === undefined) equations.push(same(border('top'), border('bottom')));
  for (const index of group.placed) {
    const given = job.openings[index]!.place!;
    for (const { near, far } of AXES) {
      if (given[near] === undefined && given[far] === undefined)
        equations.push(same(place(near, index), place(far, index)));
    }
  }
  const artworks = group.kinds.filter((of) => job.openings[of]!.artwork !== undefined);
  for (const of of artworks) {
    equations.push(same(overlap('left', of), overlap('right', of)), same(overlap('top', of), overlap('bottom', of)));
    if (shapeOf(job.openings[of]!.shape).aspect === undefined)
      equations.push(same(overlap('left', of), overlap('top', of)));
  }
  const alike = (of: number): boolean =>
    (job.openings[of]!.float === undefined) === (job.openings[artworks[0]!]!.float === undefined);
  for (const of of artworks.slice(1).filter(alike))
    equations.push(same(overlap('left', artworks[0]!), overlap('left', of)));
  const missing = revealed(job).filter((layer) => job.mat.layers[layer]!.reveal === undefined);
  for (const layer of missing.slice(1)) equations.push(same(reveal(missing[0]!), reveal(layer)));
  for (const layer of missing) equations.push(equation({ [reveal(layer)]: 1 }, usualStep(job)));
  for (const of of artworks) {
    const { artwork, float } = job.openings[of]!;
    const usual = float === undefined ? usualStep(job) : -usualStep(job);
    // Where the proportion is fixed the shorter side of the artwork settles the size.
    const wide = shapeOf(job.openings[of]!.shape).aspect !== undefined && artwork!.width > artwork!.height;
    const order = wide ? (['top', 'bottom', 'left', 'right'] as const) : (['left', 'right', 'top', 'bottom'] as const);
    for (const side of order) {
      equations.push(equation({ [overlap(side, of)]: 1 }, usual));
    }
  }
  if (plan.leads.width.length > 1 || plan.leads.height.length > 1) {
    equations.push(same(gap(HORIZONTAL), gap(VERTICAL)));
    for (const axis of AXES) equations.push(equation({ [gap(axis)]: 1 }, usualGap(job)));
  }
  equations.push(same(border('left'), border('top')));
  return equations;
}
