import { type Box, bottom, right } from './box.ts';
import { type BoxTree, boxTree, leastFrom, someIn } from './box-tree.ts';
import { monotone, type Piece, piecesOf, pointAt, sweepOf } from './curves.ts';
import { pieceBox } from './extent.ts';
import { distanceToCubic } from './nearest-on-cubic.ts';
import type { Path } from './path.ts';
import { distance, dot, minus, type Point, times } from './point.ts';

interface Boxed {
  readonly pieces: readonly Piece[];
  readonly boxes: readonly Box[];
  readonly tree: BoxTree | undefined;
}

/** A path made ready for questions that are asked of it many times. */
export interface Outline extends Boxed {
  /** Cut where they turn back, for counting crossings. */
  readonly runs: Boxed;
}

function boxed(pieces: readonly Piece[]): Boxed {
  const boxes = pieces.map(pieceBox);
  return { pieces, boxes, tree: boxTree(boxes) };
}

export function outlineOf(path: Path): Outline {
  const pieces = piecesOf(path);
  return { ...boxed(pieces), runs: boxed(pieces.flatMap(monotone)) };
}

/** True inside a closed outline (its own line belongs to neither side), by counting crossings to the right. */
export function isInside({ runs: { pieces, boxes, tree } }: Outline, p: Point): boolean {
  let inside = false;
  someIn(
    tree,
    (part) => p.y >= part.y && p.y <= bottom(part) && p.x < right(part),
    (i) => {
      const [piece, box] = [pieces[i]!, boxes[i]!];
      const [a, b] = [piece.from, piece.segment.to];
      if (a.y > p.y === b.y > p.y || p.x >= right(box)) return false;
      if (p.x < box.x || crossingX(piece, p.y) > p.x) inside = !inside;
      return false;
    },
  );
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

/** From a point to the nearest of an outline's own line, `atMost` where nothing is nearer than that. */
export const distanceTo = ({ pieces, boxes, tree }: Outline, p: Point, atMost?: number): number =>
  leastFrom(tree, boxes, p, (i, most) => toPiece(pieces[i]!, p, most), atMost);

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
    for (const [i, piece] of from.pieces.entries()) {
      const box = from.boxes[i]!;
      const nearer = (other: Box): boolean => boxesApart(box, other) < best;
      if (!someIn(to.tree, nearer, (k) => nearer(to.boxes[k]!))) continue;
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
