import { type Piece, partOf, piecesOf } from './curves.ts';
import { bend } from './meetings.ts';
import type { Path } from './path.ts';
import type { Point } from './point.ts';

/** The corners of a chain of chords that stays within `tolerance` of a path; a closed one does not repeat its start. */
export function flattened(path: Path, tolerance: number): readonly Point[] {
  const points: Point[] = [path.start];
  const visit = (piece: Piece, depth: number): void => {
    if (bend(piece) <= tolerance || depth > 20) {
      points.push(piece.segment.to);
      return;
    }
    visit(partOf(piece, 0, 0.5), depth + 1);
    visit(partOf(piece, 0.5, 1), depth + 1);
  };
  for (const piece of piecesOf(path)) visit(piece, 0);
  if (path.closed) points.pop();
  return points;
}
