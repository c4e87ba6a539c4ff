import type { Size } from '../../geometry/point.ts';
import { type BySide, type GivenBySides, namesNoSide, SIDES, type Side } from '../../geometry/sides.ts';
import type { Job } from '../../job/job.ts';
import type { OpeningRequest } from '../../job/opening.ts';
import { defined } from '../../problems/defined.ts';
import type { Problem } from '../../problems/problem.ts';
import { shapeOf } from '../../shapes/shapes.ts';
import { layerName } from '../layers.ts';
import { openingName } from '../names.ts';
import { type Given, given } from './given.ts';
import type { Plan } from './structure.ts';
import { bevelSummand, type Summand } from './sum-equation.ts';
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
import { weightingGivens } from './weighting-givens.ts';

/** Several openings are told apart by what documents call them; of those that are alike the first is named. */
function named({ job, group }: Plan, index: number): string {
  if (job.openings.length === 1) return '';
  const like = group.alikes.filter((each) => each === index).length > 1 ? ' and its like' : '';
  return ` of ${openingName(job, index)}${like}`;
}

/** Where a length by side was written, and what is said of one that was written for several. */
function writtenAt(
  sides: GivenBySides,
  side: Side,
  map: Problem['path'],
  what: string,
): { readonly path: Problem['path']; readonly shared?: string } {
  if (sides.written === 'once') return { path: map, shared: what };
  const pair = sides.written === 'pair' && (side === 'left' || side === 'right');
  return pair ? { path: [...map, 'sides'], shared: `${what} at the sides` } : { path: [...map, side] };
}

/** What the openings of one kind state, told of the first of them. */
function openingGivens(plan: Plan, index: number): Given[] {
  const { job, group } = plan;
  const { units } = job;
  const request = job.openings[index]!;
  const at = ['openings', index];
  const others = group.alikes.flatMap((of, each) => (of === index && each !== index ? [each] : []));
  const also = (...more: readonly string[]) => others.map((each) => ['openings', each, ...more]);
  const inset = insetSummands(job, request, 2);
  const of = named(plan, index);
  const givens: Given[] = [];
  const covered = request.float !== undefined || !namesNoSide(request.overlap);
  for (const axis of AXES) {
    const { extent, near, far } = axis;
    if (request.artwork !== undefined) {
      const terms = { [opening(axis, index)]: 1, [overlap(near, index)]: 1, [overlap(far, index)]: 1 };
      const stated = { path: [...at, 'artwork'], what: `artwork ${extent}${of}`, length: request.artwork[extent] };
      givens.push(given(units, { ...stated, terms, more: inset, also: also('artwork'), fixed: covered }));
    }
    const size = sizeOf(request);
    if (size !== undefined) {
      const key = request.size === undefined ? 'outline' : 'size';
      const stated = { path: [...at, key], what: `opening ${extent}${of}`, length: size[extent] };
      const terms = { [opening(axis, index)]: 1 };
      // Left out, an outline's own size stands in its place.
      const natural = request.artwork === undefined && naturalSize(request) !== undefined;
      givens.push(given(units, { ...stated, terms, more: inset, also: also(key), fixed: natural }));
    }
  }
  const perSide = (key: 'overlap' | 'float', sides: GivenBySides, sign: number): void => {
    for (const side of SIDES) {
      const length = sides[side];
      if (length === undefined) continue;
      const { path, shared } = writtenAt(sides, side, [...at, key], `${key}${of}`);
      const terms = { [overlap(side, index)]: sign };
      const all = {
        path,
        what: `${key} at the ${side}${of}`,
        terms,
        length,
        also: also(...(path.slice(2) as string[])),
      };
      givens.push(given(units, { ...all, ...defined({ shared }) }));
    }
  };
  perSide('overlap', request.overlap, 1);
  perSide('float', request.float ?? {}, -1);
  return givens;
}

/** From the lowest face to the edge that is measured, as often as it is counted. */
export function insetSummands(job: Job, request: OpeningRequest, times: number): readonly Summand[] {
  const lowest = seenLayers(job, request).at(-1)!;
  return bevelSummand(lowest, layerName(lowest), measuredInset(job, request), times);
}

/** As given; an outline without an artwork has a size of its own. */
function sizeOf(request: OpeningRequest): Size | undefined {
  if (request.size !== undefined || request.artwork !== undefined) return request.size;
  return naturalSize(request);
}

