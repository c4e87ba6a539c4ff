import { type Box, bottom, grown, overlaps, right } from '../geometry/box.ts';
import { type Line, meetsBox } from '../geometry/clip.ts';
import type { Point } from '../geometry/point.ts';

/** A line with half of its width. */
export interface InkedLine extends Line {
  readonly half: number;
}

/** Wide enough that most words touch few squares, narrow enough that a square holds few things. */
const SQUARE = 16;

/** What words must not touch, kept by squares of the sheet, so that asking costs what lies near and not all there is. */
export class Taken {
  private readonly lines = new Map<number, InkedLine[]>();
  private readonly boxes = new Map<number, Box[]>();
  /** What the last question that was answered with no ran into. */
  private lastBox: Box | undefined;
  private lastLine: InkedLine | undefined;

  addLine(line: InkedLine): void {
    const { from, to, half } = line;
    const x = Math.min(from.x, to.x) - half;
    const y = Math.min(from.y, to.y) - half;
    const area = { x, y, width: Math.abs(to.x - from.x) + 2 * half, height: Math.abs(to.y - from.y) + 2 * half };
    for (const [key, square] of squares(area)) {
      if (meetsBox(line, square.x - half, square.y - half, right(square) + half, bottom(square) + half))
        put(this.lines, key, line);
    }
  }

  /** How far one can go from a point before a line is met, at most `reach`; lines through the point itself do not count. */
  clearance(from: Point, way: Point, reach: number): number {
    const to = { x: from.x + way.x * reach, y: from.y + way.y * reach };
    let nearest = reach;
    for (const [key, square] of squares(spanned(from, to))) {
      if (!meetsBox({ from, to }, square.x, square.y, right(square), bottom(square))) continue;
      for (const line of this.lines.get(key) ?? []) {
        const t = crossing(from, way, line);
        if (t !== undefined && t > 0.05 && t < nearest) nearest = t;
      }
    }
    return nearest;
  }

  /** The lines that come within `gap` of a line. */
  near(line: Line, gap: number): readonly InkedLine[] {
    const found = new Set<InkedLine>();
    for (const [key] of squares(grown(spanned(line.from, line.to), gap)))
      for (const other of this.lines.get(key) ?? []) found.add(other);
    return [...found];
  }

  /** Whether a line runs over words. */
  crossesWords(line: Line): boolean {
    for (const [key] of squares(spanned(line.from, line.to))) {
      const over = this.boxes.get(key)?.some((b) => meetsBox(line, b.x, b.y, right(b), bottom(b)));
      if (over === true) return true;
    }
    return false;
  }

  addBox(box: Box): void {
    for (const [key] of squares(box)) put(this.boxes, key, box);
  }

  isFree(area: Box, gap: number): boolean {
    const padded = grown(area, gap);
    // Places are asked for one beside the other, so that what was in the way is most often still in the way.
    const { lastBox, lastLine } = this;
    if (lastBox !== undefined && overlaps(padded, lastBox)) return false;
    if (lastLine !== undefined && runsThrough(lastLine, padded)) return false;
    const [fromColumn, toColumn] = [Math.floor((padded.x - 1) / SQUARE), Math.floor((right(padded) + 1) / SQUARE)];
    const [fromRow, toRow] = [Math.floor((padded.y - 1) / SQUARE), Math.floor((bottom(padded) + 1) / SQUARE)];
    for (let row = fromRow; row <= toRow; row++) {
      for (let column = fromColumn; column <= toColumn; column++) {
        const key = keyOf(row, column);
        const box = this.boxes.get(key)?.find((other) => overlaps(padded, other));
        if (box !== undefined) {
          this.lastBox = box;
          return false;
        }
        const line = this.lines.get(key)?.find((other) => runsThrough(other, padded));
        if (line !== undefined) {
          this.lastLine = line;
          return false;
        }
      }
    }
    return true;
  }
}

const runsThrough = (line: InkedLine, { x, y, width, height }: Box): boolean =>
  meetsBox(line, x - line.half, y - line.half, x + width + line.half, y + height + line.half);

const spanned = (a: Point, b: Point): Box => ({
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

function put<T>(map: Map<number, T[]>, key: number, value: T): void {
  const there = map.get(key);
  if (there === undefined) map.set(key, [value]);
  else there.push(value);
}

const keyOf = (row: number, column: number): number => row * 65536 + column;

function* squares(area: Box): Generator<readonly [number, Box]> {
  for (let row = Math.floor(area.y / SQUARE); row <= Math.floor(bottom(area) / SQUARE); row++) {
    for (let column = Math.floor(area.x / SQUARE); column <= Math.floor(right(area) / SQUARE); column++) {
      yield [keyOf(row, column), { x: column * SQUARE, y: row * SQUARE, width: SQUARE, height: SQUARE }];
    }
  }
}
