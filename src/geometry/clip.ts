import type { Box } from './box.ts';
import type { Point } from './point.ts';

export interface Line {
  readonly from: Point;
  readonly to: Point;
}

/**
 * The part of a straight line that lies in a box, its own direction kept; undefined where none does (Liang and Barsky).
 * It is asked thousands of times for one drawing, so it makes nothing but its answer.
 */
export function clipLine(line: Line, within: Box): Line | undefined {
  const { from, to } = line;
  const left = within.x;
  const top = within.y;
  const right = left + within.width;
  const bottom = top + within.height;
  if (isAside(from.x, to.x, left, right) || isAside(from.y, to.y, top, bottom)) return undefined;
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const enter = Math.max(0, entry(dx, from.x, left, right), entry(dy, from.y, top, bottom));
  const leave = Math.min(1, exit(dx, from.x, left, right), exit(dy, from.y, top, bottom));
  if (enter > leave) return undefined;
  const at = (k: number): Point => (k === 0 ? from : k === 1 ? to : { x: from.x + dx * k, y: from.y + dy * k });
  return { from: at(enter), to: at(leave) };
}

/** Whether a line shares at least a point with a box. */
export function meetsBox(line: Line, left: number, top: number, right: number, bottom: number): boolean {
  const { from, to } = line;
  if (isAside(from.x, to.x, left, right) || isAside(from.y, to.y, top, bottom)) return false;
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  // Level or upright it passes a box only beside it.
  if (dx === 0 || dy === 0) return true;
  return (
    Math.max(0, entry(dx, from.x, left, right), entry(dy, from.y, top, bottom)) <=
    Math.min(1, exit(dx, from.x, left, right), exit(dy, from.y, top, bottom))
  );
}

/** Both ends before, or both behind, a stretch. */
function isAside(from: number, to: number, low: number, high: number): boolean {
  return (from < low && to < low) || (from > high && to > high);
}

/** The share of the way at which a line enters a stretch that it is not aside of … */
function entry(along: number, from: number, low: number, high: number): number {
  return along > 0 ? (low - from) / along : along < 0 ? (high - from) / along : 0;
}

/** … and leaves it. */
function exit(along: number, from: number, low: number, high: number): number {
  return along > 0 ? (high - from) / along : along < 0 ? (low - from) / along : 1;
}