const naturalSize = (request: OpeningRequest): Size | undefined =>
  shapeOf(request.shape).natural?.(request.fields ?? {});

function placeGivens({ job, group }: Plan): Given[] {
  return group.placed.flatMap((index) =>
    (['left', 'top', 'right', 'bottom'] as const).flatMap((side) => {
      const length = job.openings[index]!.place![side];
      if (length === undefined) return [];
      const path = ['openings', index, 'place', side];
      const what = `${side} of ${openingName(job, index)}`;
      return [given(job.units, { path, what, terms: { [place(side, index)]: 1 }, length })];
    }),
  );
}

function gapGivens({ job, group, spans }: Plan): Given[] {
  const { across, down } = group.arrange;
  const state = (axis: Axis, what: string, length: number | undefined): Given[] => {
    if (length === undefined || spans[axis.extent].length < 2) return [];
    return [given(job.units, { path: ['arrange', 'gap'], what, terms: { [gap(axis)]: 1 }, length })];
  };
  return [...state(HORIZONTAL, 'gap between neighbours', across), ...state(VERTICAL, 'gap between rows', down)];
}

function revealGivens(job: Job): Given[] {
  return revealed(job).flatMap((index) => {
    const length = job.mat.layers[index]!.reveal;
    if (length === undefined) return [];
    const path = ['mat', 'layers', index, 'reveal'];
    const what = `reveal of ${layerName(index)}`;
    return [given(job.units, { path, what, terms: { [reveal(index)]: 1 }, length })];
  });
}

function borderGivens(job: Job): Given[] {
  return (['left', 'top', 'right', 'bottom'] as const).flatMap((side) => {
    const length = job.mat.border[side];
    if (length === undefined) return [];
    const written = writtenAt(job.mat.border, side, ['mat', 'border'], 'border');
    return [given(job.units, { ...written, what: `${side} border`, terms: { [border(side)]: 1 }, length })];
  });
}

/** Two opposite borders that were asked for keep their difference. */
function evenGivens(job: Job, { near, far }: Axis, kept: BySide<number>): Given[] {
  if (job.mat.border[near] === undefined || job.mat.border[far] === undefined) return [];
  const terms = { [border(far)]: 1, [border(near)]: -1 };
  return [given(job.units, { path: ['mat', 'border'], what: 'borders', terms, length: kept[far] - kept[near] })];
}

function wholeGivens(job: Job, axis: Axis): Given[] {
  const { extent } = axis;
  const { frame, outer: whole } = job.mat;
  const terms = { [outer(axis)]: 1 };
  const givens: Given[] = [];
  const state = (path: Problem['path'], what: string, length: number, more: readonly Summand[] = []): void => {
    givens.push(given(job.units, { path, what: `${what} ${extent}`, terms, length, more, whole: true }));
  };
  if (frame?.inside !== undefined) {
    const clearance = { what: 'clearance', path: ['mat', 'frame', 'clearance'], length: frame.clearance, times: -1 };
    state(['mat', 'frame', 'inside'], "frame's inside", frame.inside[extent], [{ kind: 'given', ...clearance }]);
  }
  if (frame?.nominal !== undefined) state(['mat', 'frame', 'nominal'], "frame's nominal", frame.nominal[extent]);
  if (whole !== undefined) state(['mat', 'outer'], 'outer', whole[extent]);
  return givens;
}

/**
 * Everything that the job states, the most trusted first: where givens contradict each other, the one that stands
 * last is named. So the outer size is the first to be blamed, then the frame, the borders, the weighting, the reveals,
 * the overlap, the opening and last the artwork, which is what it is.
 */
export function givensOf(plan: Plan, diagonalShare?: number): readonly Given[] {
  const { job, group, kept } = plan;
  return [
    ...group.kinds.flatMap((of) => openingGivens(plan, of)),
    ...revealGivens(job),
    ...gapGivens(plan),
    ...(group.arranged.length === 0 ? [] : weightingGivens(job, diagonalShare)),
    ...placeGivens(plan),
    ...(kept === undefined ? [] : AXES.flatMap((axis) => evenGivens(job, axis, kept))),
    ...borderGivens(job),
    ...AXES.flatMap((axis) => wholeGivens(job, axis)),
  ];
}
