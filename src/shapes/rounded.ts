import { type Box, grown } from '../geometry/box.ts';
import type { Path } from '../geometry/path.ts';
import { inFrom, withCorners } from './corners.ts';
import { lengthOf } from './parallels.ts';
import { rectangle } from './rectangle.ts';
import type { Fields, Shape } from './shape.ts';

function outline(frame: Box, fields: Fields = {}): Path {
  const radius = lengthOf(fields, 'radius', 0);
  if (radius <= 0) return rectangle.outline(frame);
  return withCorners(frame, (corner) => ({
    first: inFrom(corner, radius, 0),
    segments: [{ kind: 'arc', centre: inFrom(corner, radius, radius), to: inFrom(corner, 0, radius), clockwise: true }],
  }));
}

/** The radius grows and shrinks with the distance; inwards beyond it the corner is a sharp one. */
function parallel(frame: Box, by: number, fields: Fields = {}): Path | undefined {
  const moved = grown(frame, by);
  if (moved.width <= 0 || moved.height <= 0) return undefined;
  const radius = lengthOf(fields, 'radius', 0);
  return radius <= 0 ? rectangle.outline(moved) : outline(moved, { radius: Math.max(0, radius + by) });
}

export const rounded: Shape = {
  about: 'four straight sides with rounded corners',
  fields: {
    radius: {
      kind: 'length',
      about: 'Radius of the corners, on the edge that the size is measured at',
      examples: ['1/2', '12 mm'],
      least: 0.5,
      most: 2500,
    },
  },
  outline,
  parallel,
  reveals: 'any side',
  fault: (size, fields) => {
    const radius = lengthOf(fields, 'radius', 0);
    if (2 * radius <= Math.min(size.width, size.height) + 1e-9) return undefined;
    return {
      message: 'has corners whose radius is more than half of its shorter side',
      hint: 'make the radius smaller',
      field: 'radius',
    };
  },
  figure: (frame, by, fields) => {
    const radius = lengthOf(fields, 'radius', 0);
    if (radius + by <= 0) return [];
    const [first] = [inFrom({ at: frame, before: { x: 0, y: -1 }, after: { x: 1, y: 0 } }, radius, radius)];
    return [{ kind: 'arc', centre: first, radius: radius + by }];
  },
};
