import { type Box, bottom, overlaps, right } from '../geometry/box.ts';
import type { Size } from '../geometry/point.ts';

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

  /**
   * How many lines an area would lie on; infinite where it would touch words. Where it comes to `enough` it may be more.
   * It is asked thousands of times for one sheet.
   */
  cost(area: Box, enough = Number.POSITIVE_INFINITY): number {
    for (let i = 0; i < this.words.length; i++)
      if (overlaps(area, this.words[i]!, GAP)) return Number.POSITIVE_INFINITY;
    let cost = 0;
    for (let i = 0; i < this.lines.length && cost < enough; i++) if (overlaps(area, this.lines[i]!, GAP)) cost++;
    return cost;
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
