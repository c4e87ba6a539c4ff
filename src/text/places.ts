import type { Rotation } from '../drawing/document.ts';
import { type Box, bottom, right } from '../geometry/box.ts';
import type { Size } from '../geometry/point.ts';
import type { Block } from './block.ts';

/** Top left corners, tried one after the other until one is taken; whether one was. Numbers alone, since thousands are tried for one sheet. */
export type Spots = (isTaken: (x: number, y: number) => boolean) => boolean;

/** Where a block may stand as it is turned. */
export interface Places {
  readonly block: Block;
  readonly rotation: Rotation;
  readonly spots: Spots;
}

export type Corner = 'top left' | 'top right' | 'bottom left' | 'bottom right';

/** Spots for something of a size within an area, `step` apart, from a corner on, row after row. */
export function placesFrom(corner: Corner, { width, height }: Size, within: Box, step: number): Spots {
  const wide = within.width - width;
  const high = within.height - height;
  const fromLeft = corner.endsWith('left');
  const fromTop = corner.startsWith('top');
  return (isTaken) => {
    if (wide < 0) return false;
    for (let down = 0; down <= high; down += step) {
      const y = fromTop ? within.y + down : bottom(within) - height - down;
      for (let along = 0; along <= wide; along += step)
        if (isTaken(fromLeft ? within.x + along : right(within) - width - along, y)) return true;
    }
    return false;
  };
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
