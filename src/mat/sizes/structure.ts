import type { BySide, Side } from '../../geometry/sides.ts';
import type { Job } from '../../job/job.ts';
import { shapeOf } from '../../shapes/shapes.ts';
import { layerName } from '../layers.ts';
import { openingName } from '../names.ts';
import { type Excess, excessAt, type Group } from './group.ts';
import { bevelSummand, type SumEquation, type Summand, sumEquation } from './sum-equation.ts';
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
  VERTICAL,
} from './unknowns.ts';

/** A job together with how its openings hang together, as far as that is known. */
export interface Plan {
  readonly job: Job;
  readonly group: Group;
  readonly excess: Excess;
  /** The opening that is widest in each column (or the one row), and highest in each row. */
  readonly spans: { readonly width: readonly number[]; readonly height: readonly number[] };
  /**
   * The borders as they were planned, where the mat came out in another size: sizes that were asked for then give way
   * instead of contradicting, and borders that were asked for give way evenly.
   */
  readonly kept?: BySide<number>;
}

/** A sum of unknowns and lengths. */
interface Extent {
  readonly terms: Map<string, number>;
  readonly summands: Summand[];
}

const emptyExtent = (): Extent => ({ terms: new Map(), summands: [] });

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
  const { job } = plan;
  for (const layer of seenLayers(job, job.openings[of]!).slice(1)) {
    const given = givenReveal(job, of, layer);
    if (given === undefined) addTo(sum, reveal(layer), factor);
    else sum.summands.push(givenRevealSummand(job, of, layer, side, given[side], factor));
  }
  const length = excessAt(plan.excess, of, side);
  const what = `what ${openingName(job, of)} reaches further at the ${side}`;
  if (length !== 0) sum.summands.push({ kind: 'shape', what, length, times: factor });
}

/** A reveal that is stated by side, of the layer or of one opening. */
export function givenRevealSummand(
  job: Job,
  of: number,
  layer: number,
  side: Side,
  length: number,
  times: number,
): Summand {
  const own = typeof job.openings[of]!.steps?.[layer - 1] === 'object';
  const path = own ? ['openings', of, 'reveals', layer - 1, side] : ['mat', 'layers', layer, 'reveal', side];
  return { kind: 'given', what: `reveal of ${layerName(layer)} at the ${side}`, path, length, times };
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
export function structure(plan: Plan): readonly SumEquation[] {
  const { group } = plan;
  const equations = AXES.flatMap((axis): SumEquation[] => {
    const spans = plan.spans[axis.extent];
    const found: SumEquation[] = [];
    if (spans.length > 0) {
      const sum = emptyExtent();
      addTo(sum, outer(axis), 1);
      addTo(sum, border(axis.near), -1);
      addTo(sum, border(axis.far), -1);
      for (const span of spans) addOpening(sum, plan, span, axis, -1);
      if (spans.length > 1) {
        const { times, more } = axis === VERTICAL ? rowGap(group) : { times: 1, more: 0 };
        addTo(sum, gap(axis), -(spans.length - 1) * times);
        const at = ['arrange', 'rowWeighting'];
        const below = 1 - spans.length;
        if (more !== 0)
          sum.summands.push({ kind: 'given', what: 'weighting of the rows', path: at, length: more, times: below });
      }
      found.push(equationOf(sum));
      if (group.arrange.fill) {
        // Equal margins and gaps; the weighting alone may make the bottom larger.
        found.push(sumEquation({ [border(axis.near)]: 1, [gap(axis)]: -1 }, [], FILL));
        if (axis === HORIZONTAL || plan.job.mat.weighting === undefined)
          found.push(sumEquation({ [border(axis.far)]: 1, [gap(axis)]: -1 }, [], FILL));
      }
    }
    for (const index of group.placed) {
      const sum = emptyExtent();
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

const FILL = { what: 'borders and gaps alike', path: ['arrange', 'fill'] };

const equationOf = ({ terms, summands }: Extent): SumEquation =>
  sumEquation(
    Object.fromEntries(terms),
    summands.map((part) => ({ ...part, times: -part.times })),
  );

/** Shapes with a fixed proportion: width = aspect × height at the edge that is measured. */
function aspects({ job, group }: Plan): readonly SumEquation[] {
  return group.kinds.flatMap((of) => {
    const request = job.openings[of]!;
    const aspect = shapeOf(request.shape).aspect?.(request.fields ?? {});
    if (aspect === undefined) return [];
    const lowest = seenLayers(job, request).at(-1)!;
    const summands = bevelSummand(lowest, layerName(lowest), measuredInset(job, request), 2 * (1 - aspect));
    const rule = {
      what: `${request.shape} (width = ${Number(aspect.toFixed(4))} × height)`,
      path: ['openings', of, 'shape'],
    };
    return [sumEquation({ [opening(HORIZONTAL, of)]: 1, [opening(VERTICAL, of)]: -aspect }, summands, rule)];
  });
}

/** Every name that must come out with a length. */
export function unknowns({ job, group, spans }: Plan): readonly string[] {
  const sides = ['top', 'right', 'bottom', 'left'] as const;
  return [
    ...AXES.map(outer),
    ...group.kinds.flatMap((of) => AXES.map((axis) => opening(axis, of))),
    ...(group.arranged.length > 0 ? sides.map(border) : []),
    ...AXES.flatMap((axis) => (spans[axis.extent].length > 1 ? [gap(axis)] : [])),
    ...group.placed.flatMap((index) => sides.map((side) => place(side, index))),
    ...revealed(job).map(reveal),
    ...group.kinds.flatMap((of) =>
      job.openings[of]!.artwork === undefined ? [] : sides.map((side) => overlap(side, of)),
    ),
  ];
}
