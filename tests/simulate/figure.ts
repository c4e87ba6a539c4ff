import type { P } from '../cutfiles/points.ts';

/**
 * Outlines as the simulation knows them, written apart from the engine: closed, clockwise to the eye (y runs down), of
 * straight sides and arcs, or an ellipse and what lies beside it.
 */
export type Piece =
  | { readonly kind: 'line'; readonly from: P; readonly to: P }
  | { readonly kind: 'arc'; readonly from: P; readonly to: P; readonly centre: P; readonly clockwise: boolean };

export type Figure =
  | { readonly kind: 'pieces'; readonly pieces: readonly Piece[] }
  | { readonly kind: 'oval'; readonly centre: P; readonly a: number; readonly b: number; readonly by: number };

export const plus = (p: P, q: P, k = 1): P => ({ x: p.x + k * q.x, y: p.y + k * q.y });
export const minus = (p: P, q: P): P => plus(p, q, -1);
export const dot = (p: P, q: P): number => p.x * q.x + p.y * q.y;
export const cross = (p: P, q: P): number => p.x * q.y - p.y * q.x;
export const length = (p: P): number => Math.hypot(p.x, p.y);
export const unit = (p: P): P => plus({ x: 0, y: 0 }, p, 1 / length(p));
/** To the left of a travel, which is outside where an outline runs clockwise. */
export const leftOf = ({ x, y }: P): P => ({ x: y, y: -x });

/** The way that a piece runs at one of its ends. */
function wayAt(piece: Piece, end: 'from' | 'to'): P {
  if (piece.kind === 'line') return unit(minus(piece.to, piece.from));
  const { x, y } = unit(minus(piece[end], piece.centre));
  return piece.clockwise ? { x: -y, y: x } : { x: y, y: -x };
}

/** What a piece lies on, once it is moved to the left: a line, or a circle. */
function carrier(
  piece: Piece,
  by: number,
): { readonly at: P; readonly way: P } | { readonly at: P; readonly r: number } {
  if (piece.kind === 'line') {
    const way = unit(minus(piece.to, piece.from));
    return { at: plus(piece.from, leftOf(way), by), way };
  }
  const r = length(minus(piece.from, piece.centre)) + (piece.clockwise ? by : -by);
  if (r <= 0) throw new Error('an arc shrinks away');
  return { at: piece.centre, r };
}

/** Where two carriers meet, the place nearest to a point. */
function meeting(one: ReturnType<typeof carrier>, other: ReturnType<typeof carrier>, near: P): P {
  const found: P[] = [];
  if ('way' in one && 'way' in other) {
    const k = cross(minus(other.at, one.at), other.way) / cross(one.way, other.way);
    return plus(one.at, one.way, k);
  }
  if ('r' in one && 'r' in other) {
    const d = length(minus(other.at, one.at));
    const along = (d * d + one.r * one.r - other.r * other.r) / (2 * d);
    const up = Math.sqrt(Math.max(0, one.r * one.r - along * along));
    const way = unit(minus(other.at, one.at));
    for (const sign of [-1, 1]) found.push(plus(plus(one.at, way, along), leftOf(way), sign * up));
  } else {
    const [line, circle] = 'way' in one ? [one, other as { at: P; r: number }] : [other as { at: P; way: P }, one];
    const foot = plus(line.at, line.way, dot(minus(circle.at, line.at), line.way));
    const half = Math.sqrt(Math.max(0, circle.r ** 2 - length(minus(circle.at, foot)) ** 2));
    for (const sign of [-1, 1]) found.push(plus(foot, line.way, sign * half));
  }
  return found.reduce((best, p) => (length(minus(p, near)) < length(minus(best, near)) ? p : best));
}

/** The parallel, `by` outwards: corners stay corners, as two bevels meet. Throws where a side or an arc would vanish. */
export function moved(figure: Figure, by: number): Figure {
  if (figure.kind === 'oval') return { ...figure, by: figure.by + by };
  const { pieces } = figure;
  const corners = pieces.map((piece, i): P => {
    const before = pieces[(i + pieces.length - 1) % pieces.length]!;
    const [u, v] = [wayAt(before, 'to'), wayAt(piece, 'from')];
    const straight = plus(piece.from, leftOf(v), by);
    if (Math.abs(cross(u, v)) < 1e-6 && dot(u, v) > 0) return straight;
    const mitre = plus(piece.from, plus(leftOf(u), leftOf(v)), by / (1 + dot(u, v)));
    return meeting(carrier(before, by), carrier(piece, by), mitre);
  });
  return {
    kind: 'pieces',
    pieces: pieces.map((piece, i): Piece => {
      const [from, to] = [corners[i]!, corners[(i + 1) % corners.length]!];
      if (piece.kind === 'line' && dot(minus(to, from), minus(piece.to, piece.from)) <= 0)
        throw new Error('a side vanishes');
      return { ...piece, from, to };
    }),
  };
}

