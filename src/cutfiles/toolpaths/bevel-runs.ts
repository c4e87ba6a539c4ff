import { stretchAlong } from '../../geometry/along.ts';
import { directionAt, type Piece, partOf, piecesOf } from '../../geometry/curves.ts';
import { pieceLength } from '../../geometry/measure.ts';
import { movedPiece } from '../../geometry/parallel.ts';
import { type Path, reversed } from '../../geometry/path.ts';
import { dot, plus, times } from '../../geometry/point.ts';

/** A stretch of an outline that a blade follows in one go: from corner to corner, or all round where there is none. */
export interface Run {
  readonly pieces: readonly Piece[];
  readonly round: boolean;
  /** How far the outline turns at the corners before and after, radians, positive to the right of its own direction. */
  readonly turns: { readonly before: number; readonly after: number };
}

/** Directions that differ by more make a corner, radians. */
const CORNER = 1e-3;

/** The runs of a closed outline, in its direction. */
export function runsOf(outline: Path): readonly Run[] {
  const pieces = piecesOf(outline);
  const turns = pieces.map((piece, i) => {
    const before = pieces[(i + pieces.length - 1) % pieces.length]!;
    const [u, v] = [directionAt(before, 1), directionAt(piece, 0)];
    return u === undefined || v === undefined ? 0 : Math.atan2(u.x * v.y - u.y * v.x, dot(u, v));
  });
  const corner = (i: number): boolean => Math.abs(turns[i % pieces.length]!) > CORNER;
  const first = pieces.findIndex((_, i) => corner(i));
  if (first < 0) return [{ pieces: begunOnLine(pieces), round: true, turns: { before: 0, after: 0 } }];
  const runs: { pieces: Piece[]; round: false; turns: { before: number; after: number } }[] = [];
  for (let n = 0; n < pieces.length; n++) {
    const i = (first + n) % pieces.length;
    if (corner(i)) {
      if (n > 0) runs.at(-1)!.turns.after = turns[i]!;
      runs.push({ pieces: [], round: false, turns: { before: turns[i]!, after: turns[first]! } });
    }
    runs.at(-1)!.pieces.push(pieces[i]!);
  }
  return runs;
}

/**
 * All round from the middle of its longest straight, where it has one: where the blade goes in behind its head, or comes out
 * ahead of it, it cuts straight on, which on a bend would scratch what is kept.
 */
function begunOnLine(pieces: readonly Piece[]): readonly Piece[] {
  const long = (i: number): number => (pieces[i]?.segment.kind === 'line' ? pieceLength(pieces[i]) : 0);
  const at = pieces.reduce((best, _, i) => (long(i) > long(best) ? i : best), 0);
  if (long(at) === 0) return pieces;
  const line = pieces[at]!;
  return [partOf(line, 0.5, 1), ...pieces.slice(at + 1), ...pieces.slice(0, at), partOf(line, 0, 0.5)];
}

/** A run moved to the left of its travel as a whole, its ends where its own ends are; undefined where a bend is too tight. */
export function movedRun(run: Run, by: number): Run | undefined {
  const moved = by === 0 ? run.pieces.map((piece) => [piece]) : run.pieces.map((piece) => movedPiece(piece, by));
  if (moved.some((parts) => parts.length === 0)) return undefined;
  return { ...run, pieces: moved.flat() };
}

/** The same run from its other end. */
export function turnedRun({ pieces, round, turns }: Run): Run {
  const back = reversed({ start: pieces[0]!.from, segments: pieces.map(({ segment }) => segment), closed: false });
  return { pieces: piecesOf(back), round, turns: { before: turns.after, after: turns.before } };
}

/**
 * The way of the head along a run, begun `before` its beginning and ended `after` its end; negative ones shorten it. Where
 * a run goes all round it goes on along itself, else straight on along its tangents. Undefined where nothing is left.
 */
export function strokeAlong(
  { pieces, round }: Pick<Run, 'pieces' | 'round'>,
  before: number,
  after: number,
): Path | undefined {
  const long = pieces.reduce((sum, piece) => sum + pieceLength(piece), 0);
  if (long + before + after <= 0 || (round && Math.max(before, after) > long)) return undefined;
  const chain = round
    ? [...pieces, ...pieces, ...pieces]
    : [straightOn(pieces[0]!, 0, before), ...pieces, straightOn(pieces.at(-1)!, 1, after)];
  const offset = round ? long : Math.max(0, before);
  const own = chain.filter((piece): piece is Piece => piece !== undefined);
  const parts = merged(stretchAlong(own, offset - before, offset + long + after));
  return { start: parts[0]!.from, segments: parts.map(({ segment }) => segment), closed: false };
}

/** A line that goes on from an end of a piece along its tangent. */
function straightOn(piece: Piece, end: 0 | 1, by: number): Piece | undefined {
  const direction = directionAt(piece, end);
  if (by <= 0 || direction === undefined) return undefined;
  const at = end === 0 ? piece.from : piece.segment.to;
  const far = plus(at, times(direction, end === 0 ? -by : by));
  return end === 0
    ? { from: far, segment: { kind: 'line', to: at } }
    : { from: at, segment: { kind: 'line', to: far } };
}

/** Lines that run on into each other as one, so that a straight stroke is one line. */
function merged(pieces: readonly Piece[]): readonly Piece[] {
  const found: Piece[] = [];
  for (const piece of pieces) {
    const last = found.at(-1);
    if (last?.segment.kind === 'line' && piece.segment.kind === 'line') {
      const [u, v] = [directionAt(last, 1), directionAt(piece, 0)];
      if (u !== undefined && v !== undefined && Math.abs(u.x * v.y - u.y * v.x) < 1e-9 && dot(u, v) > 0) {
        found[found.length - 1] = { from: last.from, segment: piece.segment };
        continue;
      }
    }
    found.push(piece);
  }
  return found;
}
