import type { Box } from '../geometry/box.ts';
import type { Path, Segment } from '../geometry/path.ts';
import { inFrom, withCorners } from './corners.ts';
import { lengthOf, parallelBy } from './parallels.ts';
import type { Fields, Shape } from './shape.ts';

/** Every corner steps in: each step goes `notch` along both sides. */
function outline(frame: Box, fields: Fields = {}): Path {
  const notch = lengthOf(fields, 'notch', 0);
  const steps = lengthOf(fields, 'steps', 1);
  return withCorners(frame, (corner) => {
    const segments: Segment[] = [];
    for (let step = 1; step <= steps; step++) {
      segments.push({ kind: 'line', to: inFrom(corner, (steps + 1 - step) * notch, step * notch) });
      segments.push({ kind: 'line', to: inFrom(corner, (steps - step) * notch, step * notch) });
    }
    return { first: inFrom(corner, steps * notch, 0), segments };
  });
}

export const notched: Shape = {
  about: 'four straight sides, the corners stepped in at right angles',
  fields: {
    notch: {
      kind: 'length',
      about: 'How far a step goes in along both sides',
      examples: ['1/2', '12 mm'],
      least: 1,
      most: 1000,
    },
    steps: { kind: 'count', about: 'Steps at each corner', examples: [1, 2], least: 1, most: 6, usual: 1 },
  },
  outline,
  parallel: parallelBy(outline),
  reveals: 'any side',
  fault: (size, fields) => {
    const reach = 2 * lengthOf(fields, 'notch', 0) * lengthOf(fields, 'steps', 1);
    if (reach < Math.min(size.width, size.height) - 1e-9) return undefined;
    return {
      message: 'has corners whose steps take half of its shorter side or more',
      hint: 'make the notch smaller, or take fewer steps',
      field: 'notch',
    };
  },
};
