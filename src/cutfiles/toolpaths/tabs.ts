import { stretchAlong } from '../../geometry/along.ts';
import { directionAt, type Piece, piecesOf } from '../../geometry/curves.ts';
import { pieceLength } from '../../geometry/measure.ts';
import type { Path } from '../../geometry/path.ts';

/** A straight side, or curves that run on into each other: tabs lie evenly along each. */
interface Side {
  readonly pieces: Piece[];
  length: number;
}

/**
 * A closed path with bridges left in it: `count` gaps of `gap` along the middle of the tool's way, on the longest sides
 * and apart from each other, none within half a gap of a corner. Undefined where they find no room.
 */
export function withTabs(path: Path, count: number, gap: number): readonly Path[] | undefined {
  const sides = sidesOf(piecesOf(path));
  const share = sides.map(() => 0);
  const each = (i: number): number => sides[i]!.length / (share[i]! + 1);
  for (let n = 0; n < count; n++) {
    let best = 0;
    for (const i of sides.keys()) if (each(i) > each(best)) best = i;
    share[best]!++;
  }
  if (share.some((n, i) => n > 0 && sides[i]!.length / n < 3 * gap)) return undefined;
  const middles: number[] = [];
  let before = 0;
  for (const [i, { length }] of sides.entries()) {
    for (let n = 0; n < share[i]!; n++) middles.push(before + ((n + 0.5) / share[i]!) * length);
    before += length;
  }
  const pieces = sides.flatMap((side) => side.pieces);
  return middles.map((middle, i) => {
    const [from, next] = [middle + gap / 2, middles[i + 1]];
    // The last stretch runs on over the path's beginning.
    const run =
      next === undefined
        ? [...stretchAlong(pieces, from, before), ...stretchAlong(pieces, 0, middles[0]! - gap / 2)]
        : stretchAlong(pieces, from, next - gap / 2);
    return { start: run[0]!.from, segments: run.map(({ segment }) => segment), closed: false };
  });
}

/** Beginning where a side does, unless all of it is one curve. */
function sidesOf(pieces: readonly Piece[]): readonly Side[] {
  const runsOn = pieces.map((piece, i) => smooth(pieces.at(i - 1)!, piece));
  const first = Math.max(0, runsOn.indexOf(false));
  const sides: Side[] = [];
  for (let k = 0; k < pieces.length; k++) {
    const i = (first + k) % pieces.length;
    const piece = pieces[i]!;
    if (k === 0 || !runsOn[i]) sides.push({ pieces: [], length: 0 });
    const side = sides.at(-1)!;
    side.pieces.push(piece);
    side.length += pieceLength(piece);
  }
  return sides;
}

/** Curves whose directions agree to half a degree where they meet. */
const SMOOTH = Math.cos(Math.PI / 360);

function smooth(before: Piece, after: Piece): boolean {
  if (before.segment.kind === 'line' || after.segment.kind === 'line') return false;
  const [a, b] = [directionAt(before, 1), directionAt(after, 0)];
  if (a === undefined || b === undefined) return false;
  return a.x * b.x + a.y * b.y >= SMOOTH * Math.hypot(a.x, a.y) * Math.hypot(b.x, b.y);
}
