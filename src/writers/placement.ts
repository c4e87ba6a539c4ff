import { minus, type Point, plus } from '../geometry/point.ts';
import type { Page, Part } from '../paper/model.ts';
import { turnPoint } from '../paper/turn.ts';

/**
 * Where a drawing lies on a page, before the printer's correction, both in mm with y down:
 * `page = (a·x + c·y + e, b·x + d·y + f)`, a turn by quarters and a shift.
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
  const turn = { rotation, width: part.width, height: part.height };
  const onPage = (p: Point): Point => plus(turnPoint(minus(p, part), turn), { x: part.pageX, y: part.pageY });
  const origin = onPage({ x: 0, y: 0 });
  const x = minus(turnPoint({ x: 1, y: 0 }, turn), turnPoint({ x: 0, y: 0 }, turn));
  const y = minus(turnPoint({ x: 0, y: 1 }, turn), turnPoint({ x: 0, y: 0 }, turn));
  // Quarter turns hold nothing but 0, 1 and -1.
  return { a: Math.round(x.x), b: Math.round(x.y), c: Math.round(y.x), d: Math.round(y.y), e: origin.x, f: origin.y };
}
