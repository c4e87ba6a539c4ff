import type { Point } from '../geometry/point.ts';
import type { Page, Part } from '../tiling/model.ts';

/**
 * Where a drawing lies on a page, before the printer's correction, both in mm with y down:
 * `page = (a·x + c·y + e, b·x + d·y + f)`, a turn by a quarter and a shift.
 */
export interface Placement {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

export function placement(part: Part, rotation: Page['rotation']): Placement {
  const { x, y, width, height, pageX, pageY } = part;
  switch (rotation) {
    case 0:
      return { a: 1, b: 0, c: 0, d: 1, e: pageX - x, f: pageY - y };
    case 90:
      return { a: 0, b: 1, c: -1, d: 0, e: pageX + y + height, f: pageY - x };
    case 180:
      return { a: -1, b: 0, c: 0, d: -1, e: pageX + x + width, f: pageY + y + height };
    case 270:
      return { a: 0, b: -1, c: 1, d: 0, e: pageX - y, f: pageY + x + width };
    default: {
      const never: never = rotation;
      throw new TypeError(`a page is turned by 0, 90, 180 or 270 degrees, not ${String(never)}`);
    }
  }
}

export function placed(p: Point, { a, b, c, d, e, f }: Placement): Point {
  return { x: a * p.x + c * p.y + e, y: b * p.x + d * p.y + f };
}
