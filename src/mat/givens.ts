import type { Job, SomeSides } from '../job/model.ts';
import { SIDES } from '../job/model.ts';
import type { Problem } from '../problems/problem.ts';
import { showLength } from '../units/print.ts';
import type { LengthUnit } from '../units/units.ts';
import { layerName } from './layers.ts';
import { type Equation, equation } from './linear.ts';
import { AXES, type Axis, border, measuredInset, opening, outer, overlap, reveal, revealed } from './unknowns.ts';

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

function openingGivens(job: Job): Given[] {
  const { units } = job;
  const request = job.openings[0]!;
  const at = ['openings', 0];
  const inset = 2 * measuredInset(job);
  const givens: Given[] = [];
  for (const axis of AXES) {
    const { extent, near, far } = axis;
    if (request.artwork !== undefined) {
      const length = request.artwork[extent];
      const terms = { [opening(axis)]: 1, [overlap(near)]: 1, [overlap(far)]: 1 };
      const path = [...at, 'artwork'];
      givens.push(given(units, { path, what: `artwork ${extent}`, terms, length, value: length + inset }));
    }
    if (request.size !== undefined) {
      const length = request.size[extent];
      const path = [...at, 'size'];
      const terms = { [opening(axis)]: 1 };
      givens.push(given(units, { path, what: `opening ${extent}`, terms, length, value: length + inset }));
    }
  }
  const perSide = (key: 'overlap' | 'float', sides: SomeSides, sign: number): void => {
    for (const side of SIDES) {
      const length = sides[side];
      if (length === undefined) continue;
      const terms = { [overlap(side)]: sign };
      givens.push(given(units, { path: [...at, key, side], what: `${key} at the ${side}`, terms, length }));
    }
  };
  perSide('overlap', request.overlap, 1);
  perSide('float', request.float ?? {}, -1);
  return givens;
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
export function givensOf(job: Job, diagonalShare?: number): readonly Given[] {
  return [
    ...openingGivens(job),
    ...revealGivens(job),
    ...weightingGivens(job, diagonalShare),
    ...borderGivens(job),
    ...AXES.flatMap((axis) => wholeGivens(job, axis)),
  ];
}
