import { type Frame, shownPart } from '../drawing/document.ts';
import { bottom, right } from '../geometry/box.ts';

/**
 * Where a drawing lies on a page, before the printer's correction, both in mm with y down:
 * `page = (a·x + c·y + e, b·x + d·y + f)`, a turn by quarters and a shift.
 */
export interface Matrix {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

export function frameMatrix(frame: Frame): Matrix {
  const { turn, at } = frame;
  const part = shownPart(frame);
  switch (turn) {
    case 0:
      return { a: 1, b: 0, c: 0, d: 1, e: at.x - part.x, f: at.y - part.y };
    case 90:
      return { a: 0, b: 1, c: -1, d: 0, e: at.x + bottom(part), f: at.y - part.x };
    case 180:
      return { a: -1, b: 0, c: 0, d: -1, e: at.x + right(part), f: at.y + bottom(part) };
    case 270:
      return { a: 0, b: -1, c: 1, d: 0, e: at.x - part.y, f: at.y + right(part) };
    default: {
      const never: never = turn;
      throw new TypeError(`a drawing is turned by 0, 90, 180 or 270 degrees, not ${String(never)}`);
    }
  }
}

/** Whether a frame shows its drawing as it is, from the page's top left. */
export function isInPlace(frame: Frame): boolean {
  const { e, f } = frameMatrix(frame);
  return frame.clip === undefined && frame.turn === 0 && e === 0 && f === 0;
}
