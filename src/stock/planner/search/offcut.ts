import { type Keeping, worthKept } from '../kept.ts';
import { Forest } from '../trees/forest.ts';
import { NONE, PIECE } from '../trees/nodes.ts';
import { ORDERS, openNone } from './recreate.ts';
import type { Search } from './search.ts';

/** A state is compared with the one of so many goes ago. */
const HISTORY = 50;

/** What a plan leaves: what its offcuts are worth, and how many cuts it takes. */
interface Rest {
  readonly offcut: number;
  readonly cuts: number;
}

/**
 * Goes on with a plan without another sheet, for the largest single offcut, or the most that all are credited at, and
 * then the fewest cuts.
 */
export function largerOffcut(search: Search, keeping: Keeping, until: number): void {
  const { best, instance, random, recreate, ruin } = search;
  if (best.missingCount > 0) return;
  const now = new Forest(instance);
  const kept = new Forest(instance);
  now.copy(best);
  kept.copy(best);
  let rest: Rest = { offcut: worthKept(now, keeping), cuts: cutsOf(now) };
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
      rest = { offcut: worthKept(now, keeping), cuts: cutsOf(now) };
      keptOffcut = rest.offcut;
      offcut.fill(rest.offcut);
      value.fill(now.leftovers.value);
      continue;
    }
    const slot = go % HISTORY;
    const area = now.missingCount > 0 ? -1 : worthKept(now, keeping);
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
