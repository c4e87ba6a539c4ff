import { type Box, bottom, grown, right } from '../geometry/box.ts';
import { type Path, polygon } from '../geometry/path.ts';
import type { Shape } from './shape.ts';

/** Its straight sides come in the order top, right, bottom, left. */
function outline(frame: Box): Path {
  return polygon([
    { x: frame.x, y: frame.y },
    { x: right(frame), y: frame.y },
    { x: right(frame), y: bottom(frame) },
    { x: frame.x, y: bottom(frame) },
  ]);
}

/** Corners stay sharp: two bevels meet in a mitre. */
function parallel(frame: Box, by: number): Path | undefined {
  const moved = grown(frame, by);
  return moved.width > 0 && moved.height > 0 ? outline(moved) : undefined;
}

export const rectangle: Shape = { about: 'four straight sides', fields: {}, outline, parallel, reveals: 'any side' };
