import { partAlong } from '../geometry/along.ts';
import { type Piece, piecesOf } from '../geometry/curves.ts';
import { pieceLength } from '../geometry/measure.ts';
import type { Path, Segment } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';

/**
 * A closed path with bridges left in it: `count` gaps of `gap` along the middle of the tool's way, on the longest sides
 * and apart from each other, none within half a gap of a corner. Undefined where they find no room.
 */
export function withTabs(path: Path, count: number, gap: number): readonly Path[] | undefined {
  const pieces = piecesOf(path);
  const lengths = pieces.map(pieceLength);
  const share = pieces.map(() => 0);
  for (let n = 0; n < count; n++) {
    let best = 0;
    for (const i of pieces.keys()) if (lengths[i]! / (share[i]! + 1) > lengths[best]! / (share[best]! + 1)) best = i;
    share[best]!++;
  }
  if (share.some((n, i) => n > 0 && lengths[i]! / n < 3 * gap)) return undefined;
  const runs: { start: Point; segments: Segment[]; closed: false }[] = [];
  let open = { start: path.start, segments: [] as Segment[], closed: false as const };
  const first = open;
  const add = (piece: Piece): void => void open.segments.push(piece.segment);
  for (const [i, piece] of pieces.entries()) {
    const half = gap / 2 / lengths[i]!;
    let at = 0;
    for (let n = 0; n < share[i]!; n++) {
      const middle = (n + 0.5) / share[i]!;
      add(partAlong(piece, at, middle - half));
      runs.push(open);
      at = middle + half;
      open = { start: partAlong(piece, at, 1).from, segments: [], closed: false };
    }
    add(partAlong(piece, at, 1));
  }
  // The last stretch runs on over the path's beginning into the first.
  open.segments.push(...first.segments);
  return [...runs.slice(1), open];
}
