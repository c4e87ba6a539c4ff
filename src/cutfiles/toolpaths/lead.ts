import { directionAt, type Piece, partOf, piecesOf } from '../../geometry/curves.ts';
import { flattened } from '../../geometry/flatten.ts';
import { pieceLength } from '../../geometry/measure.ts';
import { isInside, outlineOf } from '../../geometry/near.ts';
import type { Path, Segment } from '../../geometry/path.ts';
import { type Point, plus, times } from '../../geometry/point.ts';

/** How a knife comes to a closed cut and leaves it, all of it in the waste. */
export interface Lead {
  /** Of the arcs that run into the cut and out of it. */
  readonly radius: number;
  /** Of each of the two strokes before, square to each other, along which the blade learns its direction. */
  readonly settle: number;
  /** How far the cut is followed past its beginning. */
  readonly overcut: number;
}

/** The way out turns off by this much, radians. */
const TURN_OUT = Math.PI / 3;
/** What its radius is made smaller by until it finds room, and the smallest share of it that may be left. */
const SMALLER = 0.75;
const SMALLEST = 0.2;
const FINE = 0.01;

/**
 * The way of the blade's tip: two short strokes and an arc in the waste, once round the outline, on past the beginning,
 * and off into the waste again. It begins in the middle of the longest side that leaves room for it, so that every corner
 * is an ordinary one. Undefined where no side does. The outline runs clockwise as the eye sees it.
 */
export function withLead(outline: Path, waste: 'inside' | 'outside', lead: Lead): Path | undefined {
  const pieces = piecesOf(outline);
  const order = pieces.map((_, i) => i).sort((a, b) => pieceLength(pieces[b]!) - pieceLength(pieces[a]!));
  const ready = outlineOf(outline);
  for (let share = 1; share >= SMALLEST; share *= SMALLER) {
    const radius = lead.radius * share;
    for (const i of order) {
      const { into, round, out } = ways(pieces, i, waste, { ...lead, radius });
      const points = [...flattened(into, FINE).slice(0, -1), ...flattened(out, FINE).slice(1)];
      if (points.some((p) => isInside(ready, p) !== (waste === 'inside'))) continue;
      return { start: into.start, segments: [...into.segments, ...round, ...out.segments], closed: false };
    }
  }
  return undefined;
}

function ways(
  pieces: readonly Piece[],
  index: number,
  waste: 'inside' | 'outside',
  { radius, settle, overcut }: Lead,
): { readonly into: Path; readonly round: readonly Segment[]; readonly out: Path } {
  const side = pieces[index]!;
  const [first, second] = [partOf(side, 0, 0.5), partOf(side, 0.5, 1)];
  const others = [...pieces.slice(index + 1), ...pieces.slice(0, index)];
  const share = Math.min(1, overcut / pieceLength(second));
  const past = partOf(second, 0, share);
  const begin = second.from;
  const u = directionAt(second, 0)!;
  // Run through clockwise, the inside lies on the right.
  const right = { x: -u.y, y: u.x };
  const w = waste === 'inside' ? right : times(right, -1);
  const turnsRight = waste === 'inside';
  const centre = plus(begin, times(w, radius));
  const entry = plus(centre, times(u, -radius));
  const above = plus(entry, times(w, settle));
  const start = plus(above, times(u, -settle));
  const into: Path = {
    start,
    segments: [
      { kind: 'line', to: above },
      { kind: 'line', to: entry },
      { kind: 'arc', to: begin, centre, clockwise: turnsRight },
    ],
    closed: false,
  };
  const end = past.segment.to;
  const v = share > 0 ? (directionAt(past, 1) ?? u) : u;
  const off = waste === 'inside' ? { x: -v.y, y: v.x } : { x: v.y, y: -v.x };
  const outCentre = plus(end, times(off, radius));
  const to = turned(end, outCentre, turnsRight ? TURN_OUT : -TURN_OUT);
  const out: Path = {
    start: end,
    segments: [{ kind: 'arc', to, centre: outCentre, clockwise: turnsRight }],
    closed: false,
  };
  const round = [second, ...others, first, ...(share > 0 ? [past] : [])].map(({ segment }) => segment);
  return { into, round, out };
}

/** Clockwise as the eye sees it. */
function turned(p: Point, about: Point, angle: number): Point {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const [x, y] = [p.x - about.x, p.y - about.y];
  return { x: about.x + x * cos - y * sin, y: about.y + x * sin + y * cos };
}
