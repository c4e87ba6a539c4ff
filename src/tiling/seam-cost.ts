import { type Box, bottom, right } from '../geometry/box.ts';
import type { Size } from '../geometry/point.ts';
import type { Hit } from './axis.ts';
import type { SheetCount } from './count.ts';
import type { Zones } from './zones.ts';

/** Something that a seam had better not run through. */
export interface Obstacle {
  readonly box: Box;
  readonly weight: number;
}

/** How near to an obstacle a seam may come, mm. */
export const SEAM_CLEARANCE = 1.5;

/** A grid of sheets, and what the lines of its seams would run through were every sheet kept. */
export interface Crossed {
  readonly h: Zones;
  readonly v: Zones;
  readonly hitsX: readonly Hit[];
  readonly hitsY: readonly Hit[];
  readonly window: Size;
  readonly avoid: readonly Obstacle[];
}

/** The weight of everything that the seams between kept sheets run through; each obstacle counts once. */
export function seamCost(kept: SheetCount, { h, v, hitsX, hitsY, window, avoid }: Crossed): number {
  const crossed = new Set<number>();
  for (const { obstacle, before } of hitsX) {
    const { box } = avoid[obstacle]!;
    const column = before - h.from;
    const [from, to] = reached(box.y, bottom(box), v, window.height);
    for (let row = from; row <= to; row++) {
      if (kept.isKept(row, column) && kept.isKept(row, column + 1)) crossed.add(obstacle);
    }
  }
  for (const { obstacle, before } of hitsY) {
    const { box } = avoid[obstacle]!;
    const row = before - v.from;
    const [from, to] = reached(box.x, right(box), h, window.width);
    for (let column = from; column <= to; column++) {
      if (kept.isKept(row, column) && kept.isKept(row + 1, column)) crossed.add(obstacle);
    }
  }
  let cost = 0;
  for (const obstacle of crossed) cost += avoid[obstacle]!.weight;
  return cost;
}

/** The first and the last sheet, counted from `from`, whose window comes near a stretch. */
function reached(low: number, high: number, { origin, pitch, from }: Zones, window: number): readonly [number, number] {
  const first = Math.ceil((low - SEAM_CLEARANCE - origin - window) / pitch) - from;
  const last = Math.floor((high + SEAM_CLEARANCE - origin) / pitch) - from;
  return [first, last];
}
