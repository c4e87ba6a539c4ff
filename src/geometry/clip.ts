import type { Box } from './box.ts';
import { bottom, right } from './box.ts';
import type { Point } from './point.ts';

export interface Line {
  readonly from: Point;
  readonly to: Point;
}

/** The part of a straight line that lies in a box, its own direction kept; undefined where none does (Liang and Barsky). */
export function clipLine(line: Line, within: Box): Line | undefined {
  const { from, to } = line;
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  let enter = 0;
  let leave = 1;
  const edges: readonly (readonly [number, number])[] = [
    [-dx, from.x - within.x],
    [dx, right(within) - from.x],
    [-dy, from.y - within.y],
    [dy, bottom(within) - from.y],
  ];
  for (const [p, q] of edges) {
    if (p === 0) {
      if (q < 0) return undefined;
    } else if (p < 0) {
      enter = Math.max(enter, q / p);
    } else {
      leave = Math.min(leave, q / p);
    }
  }
  if (enter > leave) return undefined;
  const at = (k: number): Point => (k === 0 ? from : k === 1 ? to : { x: from.x + dx * k, y: from.y + dy * k });
  return { from: at(enter), to: at(leave) };
}
