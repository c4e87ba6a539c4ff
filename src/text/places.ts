import { type Box, bottom, right } from '../geometry/box.ts';
import type { Size } from '../geometry/point.ts';

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
