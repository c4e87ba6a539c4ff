import type { Job, Side } from '../job/model.ts';
import { mmFromInches } from '../units/units.ts';
import { backInset } from './bevel.ts';
import { type Equation, equation } from './linear.ts';

/** One direction of the mat, with the sides at its two ends. */
export interface Axis {
  readonly extent: 'width' | 'height';
  readonly near: Side;
  readonly far: Side;
}

export const HORIZONTAL: Axis = { extent: 'width', near: 'left', far: 'right' };
export const VERTICAL: Axis = { extent: 'height', near: 'top', far: 'bottom' };
export const AXES: readonly Axis[] = [HORIZONTAL, VERTICAL];

/** The unknowns of a mat, by name. Borders are the top mat's; the opening is the face opening of the lowest layer. */
export const outer = (axis: Axis): string => `outer.${axis.extent}`;
export const border = (side: Side): string => `border.${side}`;
export const opening = (axis: Axis): string => `opening.${axis.extent}`;
/** Of the layer with that index, 1 being the first under mat; the same on all sides. */
export const reveal = (layer: number): string => `reveal.${layer}`;
/** Over the artwork at the edge that the job measures at; negative where the artwork floats. */
export const overlap = (side: Side): string => `overlap.${side}`;

/** The layers that have a reveal. */
export const revealed = (job: Job): readonly number[] => job.mat.layers.map((_, index) => index).slice(1);

/**
 * From the face line of the lowest layer to the edge that the job measures at, towards the middle. A reversed bevel
 * has its innermost edge on the face.
 */
export function measuredInset(job: Job): number {
  const lowest = job.mat.layers.at(-1)!;
  return job.openings[0]!.measure === 'sight' ? Math.max(0, backInset(lowest.board.thickness, lowest.bevel)) : 0;
}

/** What holds for every mat: outer = border + reveals + opening + reveals + border. */
export function structure(job: Job): readonly Equation[] {
  return AXES.map((axis) => {
    const terms: Record<string, number> = {
      [outer(axis)]: 1,
      [border(axis.near)]: -1,
      [border(axis.far)]: -1,
      [opening(axis)]: -1,
    };
    for (const layer of revealed(job)) terms[reveal(layer)] = -2;
    return equation(terms, 0);
  });
}

/** Reveal, and overlap or float, of a job that says nothing: 1/4 in or 6 mm (common practice). */
export const usualStep = (job: Job): number => (job.units === 'in' ? mmFromInches(1 / 4) : 6);

const same = (a: string, b: string): Equation => equation({ [a]: 1, [b]: -1 }, 0);

/**
 * What is assumed where the job says nothing, in this order, each only as far as the sizes before it leave it open:
 * left = right; top = bottom, unless there is a weighting; overlaps alike on opposite sides, then on both axes;
 * missing reveals alike, then of the usual step; the overlap of the usual step; sides = top.
 */
export function assumptions(job: Job): readonly Equation[] {
  const equations: Equation[] = [same(border('left'), border('right'))];
  if (job.mat.weighting === undefined) equations.push(same(border('top'), border('bottom')));
  const request = job.openings[0]!;
  if (request.artwork !== undefined) {
    equations.push(same(overlap('left'), overlap('right')), same(overlap('top'), overlap('bottom')));
    equations.push(same(overlap('left'), overlap('top')));
  }
  const missing = revealed(job).filter((layer) => job.mat.layers[layer]!.reveal === undefined);
  for (const layer of missing.slice(1)) equations.push(same(reveal(missing[0]!), reveal(layer)));
  for (const layer of missing) equations.push(equation({ [reveal(layer)]: 1 }, usualStep(job)));
  if (request.artwork !== undefined) {
    const usual = request.float === undefined ? usualStep(job) : -usualStep(job);
    for (const side of ['left', 'right', 'top', 'bottom'] as const) {
      equations.push(equation({ [overlap(side)]: 1 }, usual));
    }
  }
  equations.push(same(border('left'), border('top')));
  return equations;
}
