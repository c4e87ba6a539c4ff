import type { Stroke } from '../../bench/model.ts';
import type { Line } from '../../geometry/clip.ts';
import { type Point, plus } from '../../geometry/point.ts';

const shiftedLine = (part: Line, by: Point): Line => ({ from: plus(part.from, by), to: plus(part.to, by) });

/** A stroke moved by as much paper as lies around the board. */
export function shifted<S extends Stroke>(s: S, by: Point): S {
  return {
    ...s,
    line: shiftedLine(s.line, by),
    face: shiftedLine(s.face, by),
    start: plus(s.start, by),
    stop: plus(s.stop, by),
    ...(s.straightedge === undefined ? {} : { straightedge: shiftedLine(s.straightedge, by) }),
    ...(s.bar === undefined ? {} : { bar: shiftedLine(s.bar, by) }),
  };
}
