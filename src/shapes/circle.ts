import { type Box, centre } from '../geometry/box.ts';
import type { Path } from '../geometry/path.ts';
import type { Shape } from './shape.ts';

/** Two half turns from the top. */
function outline(frame: Box): Path {
  return round(frame, 0);
}

function round(frame: Box, by: number): Path {
  const middle = centre(frame);
  const radius = (frame.width + frame.height) / 4 + by;
  const top = { x: middle.x, y: middle.y - radius };
  const low = { x: middle.x, y: middle.y + radius };
  return {
    start: top,
    segments: [
      { kind: 'arc', centre: middle, to: low, clockwise: true },
      { kind: 'arc', centre: middle, to: top, clockwise: true },
    ],
    closed: true,
  };
}

export const circle: Shape = {
  about: 'a circle',
  fields: {},
  outline,
  parallel: (frame, by) => ((frame.width + frame.height) / 4 + by > 0 ? round(frame, by) : undefined),
  aspect: () => 1,
  reveals: 'alike',
  figure: (frame, by) => [{ kind: 'arc', centre: centre(frame), radius: (frame.width + frame.height) / 4 + by }],
};
