import { type Piece, partOf, piecesOf, pointAt } from './curves.ts';
import { pieceBox } from './extent.ts';
import { signedArea } from './measure.ts';
import { meetings } from './meetings.ts';
import type { Path } from './path.ts';

/** Nearer to an end of a piece than this, a meeting is the joint with its neighbour. */
const JOINT = 1e-6;
/** A letter with more crossings than this is no letter. */
const MOST = 20;

/**
 * A closed outline that is filled non-zero, without the loops in which it runs over itself: a font may draw a stroke on
 * into another one, so that what lies under both is covered twice.
 */
export function withoutLoops(path: Path): Path {
  let clean = path;
  for (let n = 0; n < MOST; n++) {
    const next = firstLoopCut(clean);
    if (next === undefined) return clean;
    clean = next;
  }
  return clean;
}

/** Both loops of an outline that crosses itself, the smaller left out. */
function firstLoopCut(path: Path): Path | undefined {
  const pieces = piecesOf(path);
  const boxes = pieces.map(pieceBox);
  for (let i = 0; i < pieces.length; i++) {
    for (let j = i + 1; j < pieces.length; j++) {
      const [p, q] = [boxes[i]!, boxes[j]!];
      if (p.x > q.x + q.width || q.x > p.x + p.width || p.y > q.y + q.height || q.y > p.y + p.height) continue;
      for (const { a, b } of meetings(pieces[i]!, pieces[j]!)) {
        if (j === i + 1 && a > 1 - JOINT && b < JOINT) continue;
        if (i === 0 && j === pieces.length - 1 && a < JOINT && b > 1 - JOINT) continue;
        const inner = loop([partOf(pieces[i]!, a, 1), ...pieces.slice(i + 1, j), partOf(pieces[j]!, 0, b)]);
        const outer = loop([
          ...pieces.slice(0, i),
          partOf(pieces[i]!, 0, a),
          partOf(pieces[j]!, b, 1),
          ...pieces.slice(j + 1),
        ]);
        return Math.abs(signedArea(inner)) < Math.abs(signedArea(outer)) ? outer : inner;
      }
    }
  }
  return undefined;
}

function loop(pieces: readonly Piece[]): Path {
  const kept = pieces.filter((piece) => Math.hypot(...extent(piece)) > 1e-9);
  const start = kept[0]!.from;
  const segments = kept.map(({ segment }, i) => ({ ...segment, to: kept[i + 1]?.from ?? start }));
  return { start, segments, closed: true };
}

/** From its start to its middle and on to its end, so that a round piece has one too. */
function extent(piece: Piece): readonly [number, number] {
  const [middle, end] = [pointAt(piece, 0.5), piece.segment.to];
  const far = (p: { x: number; y: number }): number => Math.hypot(p.x - piece.from.x, p.y - piece.from.y);
  return [far(middle), far(end)];
}
