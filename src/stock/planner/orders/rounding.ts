import type { Random } from '../search/random.ts';
import type { Columns, Relaxed, SheetPattern } from './columns.ts';
import type { Wanted } from './wanted.ts';

/** Part of a plan in whole sheets: each pattern with the number of sheets that are cut by it, and what is left to be laid. */
export interface Stage {
  readonly sheets: ReadonlyMap<SheetPattern, number>;
  readonly rest: Wanted;
  /** What these sheets cost, and what they and the relaxed rest cost together. */
  readonly spent: number;
  readonly cost: number;
}

/** When to end: where no more than `last` sheets are left, or where they and the relaxed rest cost more than `most`. */
export interface Ends {
  readonly last: number;
  readonly most?: number;
  /** No new patterns are looked for after so many steps. */
  readonly steps: number;
}

/** An amount so near below a whole number is that number. */
const NEARLY_WHOLE = 1e-6;
/** Of so many patterns it is worked out what one more sheet by each does to the rest. */
const TRIED = 4;
/** Where whole sheets made the program dearer by more than this, new patterns are looked for, so many times. */
const LOST = 0.06;
const ROUNDS = 1;
/** By chance, amounts are seen up to twofold, and costs up to so much of a sheet, off. */
const CHANCE = 0.1;
const share = (random: Random): number => random.next() / 2 ** 32;

/** Nothing is taken yet. */
export const beginning = (columns: Columns, rest: Wanted): Stage => ({
  sheets: new Map(),
  rest,
  spent: 0,
  cost: columns.costOf(rest),
});

/**
 * More whole sheets by a relaxed plan (as in G. Wäscher and T. Gau, Heuristics for the integer one-dimensional cutting
 * stock problem, OR Spektrum 18, 1996, from memory): the whole parts of its amounts are taken, then again and again one
 * sheet by the pattern after which the rest costs least; with `random`, nearly least.
 */
export function wholeSheets(columns: Columns, from: Stage, ends: Ends, random?: Random): Stage {
  const sheets = new Map(from.sheets);
  let { rest, spent, cost } = from;
  const stop = { rounds: 0, steps: ends.steps };
  let relaxed = columns.relax(rest, stop);
  while (amountOf(relaxed) > ends.last && cost <= (ends.most ?? Infinity)) {
    let taken = wholeParts(relaxed);
    if (taken.length === 0) {
      const pattern = cheapest(columns, rest, relaxed, random);
      if (pattern === undefined) break;
      taken = [{ pattern, count: 1 }];
    }
    for (const { pattern, count } of taken) {
      sheets.set(pattern, (sheets.get(pattern) ?? 0) + count);
      rest = without(rest, pattern, count);
      spent += count * columns.costs[pattern.stock]!;
    }
    relaxed = columns.relax(rest, stop);
    if (spent + relaxed.cost - cost > LOST && columns.steps < ends.steps)
      relaxed = columns.relax(rest, { ...stop, rounds: ROUNDS });
    cost = spent + relaxed.cost;
  }
  return { sheets, rest, spent, cost };
}

const amountOf = ({ used }: Relaxed): number => used.reduce((sum, { amount }) => sum + amount, 0);

const wholeParts = ({ used }: Relaxed): readonly { readonly pattern: SheetPattern; readonly count: number }[] =>
  used.flatMap(({ pattern, amount }) => {
    const count = Math.floor(amount + NEARLY_WHOLE);
    return count > 0 ? [{ pattern, count }] : [];
  });

/** Of the patterns used most that after which the rest costs least. */
function cheapest(columns: Columns, rest: Wanted, { used }: Relaxed, random?: Random): SheetPattern | undefined {
  const keyed = used.map(({ pattern, amount }) => ({
    pattern,
    key: amount * (random === undefined ? 1 : 1 + share(random)),
  }));
  keyed.sort((a, b) => b.key - a.key);
  let best: SheetPattern | undefined;
  let least = Infinity;
  for (const { pattern } of keyed.slice(0, TRIED)) {
    const own = columns.costs[pattern.stock]!;
    const cost =
      columns.costOf(without(rest, pattern, 1)) + own * (random === undefined ? 1 : 1 + CHANCE * share(random));
    if (cost < least - NEARLY_WHOLE) [best, least] = [pattern, cost];
  }
  return best;
}

/** What is still wanted after so many sheets by a pattern. */
function without({ need, limits }: Wanted, { stock, copies }: SheetPattern, count: number): Wanted {
  return {
    need: need.map((wanted, type) => Math.max(0, wanted - count * copies[type]!)),
    limits: limits.map((limit, s) => (s === stock ? limit - count : limit)),
  };
}
