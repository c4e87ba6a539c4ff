import type { Rotation } from '../drawing/document.ts';
import { type Box, bottom, contains, grown, overlaps, right } from '../geometry/box.ts';
import { type Line, meetsBox } from '../geometry/clip.ts';
import type { Point } from '../geometry/point.ts';
import { type Block, boxAt, turnedSize } from './block.ts';
import { Squares } from './squares.ts';

/** A line with half of its width. */
export interface InkedLine extends Line {
  readonly half: number;
}

/** Between words and whatever they must not touch. */
export const GAP = 1.2;

/** A place for a block. */
export interface Candidate {
  readonly block: Block;
  readonly rotation: Rotation;
  /** Top left of the turned block. */
  readonly at: Point;
}

export interface Found {
  readonly candidate: Candidate;
  readonly box: Box;
}

/**
 * What is free of a sheet. Boxes are never touched: words, and what keeps its place as words do. Lines are kept clear by
 * whoever asks for a free place, and are better left clear by whoever asks for the best one.
 */
export class Room {
  readonly #boxes = new Squares<Box>();
  readonly #lines = new Squares<InkedLine>();
  readonly #strips = new Squares<Box>();
  /** What the last question that was answered with no ran into. */
  #lastBox: Box | undefined;
  #lastLine: InkedLine | undefined;

  constructor(boxes: readonly Box[] = [], strips: readonly Box[] = []) {
    for (const area of boxes) this.take(area);
    for (const strip of strips) this.addStrip(strip);
  }

  /** From now on nothing may touch this. */
  take(area: Box): void {
    this.#boxes.add(area, area);
  }

  addLine(line: InkedLine): void {
    const { half } = line;
    this.#lines.add(line, grown(spanned(line), half), (square) =>
      meetsBox(line, square.x - half, square.y - half, right(square) + half, bottom(square) + half),
    );
  }

  /** A stretch of a line by the box around it, where no more is known of it. */
  addStrip(strip: Box): void {
    this.#strips.add(strip, strip);
  }

  /** Whether an area touches nothing. */
  isFree(area: Box, gap = GAP): boolean {
    const padded = grown(area, gap);
    // Places are asked for one beside the other, so that what was in the way is most often still in the way.
    if (this.#lastBox !== undefined && overlaps(padded, this.#lastBox)) return false;
    if (this.#lastLine !== undefined && runsThrough(this.#lastLine, padded)) return false;
    const around = grown(padded, 1);
    const box = this.#boxes.find(around, (other) => overlaps(padded, other));
    if (box !== undefined) {
      this.#lastBox = box;
      return false;
    }
    const line = this.#lines.find(around, (other) => runsThrough(other, padded));
    if (line !== undefined) {
      this.#lastLine = line;
      return false;
    }
    if (this.#strips.isEmpty) return true;
    return this.#strips.find(around, (other) => overlaps(padded, other)) === undefined;
  }

  /** The first candidate that lies inside `within` and touches nothing; candidates are made as they are tried. */
  firstFree(candidates: Iterable<Candidate>, within: Box, gap = GAP): Found | undefined {
    for (const candidate of candidates) {
      const area = boxAt(turnedSize(candidate.block, candidate.rotation), candidate.at);
      if (contains(within, area) && this.isFree(area, gap)) return { candidate, box: area };
    }
    return undefined;
  }

  /**
   * On how many strips an area would lie; infinite where it would touch words. Where it comes to `enough` it may be more.
   */
  cost(area: Box, enough = Number.POSITIVE_INFINITY): number {
    const around = grown(area, GAP);
    const touches = (other: Box): boolean => overlaps(area, other, GAP);
    if (this.#boxes.find(around, touches) !== undefined) return Number.POSITIVE_INFINITY;
    // Most places lie on nothing at all; a strip that lies in several squares counts once.
    if (this.#strips.find(around, touches) === undefined) return 0;
    const counted = new Set<Box>();
    this.#strips.find(around, (other) => {
      if (overlaps(area, other, GAP)) counted.add(other);
      return counted.size >= enough;
    });
    return counted.size;
  }

  /** The best of some areas: on the fewest strips; of equals the first. Undefined where all touch words. */
  best(areas: Iterable<Box>): Box | undefined {
    let best: Box | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (const area of areas) {
      const cost = this.cost(area, least);
      if (cost >= least) continue;
      best = area;
      least = cost;
      if (least === 0) break;
    }
    return best;
  }

  /** How far one can go from a point before a line is met, at most `reach`; lines through the point itself do not count. */
  clearance(from: Point, way: Point, reach: number): number {
    const path = { from, to: { x: from.x + way.x * reach, y: from.y + way.y * reach } };
    let nearest = reach;
    for (const line of this.#lines.near(spanned(path), (square) => crosses(path, square))) {
      const t = crossing(from, way, line);
      if (t !== undefined && t > 0.05 && t < nearest) nearest = t;
    }
    return nearest;
  }

  /** The lines that come within `gap` of a line, and some that come near it. */
  linesNear(line: Line, gap: number): readonly InkedLine[] {
    return [...this.#lines.near(grown(spanned(line), gap))];
  }

  /** Whether a line runs over words. */
  crossesWords(line: Line): boolean {
    return this.#boxes.find(spanned(line), (b) => crosses(line, b)) !== undefined;
  }
}

const crosses = (line: Line, b: Box): boolean => meetsBox(line, b.x, b.y, right(b), bottom(b));

const runsThrough = (line: InkedLine, { x, y, width, height }: Box): boolean =>
  meetsBox(line, x - line.half, y - line.half, x + width + line.half, y + height + line.half);

const spanned = ({ from: a, to: b }: Line): Box => ({
  x: Math.min(a.x, b.x),
  y: Math.min(a.y, b.y),
  width: Math.abs(a.x - b.x),
  height: Math.abs(a.y - b.y),
});

/** How far along `way` a line is met. */
function crossing(from: Point, way: Point, line: Line): number | undefined {
  const [dx, dy] = [line.to.x - line.from.x, line.to.y - line.from.y];
  const across = way.x * dy - way.y * dx;
  if (Math.abs(across) < 1e-9 * Math.hypot(dx, dy)) return undefined;
  const [gx, gy] = [line.from.x - from.x, line.from.y - from.y];
  const along = (gx * way.y - gy * way.x) / across;
  return along < -1e-9 || along > 1 + 1e-9 ? undefined : (gx * dy - gy * dx) / across;
}
