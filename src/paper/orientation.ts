import type { Rotation } from '../drawing/document.ts';
import { type Box, bottom, box, right } from '../geometry/box.ts';
import type { Point } from '../geometry/point.ts';
import type { Part } from './model.ts';

/**
 * Sheets are laid out in the drawing as it is turned on the page: `turned` space, whose top left is the turned
 * drawing's, mm. `width` and `height` are the drawing's own.
 */
export interface Orientation {
  readonly rotation: Rotation;
  readonly width: number;
  readonly height: number;
}

export function turnPoint({ x, y }: Point, { rotation, width, height }: Orientation): Point {
  switch (rotation) {
    case 0:
      return { x, y };
    case 90:
      return { x: height - y, y: x };
    case 180:
      return { x: width - x, y: height - y };
    case 270:
      return { x: y, y: width - x };
    default: {
      const never: never = rotation;
      throw new TypeError(`a drawing is turned by 0, 90, 180 or 270 degrees, not ${String(never)}`);
    }
  }
}

export function turnBox(b: Box, orientation: Orientation): Box {
  return between(turnPoint(b, orientation), turnPoint({ x: right(b), y: bottom(b) }, orientation));
}

/** The turn that undoes `turn`. */
export function turnedBack({ rotation, width, height }: Orientation): Orientation {
  const upright = rotation % 180 === 0;
  return {
    rotation: rotation === 90 ? 270 : rotation === 270 ? 90 : rotation,
    width: upright ? width : height,
    height: upright ? height : width,
  };
}

/** The part of the drawing that lies in `window` (turned space), clipped to the drawing; `at` is where the window's top left lies on the page. */
export function partOf(window: Box, orientation: Orientation, at: Point): Part {
  const whole = turnBox(box(0, 0, orientation.width, orientation.height), orientation);
  const x = Math.max(window.x, whole.x);
  const y = Math.max(window.y, whole.y);
  const shown = box(x, y, Math.min(right(window), right(whole)) - x, Math.min(bottom(window), bottom(whole)) - y);
  return { ...turnBox(shown, turnedBack(orientation)), pageX: at.x + x - window.x, pageY: at.y + y - window.y };
}

function between(a: Point, b: Point): Box {
  return box(Math.min(a.x, b.x), Math.min(a.y, b.y), Math.abs(a.x - b.x), Math.abs(a.y - b.y));
}
