import { type Piece, pointAt } from './curves.ts';
import { toPiece } from './near.ts';
import type { Segment } from './path.ts';
import { length, type Point } from './point.ts';

/** A smooth curve by its parameter: where it is, and how fast it goes which way. */
export interface Curve {
  readonly at: (t: number) => Point;
  /** Its derivative by the parameter; of no length only at its ends, and there only where `towards` says the way. */
  readonly speed: (t: number) => Point;
}

/** Farthest that a curve which stands in for another may lie from it, mm: half of what any file may be off. */
export const CURVE_TOLERANCE = 0.0002;
const DEEPEST = 14;

/** Cubics along a curve from one parameter to another, none of them farther from it than `tolerance`, ends and directions exact. */
export function fitCubics(curve: Curve, t0: number, t1: number, tolerance = CURVE_TOLERANCE, depth = 0): Segment[] {
  const piece = fitted(curve, t0, t1);
  if (piece !== undefined && follows(piece, curve, t0, t1, tolerance)) return [piece.segment];
  // Where it hardly moves, as parallels do beside a cusp, its speed may be of any size, and a cubic would never follow.
  if (depth >= DEEPEST || standsStill(curve, t0, t1, tolerance)) return [{ kind: 'line', to: curve.at(t1) }];
  const middle = (t0 + t1) / 2;
  return [...fitCubics(curve, t0, middle, tolerance, depth + 1), ...fitCubics(curve, middle, t1, tolerance, depth + 1)];
}

/** The cubic with the curve's ends and directions that also passes through its middle point, where there is one. */
function fitted(curve: Curve, t0: number, t1: number): Piece | undefined {
  const [from, to, through] = [curve.at(t0), curve.at(t1), curve.at((t0 + t1) / 2)];
  const [d0, d1] = [curve.speed(t0), curve.speed(t1)];
  const [s0, s1] = [length(d0), length(d1)];
  if (s0 === 0 || s1 === 0) return undefined;
  const third = (t1 - t0) / 3;
  let [a, b] = [third * s0, third * s1];
  const [u, v] = [
    { x: d0.x / s0, y: d0.y / s0 },
    { x: d1.x / s1, y: d1.y / s1 },
  ];
  // At one half a cubic is (from + to) / 2 + 3/8 (a·u − b·v).
  const gap = { x: (8 / 3) * (through.x - (from.x + to.x) / 2), y: (8 / 3) * (through.y - (from.y + to.y) / 2) };
  const cross = u.y * v.x - u.x * v.y;
  if (Math.abs(cross) > 1e-3) {
    const [c, d] = [(gap.y * v.x - gap.x * v.y) / cross, (gap.y * u.x - gap.x * u.y) / cross];
    if (c > 0.3 * a && c < 3 * a && d > 0.3 * b && d < 3 * b) [a, b] = [c, d];
  }
  const segment: Segment = {
    kind: 'cubic',
    c1: { x: from.x + u.x * a, y: from.y + u.y * a },
    c2: { x: to.x - v.x * b, y: to.y - v.y * b },
    to,
  };
  return { from, segment };
}

function standsStill(curve: Curve, t0: number, t1: number, tolerance: number): boolean {
  const from = curve.at(t0);
  for (let i = 1; i <= 8; i++) {
    const p = curve.at(t0 + ((t1 - t0) * i) / 8);
    if (length({ x: p.x - from.x, y: p.y - from.y }) > tolerance) return false;
  }
  return true;
}

/** Looked at from both: samples of the one against the other. */
function follows(piece: Piece, curve: Curve, t0: number, t1: number, tolerance: number): boolean {
  for (let i = 1; i < 8; i++) {
    const p = curve.at(t0 + ((t1 - t0) * i) / 8);
    if (length({ x: pointAt(piece, i / 8).x - p.x, y: pointAt(piece, i / 8).y - p.y }) <= tolerance) continue;
    if (toPiece(piece, p) > tolerance) return false;
  }
  return true;
}
