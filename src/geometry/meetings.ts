import type { Box } from './box.ts';
import { boxTree, someIn, touching } from './box-tree.ts';
import { monotone, type Piece, partOf, piecesOf, pointAt, sweepOf } from './curves.ts';
import { pieceBox } from './extent.ts';
import type { Path } from './path.ts';
import { distance, dot, minus, type Point } from './point.ts';

/** Where two pieces meet, as parameters from 0 to 1 on each. */
export interface Meeting {
  readonly a: number;
  readonly b: number;
}

/** Parameters may lie this far outside a piece and still be its end. */
const END = 1e-9;

/** Every point that two pieces have in common; of a stretch that they share, its ends. */
export function meetings(a: Piece, b: Piece): readonly Meeting[] {
  if (!touching(pieceBox(a), pieceBox(b), 1e-9)) return [];
  const kinds = [a.segment.kind, b.segment.kind];
  if (kinds.includes('cubic')) return subdivided(a, b);
  const swap = a.segment.kind === 'arc' && b.segment.kind === 'line';
  const [first, second] = swap ? [b, a] : [a, b];
  const found = pairs(first, second);
  return swap ? found.map((each) => ({ a: each.b, b: each.a })) : found;
}

/** Line with line, line with arc, arc with arc. */
function pairs(a: Piece, b: Piece): readonly Meeting[] {
  if (a.segment.kind === 'line' && b.segment.kind === 'line') {
    const p = minus(a.segment.to, a.from);
    const q = minus(b.segment.to, b.from);
    const across = p.x * q.y - p.y * q.x;
    const gap = minus(b.from, a.from);
    if (Math.abs(across) <= 1e-12 * Math.hypot(p.x, p.y) * Math.hypot(q.x, q.y)) {
      const aside = Math.abs(gap.x * p.y - gap.y * p.x) / Math.hypot(p.x, p.y);
      return aside < 1e-9 ? sharedEnds(a, b, lineParameter) : [];
    }
    const found = {
      a: (gap.x * q.y - gap.y * q.x) / across,
      b: (gap.x * p.y - gap.y * p.x) / across,
    };
    return onBoth([found]);
  }
  if (a.segment.kind === 'line' && b.segment.kind === 'arc') {
    const { centre } = b.segment;
    const points = lineCircle(a.from, minus(a.segment.to, a.from), centre, distance(b.from, centre));
    return onBoth(points.map((t) => ({ a: t, b: arcParameter(b, pointOn(a, t)) })));
  }
  if (a.segment.kind === 'arc' && b.segment.kind === 'arc') {
    const [r, s] = [distance(a.from, a.segment.centre), distance(b.from, b.segment.centre)];
    if (distance(a.segment.centre, b.segment.centre) < 1e-9) {
      return Math.abs(r - s) < 1e-9 ? sharedEnds(a, b, arcParameter) : [];
    }
    const points = circleCircle(a.segment.centre, r, b.segment.centre, s);
    return onBoth(points.map((p) => ({ a: arcParameter(a, p), b: arcParameter(b, p) })));
  }
  return [];
}

/** Two that run along one line, or one circle: the ends of each that lie on the other. */
function sharedEnds(a: Piece, b: Piece, parameter: (piece: Piece, p: Point) => number): readonly Meeting[] {
  return onBoth([
    ...[b.from, b.segment.to].map((p, i) => ({ a: parameter(a, p), b: i })),
    ...[a.from, a.segment.to].map((p, i) => ({ a: i, b: parameter(b, p) })),
  ]);
}

function lineParameter(line: Piece, p: Point): number {
  const way = minus(line.segment.to, line.from);
  return dot(minus(p, line.from), way) / dot(way, way);
}

function pointOn(line: Piece, t: number): Point {
  const way = minus(line.segment.to, line.from);
  return { x: line.from.x + way.x * t, y: line.from.y + way.y * t };
}

