import type { Stroke } from '../../bench/model.ts';
import type { Line } from '../../geometry/clip.ts';
import { type Point, plus } from '../../geometry/point.ts';
import { defined } from '../../problems/defined.ts';

const shiftedLine = (part: Line, by: Point): Line => ({ from: plus(part.from, by), to: plus(part.to, by) });

/** A stroke moved by as much paper as lies around the board. */
export function shifted<S extends Stroke>(s: S, by: Point): S {
  return {
    ...s,
    line: shiftedLine(s.line, by),
    face: shiftedLine(s.face, by),
    start: plus(s.start, by),
    stop: plus(s.stop, by),
    ...defined({
      straightedge: s.straightedge === undefined ? undefined : shiftedLine(s.straightedge, by),
      bar: s.bar === undefined ? undefined : shiftedLine(s.bar, by),
    }),
  };
}
