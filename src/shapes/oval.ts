import { type Box, centre } from '../geometry/box.ts';
import { type Curve, fitCubics } from '../geometry/fit.ts';
import { parallelOf } from '../geometry/parallel.ts';
import { type Path, placedSegment, reversed, type Segment } from '../geometry/path.ts';
import type { Shape } from './shape.ts';

/**
 * The face edge is an ellipse; its parallel is not (J. Rose, Mechanical Drawing Self-Taught, on the ellipse), and is
 * fitted from the ellipse itself. Both are cubics that lie within 0.0002 mm of the true curve, points and directions at
 * their joints exact.
 */
function outline(frame: Box): Path {
  return quarters(frame, 0);
}

function parallel(frame: Box, by: number): Path | undefined {
  const { width, height } = frame;
  const [a, b] = [Math.max(width, height) / 2, Math.min(width, height) / 2];
  if (!(Math.min(b, b + by) > 0)) return undefined;
  // The ends of the long axis bend with a radius of b² / a: farther in, the parallel crosses itself and is cut back.
  if (by > -(b * b) / a) return quarters(frame, by);
  const made = parallelOf(outline(frame), by);
  return made === 'nothing' || made === 'parts' ? undefined : made;
}

/** From the top, clockwise; each quarter is the mirror image of the one before. */
function quarters(frame: Box, by: number): Path {
  const middle = centre(frame);
  const [a, b] = [frame.width / 2, frame.height / 2];
  const quarter = fitCubics(parallelEllipse(a, b, by), 0, Math.PI / 2);
  const start = { x: 0, y: -b - by };
  const turnedBack = reversed({ start, segments: quarter, closed: false }).segments;
  const place = (segments: readonly Segment[], sx: number, sy: number): Segment[] =>
    segments.map((segment) => placedSegment(segment, (p) => ({ x: middle.x + sx * p.x, y: middle.y + sy * p.y })));
  const segments = [
    ...place(quarter, 1, 1),
    ...place(turnedBack, 1, -1),
    ...place(quarter, -1, -1),
    ...place(turnedBack, -1, 1),
  ];
  const top = { x: middle.x, y: middle.y + start.y };
  segments[segments.length - 1] = { ...segments.at(-1)!, to: top };
  return { start: top, segments, closed: true };
}

/** Clockwise from the top: (a sin t, −b cos t), moved along its normal (b sin t, −a cos t). */
function parallelEllipse(a: number, b: number, by: number): Curve {
  const size = (t: number): number => Math.hypot(b * Math.sin(t), a * Math.cos(t));
  return {
    at: (t) => {
      const k = by / size(t);
      return { x: (a + k * b) * Math.sin(t), y: -(b + k * a) * Math.cos(t) };
    },
    speed: (t) => {
      // The normal turns by a·b / size³ for each unit of length, which is size long for each unit of t.
      const k = 1 + (by * a * b) / size(t) ** 3;
      return { x: k * a * Math.cos(t), y: k * b * Math.sin(t) };
    },
  };
}

export const oval: Shape = {
  about: 'an ellipse',
  fields: {},
  outline,
  parallel,
  reveals: 'alike',
  figure: (frame, by) => [
    {
      kind: 'oval',
      centre: centre(frame),
      halfWidth: frame.width / 2 + by,
      halfHeight: frame.height / 2 + by,
    },
  ],
};
