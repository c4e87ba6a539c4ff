import type { Path, Segment } from './path.ts';
import { between, distance, type Point } from './point.ts';

/** A segment together with the point where it starts. */
export interface Piece {
  readonly from: Point;
  readonly segment: Segment;
}

export function piecesOf(path: Path): readonly Piece[] {
  let from = path.start;
  return path.segments.map((segment) => {
    const piece = { from, segment };
    from = segment.to;
    return piece;
  });
}

const FULL = 2 * Math.PI;
/** Parameters this near to an end are that end. */
const END = 1e-12;

/** Where an arc begins and how far it turns, radians, positive clockwise to the eye; a full circle where it ends where it starts. */
export function sweepOf(
  from: Point,
  arc: Extract<Segment, { kind: 'arc' }>,
): { readonly begin: number; readonly sweep: number } {
  const begin = Math.atan2(from.y - arc.centre.y, from.x - arc.centre.x);
  const end = Math.atan2(arc.to.y - arc.centre.y, arc.to.x - arc.centre.x);
  const turn = arc.clockwise ? end - begin : begin - end;
  const positive = turn <= END ? turn + FULL : turn;
  const sweep = positive > FULL ? positive - FULL : positive;
  return { begin, sweep: arc.clockwise ? sweep : -sweep };
}

/** The point at `t` from 0 to 1. */
export function pointAt({ from, segment }: Piece, t: number): Point {
  if (t <= 0) return from;
  if (t >= 1) return segment.to;
  switch (segment.kind) {
    case 'line':
      return between(from, segment.to, t);
    case 'arc': {
      const { begin, sweep } = sweepOf(from, segment);
      const radius = distance(from, segment.centre);
      const angle = begin + sweep * t;
      return { x: segment.centre.x + radius * Math.cos(angle), y: segment.centre.y + radius * Math.sin(angle) };
    }
    case 'cubic': {
      const u = 1 - t;
      const mix = (a: number, b: number, c: number, d: number) =>
        u * u * u * a + 3 * u * u * t * b + 3 * u * t * t * c + t * t * t * d;
      return {
        x: mix(from.x, segment.c1.x, segment.c2.x, segment.to.x),
        y: mix(from.y, segment.c1.y, segment.c2.y, segment.to.y),
      };
    }
    default: {
      const never: never = segment;
      throw new TypeError(`unknown segment ${JSON.stringify(never)}`);
    }
  }
}

/** The unit direction of travel at `t` from 0 to 1; undefined where the piece has none (no length, a cusp). */
export function directionAt(piece: Piece, t: number): Point | undefined {
  const { from, segment } = piece;
  switch (segment.kind) {
    case 'line':
      return towards(from, segment.to);
    case 'arc': {
      const radial = towards(segment.centre, pointAt(piece, t));
      if (radial === undefined) return undefined;
      return segment.clockwise ? { x: -radial.y, y: radial.x } : { x: radial.y, y: -radial.x };
    }
    case 'cubic': {
      const { c1, c2, to } = segment;
      // Where a handle has no length the curve leaves towards the next one.
      if (t <= 0) return towards(from, c1) ?? towards(from, c2) ?? towards(from, to);
      if (t >= 1) return towards(c2, to) ?? towards(c1, to) ?? towards(from, to);
      return towards({ x: 0, y: 0 }, derivative(from, segment, t));
    }
    default: {
      const never: never = segment;
      throw new TypeError(`unknown segment ${JSON.stringify(never)}`);
    }
  }
}

function towards(a: Point, b: Point): Point | undefined {
  const d = distance(a, b);
  return d < END ? undefined : { x: (b.x - a.x) / d, y: (b.y - a.y) / d };
}

/** Parameters strictly inside a piece at which it runs level or upright: its own extremes, where it may turn back. */
export function turningPoints({ from, segment }: Piece): readonly number[] {
  switch (segment.kind) {
    case 'line':
      return [];
    case 'arc': {
      const { begin, sweep } = sweepOf(from, segment);
      const found: number[] = [];
      for (let k = -8; k <= 8; k++) {
        const t = ((k * Math.PI) / 2 - begin) / sweep;
        if (t > END && t < 1 - END) found.push(t);
      }
      return found.sort((a, b) => a - b);
    }
    case 'cubic': {
      const roots = (a: number, b: number, c: number, d: number) =>
        quadraticRoots(d - 3 * c + 3 * b - a, 2 * (a - 2 * b + c), b - a);
      return [
        ...roots(from.x, segment.c1.x, segment.c2.x, segment.to.x),
        ...roots(from.y, segment.c1.y, segment.c2.y, segment.to.y),
      ]
        .filter((t) => t > END && t < 1 - END)
        .sort((a, b) => a - b);
    }
    default: {
      const never: never = segment;
      throw new TypeError(`unknown segment ${JSON.stringify(never)}`);
    }
  }
}

/** Real roots of `a·t² + b·t + c`. */
function quadraticRoots(a: number, b: number, c: number): readonly number[] {
  if (Math.abs(a) < 1e-14) return Math.abs(b) < 1e-14 ? [] : [-c / b];
  const square = b * b - 4 * a * c;
  if (square < 0) return [];
  const q = -0.5 * (b + (b < 0 ? -1 : 1) * Math.sqrt(square));
  return q === 0 ? [0] : [q / a, c / q];
}

/** The part of a piece from `t0` to `t1`, of the same kind. */
export function partOf(piece: Piece, t0: number, t1: number): Piece {
  const from = pointAt(piece, t0);
  const to = pointAt(piece, t1);
  const { segment } = piece;
  switch (segment.kind) {
    case 'line':
      return { from, segment: { kind: 'line', to } };
    case 'arc':
      return { from, segment: { ...segment, to } };
    case 'cubic': {
      const k = (t1 - t0) / 3;
      const [d0, d1] = [derivative(piece.from, segment, t0), derivative(piece.from, segment, t1)];
      return {
        from,
        segment: {
          kind: 'cubic',
          c1: { x: from.x + k * d0.x, y: from.y + k * d0.y },
          c2: { x: to.x - k * d1.x, y: to.y - k * d1.y },
          to,
        },
      };
    }
    default: {
      const never: never = segment;
      throw new TypeError(`unknown segment ${JSON.stringify(never)}`);
    }
  }
}

export function derivative(from: Point, { c1, c2, to }: Extract<Segment, { kind: 'cubic' }>, t: number): Point {
  const u = 1 - t;
  const along = (a: number, b: number, c: number, d: number) =>
    3 * (u * u * (b - a) + 2 * u * t * (c - b) + t * t * (d - c));
  return { x: along(from.x, c1.x, c2.x, to.x), y: along(from.y, c1.y, c2.y, to.y) };
}

/** Cut at its turning points: each part runs one way in x and in y, so that its ends span its box. */
export function monotone(piece: Piece): readonly Piece[] {
  const cuts = [0, ...turningPoints(piece), 1];
  if (cuts.length === 2) return [piece];
  return cuts.slice(1).flatMap((t, i) => (t - cuts[i]! < END ? [] : [partOf(piece, cuts[i]!, t)]));
}
