import type { Size } from '../../geometry/point.ts';
import { Forest } from './forest.ts';
import { NONE, PIECE } from './nodes.ts';
import { ORDERS, openNone } from './recreate.ts';
import type { Search } from './search.ts';

/** A state is compared with the one of so many goes ago. */
const HISTORY = 50;

/** What a plan leaves: the area of its largest offcut, and how many cuts it takes. */
interface Rest {
  readonly offcut: number;
  readonly cuts: number;
}

/**
 * Goes on with a plan without another sheet, for the largest single offcut and then the fewest cuts. `least`: the
 * smallest useful offcut on the grid, without kerf.
 */
export function largerOffcut(search: Search, least: Size, until: number): void {
  const { best, instance, random, recreate, ruin } = search;
  if (best.missingCount > 0) return;
  const now = new Forest(instance);
  const kept = new Forest(instance);
  now.copy(best);
  kept.copy(best);
  let rest: Rest = { offcut: largest(now, least), cuts: cutsOf(now) };
  let keptOffcut = rest.offcut;
  const offcut = new Float64Array(HISTORY).fill(rest.offcut);
  const value = new Float64Array(HISTORY).fill(now.leftovers.value);
  for (let go = 0; search.steps < until; go++) {
    ruin.run(now, random, false);
    recreate.run(now, random.below(ORDERS), random, openNone);
    search.spendGo(now);
    // A sheet that has become empty is saved, which counts before any offcut.
    if (now.missingCount === 0 && now.closeEmpty()) {
      kept.copy(now);
      search.best.copy(now);
      rest = { offcut: largest(now, least), cuts: cutsOf(now) };
      keptOffcut = rest.offcut;
      offcut.fill(rest.offcut);
      value.fill(now.leftovers.value);
      continue;
    }
    const slot = go % HISTORY;
    const area = now.missingCount > 0 ? -1 : largest(now, least);
    const better = (than: number, worth: number): boolean =>
      area > than || (area === than && now.leftovers.value >= worth);
    if (area < 0 || !(better(offcut[slot]!, value[slot]!) || better(keptOffcut, kept.leftovers.value))) {
      now.copy(kept);
    } else {
      kept.copy(now);
      keptOffcut = area;
      const cuts = area >= rest.offcut ? cutsOf(now) : Infinity;
      if (area > rest.offcut || (area === rest.offcut && cuts < rest.cuts)) {
        search.best.copy(now);
        rest = { offcut: area, cuts };
      }
    }
    if (keptOffcut > offcut[slot]! || (keptOffcut === offcut[slot]! && kept.leftovers.value > value[slot]!)) {
      offcut[slot] = keptOffcut;
      value[slot] = kept.leftovers.value;
    }
  }
}

/** Area of the largest leftover worth keeping; what is free and not touched is none. */
export function largest(forest: Forest, least: Size): number {
  const { leftovers, nodes, instance } = forest;
  let best = 0;
  for (let slot = 0; slot < leftovers.count; slot++) {
    const width = leftovers.width[slot]! - instance.kerf;
    const height = leftovers.height[slot]! - instance.kerf;
    if (width * height <= best || !useful(width, height, least)) continue;
    const over = nodes.parent[leftovers.node[slot]!]!;
    if (over < 0 && instance.stocks[forest.stock[-1 - over]!]!.free) continue;
    best = width * height;
  }
  return best;
}

export const useful = (width: number, height: number, least: Size): boolean =>
  (width >= least.width && height >= least.height) || (width >= least.height && height >= least.width);

function cutsOf(forest: Forest): number {
  let cuts = 0;
  for (let sheet = 0; sheet < forest.sheets; sheet++) cuts += cutsBelow(forest, forest.root[sheet]!);
  return cuts;
}

function cutsBelow(forest: Forest, node: number): number {
  const { kind, first, next } = forest.nodes;
  if (kind[node]! <= PIECE) return 0;
  let cuts = -1;
  for (let child = first[node]!; child !== NONE; child = next[child]!) cuts += 1 + cutsBelow(forest, child);
  return cuts;
}
