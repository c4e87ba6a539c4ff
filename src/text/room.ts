import { type Box, bottom, box, grown, overlaps, right } from '../geometry/box.ts';
import { type Line, meetsBox } from '../geometry/clip.ts';
import type { Point, Size } from '../geometry/point.ts';
import type { Spots } from './places.ts';
import { Squares } from './squares.ts';

/** A line with half of its width. */
export interface InkedLine extends Line {
  readonly half: number;
}

/** Between words and whatever they must not touch. */
export const GAP = 1.2;

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
  /** What is asked for just now, with its gap, and what may lie near it: kept, since thousands are asked for one after the other. */
  readonly #asked = { x: 0, y: 0, width: 0, height: 0 };
  readonly #around = { x: 0, y: 0, width: 0, height: 0 };
  readonly #inTheWay = (other: Box): boolean => overlaps(this.#asked, other);
  readonly #runsThrough = (line: InkedLine): boolean => runsThrough(line, this.#asked);
  readonly #touches = (other: Box): boolean => overlaps(this.#asked, other, GAP);

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

  /** Whether what is so large touches nothing there. */
  isFree(x: number, y: number, width: number, height: number, gap = GAP): boolean {
    const asked = this.#asked;
    [asked.x, asked.y, asked.width, asked.height] = [x - gap, y - gap, width + 2 * gap, height + 2 * gap];
    // Places are asked for one beside the other, so that what was in the way is most often still in the way.
    if (this.#lastBox !== undefined && overlaps(asked, this.#lastBox)) return false;
    if (this.#lastLine !== undefined && runsThrough(this.#lastLine, asked)) return false;
    const around = this.#near(asked.x, asked.y, asked.width, asked.height, 1);
    const word = this.#boxes.find(around, this.#inTheWay);
    if (word !== undefined) {
      this.#lastBox = word;
      return false;
    }
    const line = this.#lines.find(around, this.#runsThrough);
    if (line !== undefined) {
      this.#lastLine = line;
      return false;
    }
    return this.#strips.isEmpty || this.#strips.find(around, this.#inTheWay) === undefined;
  }

  /**
   * On how many strips an area would lie; infinite where it would touch words. Where it comes to `enough` it may be more.
   */
  cost(x: number, y: number, width: number, height: number, enough = Number.POSITIVE_INFINITY): number {
    const asked = this.#asked;
    [asked.x, asked.y, asked.width, asked.height] = [x, y, width, height];
    const around = this.#near(x, y, width, height, GAP);
    if (this.#boxes.find(around, this.#touches) !== undefined) return Number.POSITIVE_INFINITY;
    // Most places lie on nothing at all; a strip that lies in several squares counts once.
    if (this.#strips.find(around, this.#touches) === undefined) return 0;
    const counted = new Set<Box>();
    this.#strips.find(around, (other) => {
      if (this.#touches(other)) counted.add(other);
      return counted.size >= enough;
    });
    return counted.size;
  }

  /**
   * The best place for what is so large: on the fewest strips, `most` of them at the most; of equals the first. Undefined
   * where all touch words, or lie on more.
   */
  best({ width, height }: Size, spots: Spots, most = Number.POSITIVE_INFINITY): Box | undefined {
    let best: Box | undefined;
    let least = most + 1;
    spots((x, y) => {
      const cost = this.cost(x, y, width, height, least);
      if (cost < least) {
        best = box(x, y, width, height);
        least = cost;
      }
      return least === 0;
    });
    return best;
  }

  #near(x: number, y: number, width: number, height: number, by: number): Box {
    const around = this.#around;
    [around.x, around.y, around.width, around.height] = [x - by, y - by, width + 2 * by, height + 2 * by];
    return around;
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
