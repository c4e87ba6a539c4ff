import type { Point } from '../geometry/point.ts';
import type { Side } from '../geometry/sides.ts';

/** The side's name from the face view, given its outward direction in the back view; oblique sides by the larger part. */
export function sideName(outward: Point): Side {
  if (Math.abs(outward.y) >= Math.abs(outward.x)) return outward.y < 0 ? 'top' : 'bottom';
  return outward.x < 0 ? 'right' : 'left';
}
