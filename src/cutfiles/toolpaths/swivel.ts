import { derivative, directionAt, type Piece, piecesOf, pointAt } from '../../geometry/curves.ts';
import { fitCubics } from '../../geometry/fit.ts';
import type { Path, Segment } from '../../geometry/path.ts';
import { dot, type Point, plus, times } from '../../geometry/point.ts';

/** Directions that differ by less run on as one, radians. */
const STRAIGHT_ON = 1e-9;

/**
 * Where the axis of a drag knife goes so that its tip, which trails by `offset`, follows a path. The axis runs ahead of the
 * tip along the tangent: a line stays a line, an arc becomes one of radius √(r² + offset²) about the same centre. At a
 * corner the tip stands still while the axis goes round it from the one direction to the other.
 */
export function swivelPath(tip: Path, offset: number): Path {
  if (offset === 0) return tip;
  const segments: Segment[] = [];
  let start: Point | undefined;
  let before: Point | undefined;
  for (const piece of piecesOf(tip)) {
    const [u, v] = [directionAt(piece, 0), directionAt(piece, 1)];
    if (u === undefined || v === undefined) continue;
    start ??= ahead(piece.from, u, offset);
    if (before !== undefined) segments.push(...turn(piece.from, before, u, offset));
    segments.push(...moved(piece, v, offset));
    before = v;
  }
  return { start: start ?? tip.start, segments, closed: false };
}

const ahead = (p: Point, direction: Point, by: number): Point => plus(p, times(direction, by));

/** Round the standing tip, the shorter way. */
function turn(corner: Point, from: Point, to: Point, offset: number): readonly Segment[] {
  const across = from.x * to.y - from.y * to.x;
  if (Math.abs(across) < STRAIGHT_ON && dot(from, to) > 0) return [];
  return [{ kind: 'arc', centre: corner, clockwise: across > 0, to: ahead(corner, to, offset) }];
}

function moved(piece: Piece, end: Point, offset: number): readonly Segment[] {
  const { from, segment } = piece;
  const to = ahead(segment.to, end, offset);
  switch (segment.kind) {
    case 'line':
      return [{ kind: 'line', to }];
    case 'arc':
      return [{ ...segment, to }];
    case 'cubic': {
      const at = (t: number): Point => ahead(pointAt(piece, t), directionAt(piece, t) ?? end, offset);
      const speed = (t: number): Point => {
        const d = derivative(from, segment, t);
        const second = secondDerivative(from, segment, t);
        const long = Math.hypot(d.x, d.y);
        // How fast the unit tangent turns: what of the second derivative is square to the first.
        const k = offset / long ** 3;
        const along = dot(d, second);
        return {
          x: d.x + k * (second.x * long * long - d.x * along),
          y: d.y + k * (second.y * long * long - d.y * along),
        };
      };
      return fitCubics({ at, speed }, 0, 1);
    }
    default: {
      const never: never = segment;
      throw new TypeError(`unknown segment ${JSON.stringify(never)}`);
    }
  }
}

function secondDerivative(from: Point, { c1, c2, to }: Extract<Segment, { kind: 'cubic' }>, t: number): Point {
  const along = (a: number, b: number, c: number, d: number): number =>
    6 * ((1 - t) * (c - 2 * b + a) + t * (d - 2 * c + b));
  return { x: along(from.x, c1.x, c2.x, to.x), y: along(from.y, c1.y, c2.y, to.y) };
}
