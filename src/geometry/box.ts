import type { Point, Size } from './point.ts';

/** An axis-parallel rectangle: top left corner and size, in mm, y down. */
export interface Box extends Point, Size {}

export const box = (x: number, y: number, width: number, height: number): Box => ({ x, y, width, height });
export const right = (b: Box): number => b.x + b.width;
export const bottom = (b: Pick<Box, 'y' | 'height'>): number => b.y + b.height;
export const centre = (b: Box): Point => ({ x: b.x + b.width / 2, y: b.y + b.height / 2 });

/** Grown by `by` on every side (shrunk where negative). */
export const grown = (b: Box, by: number): Box => box(b.x - by, b.y - by, b.width + 2 * by, b.height + 2 * by);

/** True where the two share more than a line (within `gap` of each other where a gap is given). */
export function overlaps(a: Box, b: Box, gap = 0): boolean {
  return (
    a.x < b.x + b.width + gap && b.x < a.x + a.width + gap && a.y < b.y + b.height + gap && b.y < a.y + a.height + gap
  );
}

export const contains = (outer: Box, inner: Box, slack = 1e-9): boolean =>
  holds(outer, inner.x, inner.y, inner.width, inner.height, slack);

/** The same of what is told by numbers. */
export function holds(outer: Box, x: number, y: number, width: number, height: number, slack = 1e-9): boolean {
  return (
    x >= outer.x - slack &&
    y >= outer.y - slack &&
    x + width <= right(outer) + slack &&
    y + height <= bottom(outer) + slack
  );
}

/** The smallest box that holds all of `boxes`, which must not be empty. */
export function union(boxes: readonly Box[]): Box {
  let x = Number.POSITIVE_INFINITY;
  let y = Number.POSITIVE_INFINITY;
  let toX = Number.NEGATIVE_INFINITY;
  let toY = Number.NEGATIVE_INFINITY;
  for (const b of boxes) {
    x = Math.min(x, b.x);
    y = Math.min(y, b.y);
    toX = Math.max(toX, b.x + b.width);
    toY = Math.max(toY, b.y + b.height);
  }
  return box(x, y, toX - x, toY - y);
}

/** What two boxes share; undefined where that has no area. */
export function common(a: Box, b: Box): Box | undefined {
  const [x, y] = [Math.max(a.x, b.x), Math.max(a.y, b.y)];
  const [width, height] = [Math.min(right(a), right(b)) - x, Math.min(bottom(a), bottom(b)) - y];
  return width > 0 && height > 0 ? box(x, y, width, height) : undefined;
}
