import { directionAt, type Piece, partOf, piecesOf, pointAt } from './curves.ts';
import { toPiece } from './near.ts';
import type { Path, Segment } from './path.ts';
import { distance, dot, minus, type Point, plus, times } from './point.ts';

type Cubic = Extract<Segment, { readonly kind: 'cubic' }>;

/** How often a cubic is looked at between its ends. */
const LOOKS = 24;
/** Where an arc is looked at. */
const ALONG = [0.1, 0.25, 0.4, 0.5, 0.6, 0.75, 0.9];
/** Between looks it may stand off farther: this share of the tolerance is what a look allows. */
const ALLOWED = 0.7;
const DEEPEST = 16;
/** What turns more may turn back between two looks, radians. */
const MOST_TURNING = 1.6;

/** The same path of lines and circular arcs alone, none of it farther than `tolerance` from its cubics; smooth where they are. */
export function withArcs(path: Path, tolerance: number): Path {
  const segments = piecesOf(path).flatMap(({ from, segment }): readonly Segment[] =>
    segment.kind === 'cubic' ? cubicArcs(from, segment, tolerance, 0) : [segment],
  );
  return { ...path, segments };
}

function cubicArcs(from: Point, cubic: Cubic, tolerance: number, depth: number): readonly Segment[] {
  const piece: Piece = { from, segment: cubic };
  if (distance(from, cubic.to) > 0 && turning(piece) <= MOST_TURNING) {
    const pair = biarc(piece);
    if (pair !== undefined && follows(piece, pair, ALLOWED * tolerance)) return pair.map(({ segment }) => segment);
    const line: Piece = { from, segment: { kind: 'line', to: cubic.to } };
    if (follows(piece, [line], tolerance / 4)) return [line.segment];
  }
  if (depth === DEEPEST) return [{ kind: 'line', to: cubic.to }];
  return [partOf(piece, 0, 0.5), partOf(piece, 0.5, 1)].flatMap((half) =>
    cubicArcs(half.from, half.segment as Cubic, tolerance, depth + 1),
  );
}

/** How far its direction turns from look to look, all turns taken as positive. */
function turning(piece: Piece): number {
  let sum = 0;
  let before = directionAt(piece, 0);
  for (let i = 1; i <= LOOKS; i++) {
    const now = directionAt(piece, i / LOOKS);
    if (before !== undefined && now !== undefined)
      sum += Math.abs(Math.atan2(before.x * now.y - before.y * now.x, dot(before, now)));
    before = now ?? before;
  }
  return sum;
}

/**
 * Two arcs that share a tangent, with the ends and the end tangents of a piece, both tangents being as long as each other
 * up to where they meet; undefined where a tangent is missing or the arcs would run backwards.
 */
function biarc(piece: Piece): readonly Piece[] | undefined {
  const { from } = piece;
  const { to } = piece.segment;
  const [a, b] = [directionAt(piece, 0), directionAt(piece, 1)];
  if (a === undefined || b === undefined) return undefined;
  const way = minus(to, from);
  const sum = plus(a, b);
  const along = dot(way, sum);
  const spread = 2 - 2 * dot(a, b);
  const reach =
    spread < 1e-9 ? dot(way, way) / (2 * along) : (Math.sqrt(along * along + spread * dot(way, way)) - along) / spread;
  if (!(reach > 0 && reach < 4 * distance(from, to))) return undefined;
  const middle = times(plus(plus(from, times(a, reach)), minus(to, times(b, reach))), 0.5);
  // The second arc is the one that leaves `to` backwards, run through the other way.
  const first = arcAlong(from, a, middle);
  const second = arcAlong(to, times(b, -1), middle);
  if (first === undefined || second === undefined) return undefined;
  const { centre, clockwise } = second;
  const last: Segment =
    centre === undefined ? { kind: 'line', to } : { kind: 'arc', to, centre, clockwise: !clockwise };
  const begin: Segment =
    first.centre === undefined
      ? { kind: 'line', to: middle }
      : { kind: 'arc', to: middle, centre: first.centre, clockwise: first.clockwise };
  return [
    { from, segment: begin },
    { from: middle, segment: last },
  ];
}

/** The arc that leaves `from` along a unit vector and passes `to`; without a centre where it is straight. */
function arcAlong(
  from: Point,
  along: Point,
  to: Point,
): { readonly centre?: Point; readonly clockwise: boolean } | undefined {
  const way = minus(to, from);
  if (distance(from, to) < 1e-12) return undefined;
  const left = { x: along.y, y: -along.x };
  const aside = dot(left, way);
  // Flatter than any file tells from straight.
  if (Math.abs(aside) < 1e-9 * (1 + dot(way, way))) return dot(along, way) > 0 ? { clockwise: false } : undefined;
  const radius = dot(way, way) / (2 * aside);
  return { centre: plus(from, times(left, radius)), clockwise: radius < 0 };
}

function follows(piece: Piece, stand: readonly Piece[], tolerance: number): boolean {
  for (let i = 1; i < LOOKS; i++) {
    const p = pointAt(piece, i / LOOKS);
    if (Math.min(...stand.map((each) => toPiece(each, p))) > tolerance) return false;
  }
  // Nor may the arcs leave the curve between where it was looked at.
  return stand.every((each) => ALONG.every((t) => toPiece(piece, pointAt(each, t)) <= tolerance));
}
