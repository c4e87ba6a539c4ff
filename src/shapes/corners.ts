import { type Box, bottom, right } from '../geometry/box.ts';
import type { Path, Segment } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';

/** A corner of a box: the outline comes along `before` towards it and leaves it along `after`, clockwise to the eye. */
export interface Corner {
  readonly at: Point;
  readonly before: Point;
  readonly after: Point;
}

/** Top left, top right, bottom right, bottom left. */
function cornersOf(frame: Box): readonly Corner[] {
  const [x0, y0, x1, y1] = [frame.x, frame.y, right(frame), bottom(frame)];
  return [
    { at: { x: x0, y: y0 }, before: { x: 0, y: -1 }, after: { x: 1, y: 0 } },
    { at: { x: x1, y: y0 }, before: { x: 1, y: 0 }, after: { x: 0, y: 1 } },
    { at: { x: x1, y: y1 }, before: { x: 0, y: 1 }, after: { x: -1, y: 0 } },
    { at: { x: x0, y: y1 }, before: { x: -1, y: 0 }, after: { x: 0, y: -1 } },
  ];
}

/** A point in from the corner: `back` along the side that comes in, `on` along the side that leaves. */
export function inFrom({ at, before, after }: Corner, back: number, on: number): Point {
  return { x: at.x - before.x * back + after.x * on, y: at.y - before.y * back + after.y * on };
}

/** A box with each corner replaced: the first point of `make` lies on the incoming side, the last on the outgoing one. */
export function withCorners(
  frame: Box,
  make: (corner: Corner) => { readonly first: Point; readonly segments: readonly Segment[] },
): Path {
  const corners = cornersOf(frame);
  const made = corners.map(make);
  // The first corner's own piece comes last, so that the outline starts with the top side.
  const start = made[0]!.segments.at(-1)?.to ?? made[0]!.first;
  const segments: Segment[] = [];
  let at = start;
  const add = (segment: Segment): void => {
    if (Math.abs(segment.to.x - at.x) < 1e-12 && Math.abs(segment.to.y - at.y) < 1e-12) return;
    segments.push(segment);
    at = segment.to;
  };
  for (const { first, segments: own } of [...made.slice(1), made[0]!]) {
    add({ kind: 'line', to: first });
    for (const segment of own) add(segment);
  }
  const last = segments.at(-1)!;
  segments[segments.length - 1] = { ...last, to: start };
  return { start, segments, closed: true };
}
