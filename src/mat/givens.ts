import type { Job, SomeSides, Weighting } from '../job/model.ts';
import { SIDES } from '../job/model.ts';
import type { Problem } from '../problems/problem.ts';
import { showLength } from '../units/print.ts';
import type { LengthUnit } from '../units/units.ts';
import { layerName } from './layers.ts';
import { type Equation, equation } from './linear.ts';
import { AXES, type Axis, border, measuredInset, opening, outer, overlap, reveal } from './unknowns.ts';

/** A size that the job states, as an equation whose residual is a length. */
export interface Given extends Equation {
  readonly path: Problem['path'];
  /** What to call it, e.g. `left border`. */
  readonly what: string;
  /** The length that was written, mm; undefined where a rule was written instead. */
  readonly shown?: number;
  /** True for the sizes of the whole mat. */
  readonly whole: boolean;
}

type Terms = Readonly<Record<string, number>>;

function given(path: Problem['path'], what: string, terms: Terms, shown: number, value = shown, whole = false): Given {
  return { ...equation(terms, value), path, what, shown, whole };
}

function rule(what: string, terms: Terms, value: number): Given {
  return { ...equation(terms, value), path: ['mat', 'weighting'], what, whole: false };
}

function openingGivens(job: Job): Given[] {
  const request = job.openings[0]!;
  const path = ['openings', 0];
  const givens: Given[] = [];
  const inset = 2 * measuredInset(job);
  for (const axis of AXES) {
    const { extent, near, far } = axis;
    if (request.artwork !== undefined) {
      const terms = { [opening(axis)]: 1, [overlap(near)]: 1, [overlap(far)]: 1 };
      const size = request.artwork[extent];
      givens.push(given([...path, 'artwork'], `artwork ${extent}`, terms, size, size + inset));
    }
    if (request.size !== undefined) {
      const size = request.size[extent];
      givens.push(given([...path, 'size'], `opening ${extent}`, { [opening(axis)]: 1 }, size, size + inset));
    }
  }
  const perSide = (key: 'overlap' | 'float', sides: SomeSides, sign: number): void => {
    for (const side of SIDES) {
      const length = sides[side];
      if (length === undefined) continue;
      givens.push(given([...path, key, side], `${key} at the ${side}`, { [overlap(side)]: sign }, length));
    }
  };
  perSide('overlap', request.overlap, 1);
  perSide('float', request.float ?? {}, -1);
  return givens;
}

function revealGivens(job: Job): Given[] {
  return job.mat.layers.flatMap((layer, index) =>
    index === 0 || layer.reveal === undefined
      ? []
      : [
          given(
            ['mat', 'layers', index, 'reveal'],
            `reveal of ${layerName(index)}`,
            { [reveal(index)]: 1 },
            layer.reveal,
          ),
        ],
  );
}

/** The diagonal's top border is a share of top and bottom together that hangs on the widths (`diagonal.ts`). */
function weightingGivens(weighting: Weighting | undefined, units: LengthUnit, share: number | undefined): Given[] {
  const [top, bottom] = [border('top'), border('bottom')];
  switch (weighting?.kind) {
    case undefined:
      return [];
    case 'none':
      return [rule('weighting none (bottom = top)', { [bottom]: 1, [top]: -1 }, 0)];
    case 'add': {
      const what = `weighting (bottom = top + ${showLength(weighting.length, units)})`;
      return [rule(what, { [bottom]: 1, [top]: -1 }, weighting.length)];
    }
    case 'ratio': {
      const what = `weighting (bottom = ${Number(weighting.ratio.toFixed(4))} × top)`;
      return [rule(what, { [bottom]: 1, [top]: -weighting.ratio }, 0)];
    }
    case 'diagonal': {
      const centred = rule('weighting diagonal (left = right)', { [border('left')]: 1, [border('right')]: -1 }, 0);
      if (share === undefined) return [centred];
      return [centred, rule('weighting diagonal', { [top]: 1 - share, [bottom]: -share }, 0)];
    }
    default: {
      const never: never = weighting;
      return never;
    }
  }
}

function borderGivens(job: Job): Given[] {
  return (['left', 'top', 'right', 'bottom'] as const).flatMap((side) => {
    const length = job.mat.border[side];
    return length === undefined
      ? []
      : [given(['mat', 'border', side], `${side} border`, { [border(side)]: 1 }, length)];
  });
}

function wholeGivens(job: Job, axis: Axis): Given[] {
  const { extent } = axis;
  const terms = { [outer(axis)]: 1 };
  const givens: Given[] = [];
  const frame = job.mat.frame;
  if (frame?.inside !== undefined) {
    const inside = frame.inside[extent];
    const what = `frame's inside ${extent}`;
    givens.push(given(['mat', 'frame', 'inside'], what, terms, inside, inside - frame.clearance, true));
  }
  if (frame?.nominal !== undefined) {
    const nominal = frame.nominal[extent];
    givens.push(given(['mat', 'frame', 'nominal'], `frame's nominal ${extent}`, terms, nominal, nominal, true));
  }
  if (job.mat.outer !== undefined) {
    const length = job.mat.outer[extent];
    givens.push(given(['mat', 'outer'], `outer ${extent}`, terms, length, length, true));
  }
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
    ...weightingGivens(job.mat.weighting, job.units, diagonalShare),
    ...borderGivens(job),
    ...AXES.flatMap((axis) => wholeGivens(job, axis)),
  ];
}
