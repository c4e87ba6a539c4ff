import { type Box, bottom, overlaps, right } from '../geometry/box.ts';
import type { Point, Size } from '../geometry/point.ts';

/** Between words of a sheet and anything else. */
const GAP = 1.2;

/** What lies on a sheet: words, which nothing may touch, and lines, which are better left clear. */
export class Room {
  private readonly words: Box[] = [];
  private readonly lines: Box[] = [];

  constructor(words: readonly Box[], lines: readonly Box[]) {
    this.words.push(...words);
    this.lines.push(...lines);
  }

  /** From now on nothing may touch this. */
  take(area: Box): void {
    this.words.push(area);
  }

  /** How many lines an area would lie on; infinite where it would touch words. */
  cost(area: Box): number {
    if (this.words.some((other) => overlaps(area, other, GAP))) return Number.POSITIVE_INFINITY;
    let cost = 0;
    for (const other of this.lines) if (overlaps(area, other, GAP)) cost++;
    return cost;
  }

  /** The best of some areas: on the fewest lines; of equals the first. Undefined where all touch words. */
  best(areas: Iterable<Box>): Box | undefined {
    let best: Box | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (const area of areas) {
      const cost = this.cost(area);
      if (cost < least) [best, least] = [area, cost];
      if (least === 0) break;
    }
    return best;
  }
}

export type Corner = 'top left' | 'top right' | 'bottom left' | 'bottom right';

/** Places for something of a size within an area, `step` apart, from a corner on, row after row. */
export function* placesFrom(corner: Corner, size: Size, within: Box, step: number): Generator<Box> {
  const [wide, high] = [within.width - size.width, within.height - size.height];
  if (wide < 0 || high < 0) return;
  for (let down = 0; down <= high; down += step) {
    for (let along = 0; along <= wide; along += step) {
      const at: Point = {
        x: corner.endsWith('left') ? within.x + along : right(within) - size.width - along,
        y: corner.startsWith('top') ? within.y + down : bottom(within) - size.height - down,
      };
      yield { ...at, width: size.width, height: size.height };
    }
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
