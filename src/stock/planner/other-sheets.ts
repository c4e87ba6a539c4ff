import { worthKept } from './kept.ts';
import { ORDERS, openNone, Recreate } from './search/recreate.ts';
import type { Task } from './task.ts';
import { type FlatLayout, flatLayout, layFlat } from './trees/flat.ts';
import { Forest } from './trees/forest.ts';

/** Costs are sums of doubles. */
const NOISE = 1e-9;

/**
 * Where kept offcuts are credited: the blanks of each sheet on another kind of sheet, where that costs less once its
 * offcuts are taken off. Kinds of which some are on hand and others must be bought are left alone.
 */
export function otherSheets(task: Task, forest: Forest): Forest {
  const { instance } = task;
  const counted = instance.stocks.flatMap(({ free }, s) => (free ? [] : [s]));
  if (task.credit === undefined || counted.length < 2 || instance.stocks.some(({ bought }) => bought)) return forest;
  const opened = forest.opened.slice();
  const alone = new Forest(instance);
  const recreate = new Recreate(instance);
  const changed = new Forest(instance);
  for (let sheet = 0; sheet < forest.sheets; sheet++) {
    if (forest.isEmpty(sheet)) continue;
    let stock = forest.stock[sheet]!;
    let layout: FlatLayout = flatLayout(forest, forest.root[sheet]!);
    if (!instance.stocks[stock]!.free) {
      const counts = new Int32Array(instance.types.length);
      forest.nodes.count(forest.root[sheet]!, counts);
      alone.askOnly(counts);
      layFlat(alone, stock, layout);
      let least = netOf(task, alone, stock);
      for (const other of counted) {
        if (other === stock || opened[other]! >= instance.stocks[other]!.limit) continue;
        for (let how = 0; how < ORDERS; how++) {
          alone.close(0);
          alone.open(other);
          recreate.run(alone, how, undefined, openNone);
          const net = netOf(task, alone, other);
          if (alone.missingCount > 0 || net >= least - NOISE) continue;
          opened[stock]!--;
          opened[other]!++;
          [stock, layout, least] = [other, flatLayout(alone, alone.root[0]!), net];
        }
      }
      alone.close(0);
    }
    layFlat(changed, stock, layout);
  }
  return changed;
}

const netOf = (task: Task, alone: Forest, stock: number): number =>
  task.instance.stocks[stock]!.cost - worthKept(alone, task);
