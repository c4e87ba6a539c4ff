import type { Side } from '../../geometry/sides.ts';
import type { Job } from '../../job/job.ts';
import type { OpeningRequest } from '../../job/opening.ts';
import { mmFromInches } from '../../units/units.ts';
import { backInset } from '../bevel.ts';

/** One direction of the mat, with the sides at its two ends. */
export interface Axis {
  readonly extent: 'width' | 'height';
  readonly near: Side;
  readonly far: Side;
}

export const HORIZONTAL: Axis = { extent: 'width', near: 'left', far: 'right' };
export const VERTICAL: Axis = { extent: 'height', near: 'top', far: 'bottom' };
export const AXES: readonly Axis[] = [HORIZONTAL, VERTICAL];

/**
 * The unknowns of a mat, by name. Borders are the top mat's, to the whole group of its openings; an opening is the face
 * opening of its lowest layer. Openings that ask for the same share their unknowns, under the index of the first of them.
 */
export const outer = (axis: Axis): string => `outer.${axis.extent}`;
export const border = (side: Side): string => `border.${side}`;
export const opening = (axis: Axis, of = 0): string => `opening.${of}.${axis.extent}`;
/** Of the layer with that index, 1 being the first under mat; the same on all sides. */
export const reveal = (layer: number): string => `reveal.${layer}`;
/** Over the artwork at the edge that the job measures at; negative where the artwork floats. */
export const overlap = (side: Side, of = 0): string => `overlap.${of}.${side}`;
/** Between neighbours, in that direction. */
export const gap = (axis: Axis): string => `gap.${axis.extent}`;
/** Mat edge to an opening that has a place of its own. */
export const place = (side: Side, of: number): string => `place.${of}.${side}`;

/** The layers whose reveal is one length on every side. */
export const revealed = (job: Job): readonly number[] =>
  job.mat.layers.flatMap((layer, index) => (index === 0 || layer.reveals !== undefined ? [] : [index]));

/** The layers that are seen in an opening, by index from the top mat down. */
export function seenLayers(job: Job, request: OpeningRequest): readonly number[] {
  return job.mat.layers.flatMap((_, index) => (index > 0 && request.steps?.[index - 1] === 'skip' ? [] : [index]));
}

/**
 * From the face line of the lowest layer to the edge that the job measures at, towards the middle. A reversed bevel
 * has its innermost edge on the face.
 */
export function measuredInset(job: Job, request: OpeningRequest): number {
  const lowest = job.mat.layers[seenLayers(job, request).at(-1)!]!;
  return request.measure === 'sight' ? Math.max(0, backInset(lowest.board.thickness, lowest.bevel)) : 0;
}

/** Reveal, and overlap or float, of a job that says nothing: 1/4 in or 6 mm (common practice). */
export const usualStep = (job: Job): number => (job.units === 'in' ? mmFromInches(1 / 4) : 6);
/** Between openings, of a job that says nothing: 1 in or 25 mm (common practice). */
export const usualGap = (job: Job): number => (job.units === 'in' ? mmFromInches(1) : 25);
