import { type Box, box, union } from './box.ts';
import { monotone, type Piece, piecesOf } from './curves.ts';
import type { Path } from './path.ts';

/** The exact box of a path's own line, without a pen. */
export function pathBox(path: Path): Box {
  return union([box(path.start.x, path.start.y, 0, 0), ...piecesOf(path).map(pieceBox)]);
}

/** The exact box of one piece. */
export function pieceBox(piece: Piece): Box {
  const ends = [piece.from, ...monotone(piece).map(({ segment }) => segment.to)];
  return union(ends.map(({ x, y }) => box(x, y, 0, 0)));
}
