import type { Size } from '../../src/geometry/point.ts';
import type { Margined } from '../../src/settle/settled.ts';

/** A sheet with equal margins on all sides, a quarter of an inch unless given. */
export function margined({ width, height }: Size, margin = 6.35): Margined {
  return {
    width,
    height,
    margin: { top: margin, right: margin, bottom: margin, left: margin },
    area: { x: margin, y: margin, width: width - 2 * margin, height: height - 2 * margin },
  };
}
