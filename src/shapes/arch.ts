import { type Box, bottom, right } from '../geometry/box.ts';
import type { Path } from '../geometry/path.ts';
import type { Point, Size } from '../geometry/point.ts';
import { lengthOf, parallelBy } from './parallels.ts';
import type { Fault, Fields, Shape } from './shape.ts';

/** An arc over the span: its radius is (rise² + (span / 2)²) / (2 · rise) (Davis, arch radius tip). */
export function archRadius(span: number, rise: number): number {
  return (rise * rise + (span / 2) ** 2) / (2 * rise);
}

/** Sides, sill and an arc that rises `rise` above the sides; clockwise from the left end of the arc. */
function arched(frame: Box, rise: number): Path {
  const radius = archRadius(frame.width, rise);
  const spring = frame.y + rise;
  const start = { x: frame.x, y: spring };
  const centre = archCentre(frame, rise, radius);
  const end = { x: right(frame), y: spring };
  return {
    start,
    segments: [
      { kind: 'arc', centre, to: end, clockwise: true },
      ...(spring < bottom(frame) - 1e-9
        ? [
            { kind: 'line' as const, to: { x: right(frame), y: bottom(frame) } },
            { kind: 'line' as const, to: { x: frame.x, y: bottom(frame) } },
          ]
        : []),
      { kind: 'line', to: start },
    ],
    closed: true,
  };
}

const archCentre = (frame: Box, rise: number, radius: number): Point => ({
  x: frame.x + frame.width / 2,
  y: frame.y + rise + (radius - rise),
});

const roundOutline = (frame: Box): Path => arched(frame, frame.width / 2);

export const roundArch: Shape = {
  about: 'straight sides and sill under half a circle',
  fields: {},
  outline: roundOutline,
  parallel: parallelBy(roundOutline),
  reveals: 'bottom',
  fault: (size) =>
    size.height >= size.width / 2 - 1e-9
      ? undefined
      : {
          message: 'is lower than half of its width, so that no half circle fits over it',
          hint: 'make it higher, or take an arch',
        },
  figure: (frame, by) => [
    { kind: 'arc', centre: archCentre(frame, frame.width / 2, frame.width / 2), radius: frame.width / 2 + by },
  ],
};

/** A flat arch rises by about an eighth of its span (common practice, no source). */
const usualRise = (size: Size): number => size.width / 8;
const riseOf = (size: Size, fields: Fields): number => lengthOf(fields, 'rise', usualRise(size));

const flatOutline = (frame: Box, fields: Fields = {}): Path => arched(frame, riseOf(frame, fields));

function flatFault(size: Size, fields: Fields): Fault | undefined {
  const rise = riseOf(size, fields);
  if (rise > size.width / 2 + 1e-9) {
    const message = 'has an arch that rises more than half of its width';
    return { message, hint: 'make the rise smaller, or take round-arch', field: 'rise' };
  }
  if (rise > size.height + 1e-9) {
    return { message: 'has an arch that rises more than its height', hint: 'make the rise smaller', field: 'rise' };
  }
  return undefined;
}

export const arch: Shape = {
  about: 'straight sides and sill under part of a circle',
  fields: {
    rise: {
      kind: 'length',
      about: 'How far the arc rises above the straight sides; an eighth of the width without it',
      examples: ['1 1/2', '40 mm'],
      least: 1,
      most: 2500,
      usual: usualRise,
    },
  },
  outline: flatOutline,
  parallel: parallelBy(flatOutline),
  growsUnevenly: true,
  reveals: 'bottom',
  fault: flatFault,
  figure: (frame, by, fields) => {
    const rise = riseOf(frame, fields);
    const radius = archRadius(frame.width, rise);
    return [{ kind: 'arc', centre: archCentre(frame, rise, radius), radius: radius + by }];
  },
};
