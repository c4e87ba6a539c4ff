import { type Box, bottom, right } from './box.ts';
import { monotone, type Piece, piecesOf, pointAt, sweepOf } from './curves.ts';
import { pieceBox } from './extent.ts';
import { distanceToCubic } from './nearest-on-cubic.ts';
import type { Path } from './path.ts';
import { distance, dot, minus, type Point, times } from './point.ts';

/** A path made ready for questions that are asked of it many times. */
export interface Outline {
  readonly pieces: readonly { readonly piece: Piece; readonly box: Box }[];
  /** Cut where they turn back, for counting crossings. */
  readonly runs: readonly { readonly piece: Piece; readonly box: Box }[];
}

export function outlineOf(path: Path): Outline {
  const pieces = piecesOf(path);
  const boxed = (piece: Piece) => ({ piece, box: pieceBox(piece) });
  return { pieces: pieces.map(boxed), runs: pieces.flatMap(monotone).map(boxed) };
}

/** True inside a closed outline (its own line belongs to neither side), by counting crossings to the right. */
export function isInside(outline: Outline, p: Point): boolean {
  let inside = false;
  for (const { piece, box } of outline.runs) {
    const [a, b] = [piece.from, piece.segment.to];
    if (a.y > p.y === b.y > p.y || p.x >= right(box)) continue;
    if (p.x < box.x || crossingX(piece, p.y) > p.x) inside = !inside;
  }
  return inside;
}

/** Where a piece that runs one way passes a height between its ends. */
function crossingX(piece: Piece, y: number): number {
  const [a, b] = [piece.from, piece.segment.to];
  if (piece.segment.kind === 'line') return a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y);
  let [low, high] = [0, 1];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (pointAt(piece, middle).y > y === b.y > y) high = middle;
    else low = middle;
  }
  return pointAt(piece, (low + high) / 2).x;
}

/** From a point to the nearest of an outline's own line. */
export function distanceTo(outline: Outline, p: Point): number {
  let best = Number.POSITIVE_INFINITY;
  for (const { piece, box } of outline.pieces)
    if (boxDistance(box, p) < best) best = Math.min(best, toPiece(piece, p, best));
  return best;
}

function boxDistance(box: Box, p: Point): number {
  return Math.hypot(Math.max(box.x - p.x, 0, p.x - right(box)), Math.max(box.y - p.y, 0, p.y - bottom(box)));
}

/** From a point to the nearest of a piece; it may give up where nothing is nearer than `atMost`, and say that or more. */
export function toPiece(piece: Piece, p: Point, atMost = Number.POSITIVE_INFINITY): number {
  const { from, segment } = piece;
  const ends = Math.min(distance(from, p), distance(segment.to, p));
  switch (segment.kind) {
    case 'line': {
      const way = minus(segment.to, from);
      const along = dot(minus(p, from), way) / dot(way, way);
      if (!(along > 0 && along < 1)) return ends;
      return distance(p, { x: from.x + way.x * along, y: from.y + way.y * along });
    }
    case 'arc': {
      const { begin, sweep } = sweepOf(from, segment);
      const angle = Math.atan2(p.y - segment.centre.y, p.x - segment.centre.x) - begin;
      const turn = (((sweep > 0 ? angle : -angle) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
      if (turn > Math.abs(sweep)) return ends;
      return Math.abs(distance(p, segment.centre) - distance(from, segment.centre));
    }
    case 'cubic':
      return distanceToCubic(from, segment.c1, segment.c2, segment.to, p, atMost);
    default: {
      const never: never = segment;
      throw new TypeError(`unknown segment ${JSON.stringify(never)}`);
    }
  }
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** The nearest approach of two outlines that do not cross, to about `within`; never less than the truth by more than that. */
export function gapBetween(a: Path, b: Path, within = 1e-4): number {
  const [first, second] = [outlineOf(a), outlineOf(b)];
  let best = Number.POSITIVE_INFINITY;
  for (const [from, to] of [
    [first, second],
    [second, first],
  ] as const) {
    for (const { piece, box } of from.pieces) {
      if (!to.pieces.some((other) => boxesApart(box, other.box) < best)) continue;
      // Between straight sides the nearest is always at an end of one of them.
      if (piece.segment.kind === 'line') best = Math.min(best, distanceTo(to, piece.from));
      else best = Math.min(best, curveTo(piece, to, within));
    }
  }
  return best;
}

export function boxesApart(a: Box, b: Box): number {
  return Math.hypot(Math.max(a.x - right(b), 0, b.x - right(a)), Math.max(a.y - bottom(b), 0, b.y - bottom(a)));
}

function curveTo(piece: Piece, to: Outline, within: number): number {
  const at = (t: number): number => distanceTo(to, pointAt(piece, t));
  const count = 8;
  const away = Array.from({ length: count + 1 }, (_, i) => at(i / count));
  let best = Math.min(...away);
  for (let i = 0; i <= count; i++) {
    if (away[i]! > (away[i - 1] ?? Number.POSITIVE_INFINITY) || away[i]! > (away[i + 1] ?? Number.POSITIVE_INFINITY))
      continue;
    let [low, high] = [Math.max(0, (i - 1) / count), Math.min(1, (i + 1) / count)];
    const span = distance(pointAt(piece, low), pointAt(piece, high));
    for (let width = span; width > within; width *= GOLDEN) {
      const [left, right_] = [high - (high - low) * GOLDEN, low + (high - low) * GOLDEN];
      if (at(left) < at(right_)) high = right_;
      else low = left;
    }
    best = Math.min(best, at((low + high) / 2));
  }
  return best;
}

/** The point of a curve moved to the left of its travel by `by`. */
export const movedLeft = (p: Point, direction: Point, by: number): Point => {
  const left = times({ x: direction.y, y: -direction.x }, by);
  return { x: p.x + left.x, y: p.y + left.y };
};
