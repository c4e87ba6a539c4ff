import type { Size } from '../../geometry/point.ts';
import type { Forest } from './trees/forest.ts';

/** What of a plan's leftovers is kept, and what that is worth. Lengths are without kerf. */
export interface Keeping {
  /** The smallest useful offcut, on the grid. */
  readonly least: Size;
  /** What the shop credits for one square unit of a kept offcut, of each stock; undefined where it credits none. */
  readonly credit?: readonly number[];
}

export const useful = (width: number, height: number, least: Size): boolean =>
  (width >= least.width && height >= least.height) || (width >= least.height && height >= least.width);

/** Area of the largest leftover worth keeping; what is free and not touched is none. */
export function largest(forest: Forest, { least }: Keeping): number {
  let best = 0;
  each(forest, least, (area) => {
    best = Math.max(best, area);
  });
  return best;
}

/** What the leftovers are worth: what all that are kept are credited at, or else the area of the largest. */
export function worthKept(forest: Forest, keeping: Keeping): number {
  const { least, credit } = keeping;
  if (credit === undefined) return largest(forest, keeping);
  let worth = 0;
  each(forest, least, (area, stock) => {
    worth += area * credit[stock]!;
  });
  return worth;
}

function each(
  { leftovers, nodes, instance, stock }: Forest,
  least: Size,
  kept: (area: number, stock: number) => void,
): void {
  for (let slot = 0; slot < leftovers.count; slot++) {
    const width = leftovers.width[slot]! - instance.kerf;
    const height = leftovers.height[slot]! - instance.kerf;
    if (!useful(width, height, least)) continue;
    const node = leftovers.node[slot]!;
    const of = stock[nodes.sheetOf(node)]!;
    if (nodes.parent[node]! < 0 && instance.stocks[of]!.free) continue;
    kept(width * height, of);
  }
}
