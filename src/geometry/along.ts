import { type Piece, partOf } from './curves.ts';
import { pieceLength } from './measure.ts';

/** The part of a piece between two shares of its length, from 0 to 1; a cubic's own parameter does not run evenly. */
function partAlong(piece: Piece, from: number, to: number): Piece {
  if (piece.segment.kind !== 'cubic') return partOf(piece, from, to);
  const total = pieceLength(piece);
  return partOf(piece, parameter(piece, from * total), parameter(piece, to * total));
}

const HALVINGS = 50;

/** Where a piece has run through a length. */
function parameter(piece: Piece, length: number): number {
  if (length <= 0) return 0;
  if (length >= pieceLength(piece)) return 1;
  let [low, high] = [0, 1];
  for (let n = 0; n < HALVINGS; n++) {
    const middle = (low + high) / 2;
    if (pieceLength(partOf(piece, 0, middle)) < length) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The pieces between two lengths along a chain of them. */
export function stretchAlong(pieces: readonly Piece[], from: number, to: number): readonly Piece[] {
  let at = 0;
  return pieces.flatMap((piece) => {
    const long = pieceLength(piece);
    const [a, b] = [Math.max(0, (from - at) / long), Math.min(1, (to - at) / long)];
    at += long;
    if (!(b - a > 1e-12)) return [];
    return [a === 0 && b === 1 ? piece : partAlong(piece, a, b)];
  });
}