function onBoth(found: readonly Meeting[]): readonly Meeting[] {
  const clamp = (t: number): number => Math.min(1, Math.max(0, t));
  return found
    .filter(({ a, b }) => a >= -END && a <= 1 + END && b >= -END && b <= 1 + END)
    .map(({ a, b }) => ({ a: clamp(a), b: clamp(b) }));
}

/** Parameters of `from + way·t` on a circle, none to two of them. */
export function lineCircle(from: Point, way: Point, centre: Point, radius: number): readonly number[] {
  const square = dot(way, way);
  const middle = dot(minus(centre, from), way) / square;
  const foot = { x: from.x + way.x * middle, y: from.y + way.y * middle };
  const half = (radius ** 2 - (foot.x - centre.x) ** 2 - (foot.y - centre.y) ** 2) / square;
  if (half < -1e-12 * Math.max(1, (radius * radius) / square)) return [];
  const root = Math.sqrt(Math.max(0, half));
  return root === 0 ? [middle] : [middle - root, middle + root];
}

export function circleCircle(c: Point, r: number, d: Point, s: number): readonly Point[] {
  const apart = distance(c, d);
  if (apart < 1e-12) return [];
  const along = (apart * apart + r * r - s * s) / (2 * apart);
  const square = r * r - along * along;
  if (square < -1e-12 * r * r) return [];
  const half = Math.sqrt(Math.max(0, square));
  const way = { x: (d.x - c.x) / apart, y: (d.y - c.y) / apart };
  const foot = { x: c.x + way.x * along, y: c.y + way.y * along };
  const one = { x: foot.x - way.y * half, y: foot.y + way.x * half };
  return half === 0 ? [one] : [one, { x: foot.x + way.y * half, y: foot.y - way.x * half }];
}

/** How far along an arc a point of its circle lies; beyond 1, or just below 0, where it lies off the arc. */
function arcParameter(arc: Piece, p: Point): number {
  if (arc.segment.kind !== 'arc') return Number.NaN;
  const { centre } = arc.segment;
  const { begin, sweep } = sweepOf(arc.from, arc.segment);
  const full = (2 * Math.PI) / Math.abs(sweep);
  const angle = (Math.atan2(p.y - centre.y, p.x - centre.x) - begin) / sweep;
  const t = ((angle % full) + full) % full;
  return t > full - END ? t - full : t;
}

/** Curves are halved until both are as good as straight. */
const STRAIGHT = 1e-7;
/**
 * The least shares of both, multiplied: no size in millimetres comes to it, but numbers beyond 10⁹ are halved without end,
 * since rounding alone bends them by more than that.
 */
const LEAST_SHARES = 2 ** -40;
/** Two curves that run along each other would meet without end. */
const MOST = 400;

function subdivided(a: Piece, b: Piece): readonly Meeting[] {
  const found: Meeting[] = [];
  let visits = 0;
  const visit = (p: Piece, p0: number, p1: number, q: Piece, q0: number, q1: number): void => {
    visits++;
    if (visits > 60 * MOST || found.length > MOST) return;
    if (!touching(hullBox(p), hullBox(q)) || onOneSide(p, q) || onOneSide(q, p)) return;
    const [bentP, bentQ] = [bend(p), bend(q)];
    if ((bentP < STRAIGHT && bentQ < STRAIGHT) || (p1 - p0) * (q1 - q0) < LEAST_SHARES) {
      const met = pairs(chord(p), chord(q))[0];
      if (met !== undefined) found.push({ a: p0 + (p1 - p0) * met.a, b: q0 + (q1 - q0) * met.b });
      return;
    }
    if (bentP >= bentQ) {
      const middle = (p0 + p1) / 2;
      visit(partOf(p, 0, 0.5), p0, middle, q, q0, q1);
      visit(partOf(p, 0.5, 1), middle, p1, q, q0, q1);
    } else {
      const middle = (q0 + q1) / 2;
      visit(p, p0, p1, partOf(q, 0, 0.5), q0, middle);
      visit(p, p0, p1, partOf(q, 0.5, 1), middle, q1);
    }
  };
  visit(a, 0, 1, b, 0, 1);
  return found.filter(
    (each, i) =>
      !found.slice(0, i).some((other) => Math.abs(other.a - each.a) < 1e-7 && Math.abs(other.b - each.b) < 1e-7),
  );
}

