import { derivative, type Piece, piecesOf, sweepOf } from './curves.ts';
import type { Path } from './path.ts';
import { distance, type Point } from './point.ts';

/** The area that a closed path encloses: positive where it runs clockwise as the eye sees it. Exact for every kind of segment. */
export function signedArea(path: Path): number {
  // Moments are taken about the start, so that a far-off outline loses no digits.
  const o = path.start;
  let twice = 0;
  for (const { from, segment } of piecesOf(path)) {
    const a = { x: from.x - o.x, y: from.y - o.y };
    const b = { x: segment.to.x - o.x, y: segment.to.y - o.y };
    twice += cross(a, b);
    if (segment.kind === 'arc') {
      const radius = distance(from, segment.centre);
      const { sweep } = sweepOf(from, segment);
      twice += radius * radius * (sweep - Math.sin(sweep));
    }
    if (segment.kind === 'cubic') {
      const p = { x: segment.c1.x - o.x, y: segment.c1.y - o.y };
      const q = { x: segment.c2.x - o.x, y: segment.c2.y - o.y };
      // The integral of x dy − y dx over a Bézier curve, less the chord's part.
      twice += (6 * cross(a, p) + 3 * cross(a, q) + 3 * cross(p, q) + 3 * cross(p, b) + 6 * cross(q, b)) / 10;
      twice += cross(a, b) / 10 - cross(a, b);
    }
  }
  return twice / 2;
}

export const area = (path: Path): number => Math.abs(signedArea(path));

const cross = (a: Point, b: Point): number => a.x * b.y - a.y * b.x;

export function pathLength(path: Path): number {
  return piecesOf(path).reduce((sum, piece) => sum + pieceLength(piece), 0);
}

/** Lines and arcs exactly, cubics to about 1e-9 of their length. */
export function pieceLength(piece: Piece): number {
  const { from, segment } = piece;
  switch (segment.kind) {
    case 'line':
      return distance(from, segment.to);
    case 'arc':
      return distance(from, segment.centre) * Math.abs(sweepOf(from, segment).sweep);
    case 'cubic': {
      const speed = (t: number): number => {
        const d = derivative(from, segment, t);
        return Math.hypot(d.x, d.y);
      };
      return integral(speed, 0, 1, 0);
    }
    default: {
      const never: never = segment;
      throw new TypeError(`unknown segment ${JSON.stringify(never)}`);
    }
  }
}

/** Nodes and weights of Gauss and Legendre for five points (Abramowitz and Stegun, table 25.4). */
const NODES = [0, 0.5384693101056831, -0.5384693101056831, 0.906179845938664, -0.906179845938664];
const WEIGHTS = [
  0.5688888888888889, 0.47862867049936647, 0.47862867049936647, 0.23692688505618908, 0.23692688505618908,
];

function gauss(f: (t: number) => number, from: number, to: number): number {
  const [middle, half] = [(from + to) / 2, (to - from) / 2];
  return half * NODES.reduce((sum, node, i) => sum + WEIGHTS[i]! * f(middle + half * node), 0);
}

function integral(f: (t: number) => number, from: number, to: number, depth: number): number {
  const middle = (from + to) / 2;
  const whole = gauss(f, from, to);
  const halves = gauss(f, from, middle) + gauss(f, middle, to);
  if (depth > 12 || Math.abs(whole - halves) <= 1e-10 * Math.max(1, Math.abs(halves))) return halves;
  return integral(f, from, middle, depth + 1) + integral(f, middle, to, depth + 1);
}

/**
 * Circumference of an ellipse by its half axes, by the arithmetic-geometric mean: with c₀² = a² − b² and
 * cₙ₊₁ = (aₙ − bₙ) / 2 it is 2π (a² − Σ 2ⁿ⁻¹ cₙ²) / AGM(a, b) (Abramowitz and Stegun, 17.6).
 */
export function ellipsePerimeter(halfWidth: number, halfHeight: number): number {
  let [a, b] = [Math.max(halfWidth, halfHeight), Math.min(halfWidth, halfHeight)];
  if (b === 0) return 4 * a;
  const square = a * a;
  let sum = (a * a - b * b) / 2;
  for (let power = 1; Math.abs(a - b) > 1e-15 * a && power < 1e6; power *= 2) {
    const c = (a - b) / 2;
    sum += power * c * c;
    [a, b] = [(a + b) / 2, Math.sqrt(a * b)];
  }
  return (2 * Math.PI * (square - sum)) / a;
}