/** Turned over as one looks from behind: mirrored about the middle of a board so wide, and clockwise again. */
export function fromBehind(figure: Figure, width: number): Figure {
  const flip = ({ x, y }: P): P => ({ x: width - x, y });
  if (figure.kind === 'oval') return { ...figure, centre: flip(figure.centre) };
  return {
    kind: 'pieces',
    pieces: figure.pieces
      .map((piece): Piece => {
        const [from, to] = [flip(piece.to), flip(piece.from)];
        return piece.kind === 'line' ? { kind: 'line', from, to } : { ...piece, from, to, centre: flip(piece.centre) };
      })
      .reverse(),
  };
}

export function shifted(figure: Figure, by: P): Figure {
  if (figure.kind === 'oval') return { ...figure, centre: plus(figure.centre, by) };
  return {
    kind: 'pieces',
    pieces: figure.pieces.map((piece): Piece => {
      const [from, to] = [plus(piece.from, by), plus(piece.to, by)];
      return piece.kind === 'line'
        ? { kind: 'line', from, to }
        : { ...piece, from, to, centre: plus(piece.centre, by) };
    }),
  };
}

/** Points along it, so near to each other that the chords between them stay within 0.001 mm; the start is not repeated. */
export function points(figure: Figure, step = 1): P[] {
  if (figure.kind === 'oval') {
    const { centre, a, b, by } = figure;
    const count = Math.max(200, Math.ceil((2 * Math.PI * Math.max(a, b)) / Math.min(step, 0.4)));
    return Array.from({ length: count }, (_, i) => {
      const t = (2 * Math.PI * i) / count;
      const k = by / Math.hypot(b * Math.sin(t), a * Math.cos(t));
      return { x: centre.x + (a + k * b) * Math.sin(t), y: centre.y - (b + k * a) * Math.cos(t) };
    });
  }
  return figure.pieces.flatMap((piece): P[] => {
    if (piece.kind === 'line') {
      const count = Math.max(1, Math.ceil(length(minus(piece.to, piece.from)) / step));
      return Array.from({ length: count }, (_, i) => plus(piece.from, minus(piece.to, piece.from), i / count));
    }
    const r = length(minus(piece.from, piece.centre));
    const begin = Math.atan2(piece.from.y - piece.centre.y, piece.from.x - piece.centre.x);
    const end = Math.atan2(piece.to.y - piece.centre.y, piece.to.x - piece.centre.x);
    let sweep = piece.clockwise ? end - begin : begin - end;
    while (sweep <= 1e-9) sweep += 2 * Math.PI;
    const count = Math.ceil(Math.max((sweep * r) / step, sweep / (2 * Math.acos(1 - Math.min(0.5, 0.001 / r)))));
    return Array.from({ length: count }, (_, i) => {
      const angle = begin + ((piece.clockwise ? 1 : -1) * sweep * i) / count;
      return { x: piece.centre.x + r * Math.cos(angle), y: piece.centre.y + r * Math.sin(angle) };
    });
  });
}

/** Where neighbours meet at an angle. */
export function corners(figure: Figure): P[] {
  if (figure.kind === 'oval') return [];
  const { pieces } = figure;
  return pieces.flatMap((piece, i) => {
    const before = pieces[(i + pieces.length - 1) % pieces.length]!;
    return Math.abs(cross(wayAt(before, 'to'), wayAt(piece, 'from'))) < 1e-6 ? [] : [piece.from];
  });
}

/** The least radius of the bends that come near to a point; without end where it lies along a straight side. */
export function bendAt(figure: Figure, p: P): number {
  if (figure.kind === 'oval') {
    const { a, b, by } = figure;
    return Math.min(a, b) ** 2 / Math.max(a, b) + by;
  }
  const radii = figure.pieces.map((piece) => {
    if (piece.kind === 'line') return Number.POSITIVE_INFINITY;
    const near = points({ kind: 'pieces', pieces: [piece] }, 1).some((q) => length(minus(p, q)) < 4);
    return near ? length(minus(piece.from, piece.centre)) : Number.POSITIVE_INFINITY;
  });
  return Math.min(...radii);
}

export interface Extent {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export function extent(figure: Figure): Extent {
  if (figure.kind === 'oval') {
    const { centre, a, b, by } = figure;
    return { left: centre.x - a - by, right: centre.x + a + by, top: centre.y - b - by, bottom: centre.y + b + by };
  }
  const all = figure.pieces.flatMap((piece): P[] => {
    if (piece.kind === 'line') return [piece.from];
    // The outermost points of the circle, where the arc comes by them.
    const r = length(minus(piece.from, piece.centre));
    const ways = [
      { x: 1, y: 0 },
      { x: -1, y: 0 },
      { x: 0, y: 1 },
      { x: 0, y: -1 },
    ];
    return [piece.from, ...ways.map((way) => plus(piece.centre, way, r)).filter((p) => onArc(piece, p))];
  });
  const [xs, ys] = [all.map(({ x }) => x), all.map(({ y }) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

function onArc(piece: Extract<Piece, { kind: 'arc' }>, p: P): boolean {
  const turn = (q: P): number => Math.atan2(q.y - piece.centre.y, q.x - piece.centre.x);
  const past = (from: number, to: number): number => (((to - from) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  const [begin, end, at] = [turn(piece.from), turn(piece.to), turn(p)];
  return piece.clockwise ? past(begin, at) <= past(begin, end) : past(at, begin) <= past(end, begin);
}
