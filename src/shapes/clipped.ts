import type { Box } from '../geometry/box.ts';
import type { Path } from '../geometry/path.ts';
import { inFrom, withCorners } from './corners.ts';
import { lengthOf, parallelBy } from './parallels.ts';
import type { Fields, Shape } from './shape.ts';

function outline(frame: Box, fields: Fields = {}): Path {
  const clip = lengthOf(fields, 'clip', 0);
  return withCorners(frame, (corner) => ({
    first: inFrom(corner, clip, 0),
    segments: [{ kind: 'line', to: inFrom(corner, 0, clip) }],
  }));
}

export const clipped: Shape = {
  about: 'four straight sides, the corners cut off at 45°',
  fields: {
    clip: {
      kind: 'length',
      about: 'How much of each side is cut off at a corner',
      examples: ['1', '25 mm'],
      least: 0.5,
      most: 2500,
    },
  },
  outline,
  parallel: parallelBy(outline),
  reveals: 'any side',
  fault: (size, fields) =>
    2 * lengthOf(fields, 'clip', 0) < Math.min(size.width, size.height) - 1e-9
      ? undefined
      : {
          message: 'has corners cut off by half of its shorter side or more',
          hint: 'make the clip smaller',
          field: 'clip',
        },
};