/** A box that holds a piece, quickly found: of a cubic that of its handles. */
function hullBox(piece: Piece): Box {
  const { from, segment } = piece;
  if (segment.kind === 'arc') return pieceBox(piece);
  const { to } = segment;
  const { c1, c2 } = segment.kind === 'cubic' ? segment : { c1: from, c2: to };
  const x = Math.min(from.x, c1.x, c2.x, to.x);
  const y = Math.min(from.y, c1.y, c2.y, to.y);
  const [toX, toY] = [Math.max(from.x, c1.x, c2.x, to.x), Math.max(from.y, c1.y, c2.y, to.y)];
  return { x, y, width: toX - x, height: toY - y };
}

/** Rounding may have moved what only touches apart by less. */
const SLACK = 1e-9;

/**
 * Whether a piece lies to one side of all of another, seen along the other's chord: so curves that run beside each other,
 * or away from the point in which they touch, are soon told apart. False where it cannot be told so quickly.
 */
function onOneSide(piece: Piece, other: Piece): boolean {
  if (piece.segment.kind === 'arc' || other.segment.kind === 'arc') return false;
  const way = minus(other.segment.to, other.from);
  const long = Math.hypot(way.x, way.y);
  if (long === 0) return false;
  const aside = (p: Point): number => ((p.x - other.from.x) * way.y - (p.y - other.from.y) * way.x) / long;
  const [own, there] = [handles(piece).map(aside), handles(other).map(aside)];
  return Math.min(...own) > Math.max(...there) + SLACK || Math.max(...own) < Math.min(...there) - SLACK;
}

/** What a line or a cubic lies within. */
const handles = ({ from, segment }: Piece): readonly Point[] =>
  segment.kind === 'cubic' ? [from, segment.c1, segment.c2, segment.to] : [from, segment.to];

const chord = ({ from, segment }: Piece): Piece => ({ from, segment: { kind: 'line', to: segment.to } });

/** How far a piece may stand off its chord, at most. */
export function bend({ from, segment }: Piece): number {
  switch (segment.kind) {
    case 'line':
      return 0;
    case 'arc': {
      const { sweep } = sweepOf(from, segment);
      return distance(from, segment.centre) * (1 - Math.cos(Math.min(Math.abs(sweep) / 2, Math.PI)));
    }
    case 'cubic': {
      const third = (k: number): Point => ({
        x: from.x + (segment.to.x - from.x) * k,
        y: from.y + (segment.to.y - from.y) * k,
      });
      return Math.max(distance(segment.c1, third(1 / 3)), distance(segment.c2, third(2 / 3)));
    }
    default: {
      const never: never = segment;
      throw new TypeError(`unknown segment ${JSON.stringify(never)}`);
    }
  }
}

/** A point where a path crosses or touches itself elsewhere than from one piece to the next; undefined for a simple one. */
export function selfCrossing(path: Path): Point | undefined {
  // A cubic may cross itself: cut where it turns back, it meets its own other part.
  const pieces = piecesOf(path).flatMap(monotone);
  const boxes = pieces.map(pieceBox);
  const tree = boxTree(boxes);
  for (const [i, piece] of pieces.entries()) {
    let crossing: Point | undefined;
    someIn(
      tree,
      (part) => touching(part, boxes[i]!, 1e-9),
      (j) => {
        if (j <= i || !touching(boxes[j]!, boxes[i]!, 1e-9)) return false;
        const follows = j === i + 1;
        const closes = path.closed && i === 0 && j === pieces.length - 1;
        const met = meetings(piece, pieces[j]!).find(
          ({ a, b }) => !(follows && a > 1 - 1e-6 && b < 1e-6) && !(closes && a < 1e-6 && b > 1 - 1e-6),
        );
        if (met !== undefined) crossing = pointAt(piece, met.a);
        return met !== undefined;
      },
    );
    if (crossing !== undefined) return crossing;
  }
  return undefined;
}
