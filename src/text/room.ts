import { type Box, bottom, overlaps, right } from '../geometry/box.ts';
import type { Size } from '../geometry/point.ts';

/** Between words of a sheet and anything else. */
const GAP = 1.2;

/** Areas by squares of the sheet: asking costs what lies near, not all there is. */
class Areas {
  private readonly all: Box[] = [];
  private readonly squares = new Map<number, number[]>();
  /** The question in which an area was last counted, so that one in several squares counts once. */
  private readonly asked: number[] = [];
  private question = 0;

  add(area: Box): void {
    const index = this.all.push(area) - 1;
    this.asked.push(0);
    forSquares(area, GAP, (key) => {
      const there = this.squares.get(key);
      if (there === undefined) this.squares.set(key, [index]);
      else there.push(index);
    });
  }

  /** How many lie within the gap of an area; it stops at `enough`. */
  count(area: Box, enough: number): number {
    this.question++;
    let count = 0;
    forSquares(area, 0, (key) => {
      if (count >= enough) return;
      for (const index of this.squares.get(key) ?? []) {
        if (this.asked[index] === this.question) continue;
        this.asked[index] = this.question;
        if (overlaps(area, this.all[index]!, GAP)) count++;
      }
    });
    return Math.min(count, enough);
  }
}

const SQUARE = 20;

function forSquares(area: Box, more: number, visit: (key: number) => void): void {
  const [x0, x1] = [Math.floor((area.x - more) / SQUARE), Math.floor((right(area) + more) / SQUARE)];
  const [y0, y1] = [Math.floor((area.y - more) / SQUARE), Math.floor((bottom(area) + more) / SQUARE)];
  for (let y = y0; y <= y1; y++) for (let x = x0; x <= x1; x++) visit(y * 65536 + x);
}

/** What lies on a sheet: words, which nothing may touch, and lines, which are better left clear. */
export class Room {
  private readonly words = new Areas();
  private readonly lines = new Areas();

  constructor(words: readonly Box[], lines: readonly Box[]) {
    for (const area of words) this.words.add(area);
    for (const area of lines) this.lines.add(area);
  }

  /** From now on nothing may touch this. */
  take(area: Box): void {
    this.words.add(area);
  }

  /**
   * How many lines an area would lie on; infinite where it would touch words. Where it comes to `enough` it may be more.
   * It is asked thousands of times for one sheet.
   */
  cost(area: Box, enough = Number.POSITIVE_INFINITY): number {
    if (this.words.count(area, 1) > 0) return Number.POSITIVE_INFINITY;
    return this.lines.count(area, enough);
  }

  /** The best of some areas: on the fewest lines; of equals the first. Undefined where all touch words. */
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
}

export type Corner = 'top left' | 'top right' | 'bottom left' | 'bottom right';

/** Places for something of a size within an area, `step` apart, from a corner on, row after row. */
export function* placesFrom(corner: Corner, size: Size, within: Box, step: number): Generator<Box> {
  const { width, height } = size;
  const wide = within.width - width;
  const high = within.height - height;
  if (wide < 0 || high < 0) return;
  const fromLeft = corner.endsWith('left');
  const fromTop = corner.startsWith('top');
  for (let down = 0; down <= high; down += step) {
    const y = fromTop ? within.y + down : bottom(within) - height - down;
    for (let along = 0; along <= wide; along += step)
      yield { x: fromLeft ? within.x + along : right(within) - width - along, y, width, height };
  }
}

/** Numbers from `from` to `to`, `step` apart, the nearest to `ideal` first. */
export function outwardsFrom(ideal: number, from: number, to: number, step: number): readonly number[] {
  const all: number[] = [];
  const start = Math.min(to, Math.max(from, ideal));
  for (let k = 0; start + k * step <= to || start - k * step >= from; k++) {
    if (start + k * step <= to) all.push(start + k * step);
    if (k > 0 && start - k * step >= from) all.push(start - k * step);
  }
  return all;
}
