import type { Size } from '../geometry/point.ts';
import type { BySide, SomeSides } from '../geometry/sides.ts';
import { SIDES } from '../geometry/sides.ts';
import type { Job } from '../job/job.ts';
import type { OpeningRequest } from '../job/opening.ts';
import type { Problem } from '../problems/problem.ts';
import { shapeOf } from '../shapes/shapes.ts';
import { showLength } from '../units/print.ts';
import type { LengthUnit } from '../units/units.ts';
import { layerName } from './layers.ts';
import { type Equation, equation } from './linear.ts';
import { openingName } from './names.ts';
import type { Plan } from './structure.ts';
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
  VERTICAL,
} from './unknowns.ts';

/** A size or a rule that the job states, as an equation whose residual is a length. */
export interface Given extends Equation {
  readonly path: Problem['path'];
  /** In words, with its length: `left border 3 in`. */
  readonly what: string;
  /** What the other sizes make of it, in words, where they leave that residual: `3 1/2 in`. */
  readonly others: (residual: number) => string;
  /** True for the sizes of the whole mat. */
  readonly whole: boolean;
}

type Terms = Readonly<Record<string, number>>;

interface Stated {
  readonly path: Problem['path'];
  /** e.g. `left border`. */
  readonly what: string;
  readonly terms: Terms;
  /** As it was written, mm. */
  readonly length: number;
  /** What the terms sum up to, where that is not the length. */
  readonly value?: number;
  readonly whole?: boolean;
}

function given(units: LengthUnit, stated: Stated): Given {
  const { path, what, terms, length, value = length, whole = false } = stated;
  return {
    ...equation(terms, value),
    path,
    what: `${what} ${showLength(length, units)}`,
    others: (residual) => showLength(length - residual, units),
    whole,
  };
}

/** `bottom = times × top + more`, the times being 1 or the more 0. */
function bottomRule(units: LengthUnit, said: string, times: number, more: number): Given {
  const others = (residual: number): string => {
    if (times === 1) return `bottom = top + ${showLength(more - residual, units)}`;
    return `the bottom border ${showLength(Math.abs(residual), units)} ${residual < 0 ? 'wider' : 'narrower'} than that`;
  };
  const what = `weighting ${said}`;
  const terms = { [border('bottom')]: 1, [border('top')]: -times };
  return { ...equation(terms, more), path: ['mat', 'weighting'], what, others, whole: false };
}

function centredRule(units: LengthUnit): Given {
  return {
    ...equation({ [border('right')]: 1, [border('left')]: -1 }, 0),
    path: ['mat', 'weighting'],
    what: 'weighting diagonal (left = right)',
    others: (residual) => `right = left + ${showLength(-residual, units)}`,
    whole: false,
  };
}

/** The diagonal's top border is a share of top and bottom together that hangs on the widths (`diagonal.ts`). */
function weightingGivens(job: Job, share: number | undefined): Given[] {
  const { units } = job;
  const { weighting } = job.mat;
  switch (weighting?.kind) {
    case undefined:
      return [];
    case 'none':
      return [bottomRule(units, 'none (bottom = top)', 1, 0)];
    case 'add': {
      const { length } = weighting;
      return [bottomRule(units, `(bottom = top + ${showLength(length, units)})`, 1, length)];
    }
    case 'ratio':
      return [bottomRule(units, `(bottom = ${Number(weighting.ratio.toFixed(4))} × top)`, weighting.ratio, 0)];
    case 'diagonal':
      return share === undefined
        ? [centredRule(units)]
        : [centredRule(units), bottomRule(units, 'diagonal', (1 - share) / share, 0)];
    default: {
      const never: never = weighting;
      return never;
    }
  }
}

/** Several openings are told apart by what documents call them. */
function named(job: Job, index: number): string {
  return job.openings.length === 1 ? '' : ` of ${openingName(job, index)}`;
}

/** What the openings of one kind state, told of the first of them. */
function openingGivens(job: Job, index: number): Given[] {
  const { units } = job;
  const request = job.openings[index]!;
  const at = ['openings', index];
  const inset = 2 * measuredInset(job, request);
  const of = named(job, index);
  const givens: Given[] = [];
  for (const axis of AXES) {
    const { extent, near, far } = axis;
    if (request.artwork !== undefined) {
      const length = request.artwork[extent];
      const terms = { [opening(axis, index)]: 1, [overlap(near, index)]: 1, [overlap(far, index)]: 1 };
      const path = [...at, 'artwork'];
      givens.push(given(units, { path, what: `artwork ${extent}${of}`, terms, length, value: length + inset }));
    }
    const size = sizeOf(request);
    if (size !== undefined) {
      const length = size[extent];
      const path = [...at, request.size === undefined ? 'outline' : 'size'];
      const terms = { [opening(axis, index)]: 1 };
      givens.push(given(units, { path, what: `opening ${extent}${of}`, terms, length, value: length + inset }));
    }
  }
  const perSide = (key: 'overlap' | 'float', sides: SomeSides, sign: number): void => {
    for (const side of SIDES) {
      const length = sides[side];
      if (length === undefined) continue;
      const terms = { [overlap(side, index)]: sign };
      givens.push(given(units, { path: [...at, key, side], what: `${key} at the ${side}${of}`, terms, length }));
    }
  };
  perSide('overlap', request.overlap, 1);
  perSide('float', request.float ?? {}, -1);
  return givens;
}

/** As given; an outline without an artwork has a size of its own. */
function sizeOf(request: OpeningRequest): Size | undefined {
  if (request.size !== undefined || request.artwork !== undefined) return request.size;
  return shapeOf(request.shape).natural?.(request.fields ?? {});
}

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

function gapGivens({ job, group, leads }: Plan): Given[] {
  const { across, down } = group.arrange;
  const state = (axis: Axis, what: string, length: number | undefined): Given[] => {
    if (length === undefined || leads[axis.extent].length < 2) return [];
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
    const path = ['mat', 'border', side];
    return [given(job.units, { path, what: `${side} border`, terms: { [border(side)]: 1 }, length })];
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
  const state = (path: Problem['path'], what: string, length: number, value = length): void => {
    givens.push(given(job.units, { path, what: `${what} ${extent}`, terms, length, value, whole: true }));
  };
  if (frame?.inside !== undefined) {
    const inside = frame.inside[extent];
    state(['mat', 'frame', 'inside'], "frame's inside", inside, inside - frame.clearance);
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
    ...group.kinds.flatMap((of) => openingGivens(job, of)),
    ...revealGivens(job),
    ...gapGivens(plan),
    ...(group.arranged.length === 0 ? [] : weightingGivens(job, diagonalShare)),
    ...placeGivens(plan),
    ...(kept === undefined ? [] : AXES.flatMap((axis) => evenGivens(job, axis, kept))),
    ...borderGivens(job),
    ...AXES.flatMap((axis) => wholeGivens(job, axis)),
  ];
}
