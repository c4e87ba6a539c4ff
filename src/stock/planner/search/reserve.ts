import type { BlankType } from '../instance.ts';
import { type Keeping, largest, worthKept } from '../kept.ts';
import { Forest } from '../trees/forest.ts';
import { PIECE } from '../trees/nodes.ts';
import { Search } from './search.ts';

/** So many attempts share the budget. */
const ATTEMPTS = 12;
/** A strip is not made wider by less than this share of what is thought possible. */
const FINEST = 1 / 64;

/** An offcut that runs across a whole sheet. Lengths are without kerf. */
interface Strip {
  readonly stock: number;
  readonly upright: boolean;
  /** The side that runs across the sheet. */
  readonly across: number;
  /** The other side is less than this. */
  most: number;
}

/**
 * Makes the largest offcut larger: keeps a strip across a sheet free as if it were one more blank, and looks whether all
 * others find room on the sheets that are open. Each attempt halves the range of sizes.
 */
export function reserveStrips(search: Search, keeping: Keeping, until: number): void {
  if (search.best.missingCount > 0) return;
  const share = (until - search.steps) / ATTEMPTS;
  let strips = stripsOf(search.best);
  while (strips.length > 0 && search.steps < until) {
    for (const strip of strips) {
      const from = largest(search.best, keeping) / strip.across;
      const size = Math.floor((from + strip.most) / 2);
      if (size <= from || !reserve(search, strip, size, share, keeping)) strip.most = size;
    }
    const area = largest(search.best, keeping);
    strips = strips.filter(({ across, most }) => most - area / across > Math.max(1, FINEST * most));
  }
}

/** Both ways across each kind of sheet on which something lies, where a cut may be that long. */
function stripsOf(forest: Forest): Strip[] {
  const { stocks, kerf, longest } = forest.instance;
  const used = Array.from({ length: forest.sheets }, (_, sheet) => sheet).filter((sheet) => !forest.isEmpty(sheet));
  const left = used.reduce((sum, sheet) => {
    const { width, height } = stocks[forest.stock[sheet]!]!;
    return sum + width * height - forest.nodes.filled(forest.root[sheet]!);
  }, 0);
  return [...new Set(used.map((sheet) => forest.stock[sheet]!))].flatMap((stock) => {
    const { width, height } = stocks[stock]!;
    const strip = (upright: boolean, across: number, along: number): Strip[] =>
      across > longest
        ? []
        : [{ stock, upright, across: across - kerf, most: Math.min(along - kerf, Math.floor(left / across)) + 1 }];
    return [...strip(false, width, height), ...strip(true, height, width)];
  });
}

/** Tries a strip of this size, first on the emptiest sheet of its kind; true, with the plan changed, where that is better. */
function reserve(search: Search, strip: Strip, size: number, steps: number, keeping: Keeping): boolean {
  const { instance, best } = search;
  const [long, short] = [strip.across + instance.kerf, size + instance.kerf];
  const [width, height] = strip.upright ? [short, long] : [long, short];
  const kept: BlankType = { width, height, demand: 1, turn: true, edge: false };
  const type = instance.types.length;
  const forest = new Forest({ ...instance, types: [...instance.types, kept] });
  forest.copyFull(best);
  forest.ask(type);
  const sheet = emptiestOf(forest, strip.stock);
  // An attempt before may have saved the last sheet of its kind.
  if (sheet < 0) return false;
  const root = forest.root[sheet]!;
  forest.remove(root);
  forest.place(root, type, width, height, false);

  const attempt = new Search(forest.instance, search.random.next(), { start: forest, pace: search.pace });
  const found = attempt.fitAll(steps);
  search.spend(attempt.steps);
  if (!found) return false;
  const { best: plan } = attempt;
  plan.remove(plan.nodes.find(PIECE, type));
  const saved = plan.closeEmpty();
  if (!saved && worthKept(plan, keeping) <= worthKept(best, keeping)) return false;
  best.copyFull(plan);
  return true;
}

/** The sheet of the stock with the least on it, yet not empty, or −1. */
function emptiestOf(forest: Forest, stock: number): number {
  let [best, least] = [-1, Infinity];
  for (let sheet = 0; sheet < forest.sheets; sheet++) {
    if (forest.stock[sheet] !== stock || forest.isEmpty(sheet)) continue;
    const filled = forest.nodes.filled(forest.root[sheet]!);
    if (filled < least) [best, least] = [sheet, filled];
  }
  return best;
}
