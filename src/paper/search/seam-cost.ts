import { bottom, right } from '../../geometry/box.ts';
import type { Size } from '../../geometry/point.ts';
import type { SheetCount } from './count.ts';
import { type Hit, type Obstacle, SEAM_CLEARANCE } from './obstacle.ts';
import type { Zones } from './zones.ts';

/** A grid of sheets, and what the lines of its seams would run through were every sheet kept, in the list's order. */
export interface Crossed {
  readonly h: Zones;
  readonly v: Zones;
  readonly hitsX: readonly Hit[];
  readonly hitsY: readonly Hit[];
  readonly window: Size;
  readonly avoid: readonly Obstacle[];
}

/**
 * The weight of everything that the seams between kept sheets run through; each obstacle counts once. Where it comes
 * to more than `most` it may be less than the whole.
 */
export function seamCost(kept: SheetCount, grid: Crossed, most: number): number {
  const { h, v, hitsX, hitsY, window, avoid } = grid;
  let cost = 0;
  let i = 0;
  let j = 0;
  while (cost <= most && (i < hitsX.length || j < hitsY.length)) {
    const nextX = i < hitsX.length ? hitsX[i]!.obstacle : Number.POSITIVE_INFINITY;
    const nextY = j < hitsY.length ? hitsY[j]!.obstacle : Number.POSITIVE_INFINITY;
    const { box, weight } = avoid[Math.min(nextX, nextY)]!;
    let crossed = false;
    if (nextX <= nextY) {
      crossed = isCrossed(
        hitsX[i]!.before - h.from,
        box.y,
        bottom(box),
        v,
        window.height,
        (row, column) => kept.isKept(row, column) && kept.isKept(row, column + 1),
      );
      i++;
    } else {
      crossed = isCrossed(
        hitsY[j]!.before - v.from,
        box.x,
        right(box),
        h,
        window.width,
        (column, row) => kept.isKept(row, column) && kept.isKept(row + 1, column),
      );
      j++;
    }
    if (!crossed) continue;
    cost += weight;
    const obstacle = Math.min(nextX, nextY);
    while (i < hitsX.length && hitsX[i]!.obstacle === obstacle) i++;
    while (j < hitsY.length && hitsY[j]!.obstacle === obstacle) j++;
  }
  return cost;
}

/** Whether a seam's line behind sheet `line` is a seam somewhere along a stretch of the other axis. */
function isCrossed(
  line: number,
  low: number,
  high: number,
  { origin, pitch, from }: Zones,
  window: number,
  isSeam: (along: number, line: number) => boolean,
): boolean {
  const first = Math.ceil((low - SEAM_CLEARANCE - origin - window) / pitch) - from;
  const last = Math.floor((high + SEAM_CLEARANCE - origin) / pitch) - from;
  for (let along = first; along <= last; along++) if (isSeam(along, line)) return true;
  return false;
}
