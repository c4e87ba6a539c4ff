import type { Columns, Relaxed, SheetPattern, Wanted } from './columns.ts';
import type { Random } from './random.ts';

/** Part of a plan in whole sheets: each pattern with the number of sheets that are cut by it, and what is left to be laid. */
export interface Stage {
  readonly sheets: ReadonlyMap<SheetPattern, number>;
  readonly rest: Wanted;
}

/** An amount so near below a whole number is that number. */
const NEARLY_WHOLE = 1e-6;
/** Of so many patterns it is worked out what one more sheet by each does to the rest. */
const TRIED = 4;
/** Where whole sheets made the program dearer by more than this, new patterns are looked for, so many times. */
const LOST = 0.02;
const ROUNDS = 2;
/** Amounts are seen up to twofold off by chance. */
const CHANCE = 2 ** 32;

/**
 * Whole sheets out of a relaxed plan (as in G. Wäscher and T. Gau, Heuristics for the integer one-dimensional cutting
 * stock problem, OR Spektrum 18, 1996, from memory): the whole parts of its amounts are taken, then again and again one
 * sheet by the pattern after which the rest costs least; until no more than `last` sheets are left, which may be none.
 */
export function wholeSheets(
  columns: Columns,
  wanted: Wanted,
  last: number,
  until: number,
  random: Random | undefined,
): Stage {
  const sheets = new Map<SheetPattern, number>();
  let rest = wanted;
  let relaxed = columns.relax(rest, { rounds: 0, steps: until });
  for (;;) {
    if (amountOf(relaxed) <= last || rest.need.every((count) => count <= 0)) break;
    let taken = wholeParts(relaxed);
    if (taken.length === 0) {
      const pattern = cheapest(columns, rest, relaxed, random);
      if (pattern === undefined) break;
      taken = [{ pattern, count: 1 }];
    }
    const before = relaxed.cost;
    let spent = 0;
    for (const { pattern, count } of taken) {
      sheets.set(pattern, (sheets.get(pattern) ?? 0) + count);
      rest = without(rest, pattern, count);
      spent += count * columns.costs[pattern.stock]!;
    }
    relaxed = columns.relax(rest, { rounds: 0, steps: until });
    if (spent + relaxed.cost - before > LOST && columns.steps < until)
      relaxed = columns.relax(rest, { rounds: ROUNDS, steps: until });
  }
  return { sheets, rest };
}

const amountOf = ({ used }: Relaxed): number => used.reduce((sum, { amount }) => sum + amount, 0);

const wholeParts = ({ used }: Relaxed): readonly { readonly pattern: SheetPattern; readonly count: number }[] =>
  used.flatMap(({ pattern, amount }) => {
    const count = Math.floor(amount + NEARLY_WHOLE);
    return count > 0 ? [{ pattern, count }] : [];
  });

/** Of the patterns used most that after which the rest costs least. */
function cheapest(
  columns: Columns,
  rest: Wanted,
  { used }: Relaxed,
  random: Random | undefined,
): SheetPattern | undefined {
  const keyed = used.map(({ pattern, amount }) => ({
    pattern,
    key: amount * (random === undefined ? 1 : 1 + random.next() / CHANCE),
  }));
  keyed.sort((a, b) => b.key - a.key);
  let best: SheetPattern | undefined;
  let least = Infinity;
  for (const { pattern } of keyed.slice(0, TRIED)) {
    const cost = columns.costOf(without(rest, pattern, 1)) + columns.costs[pattern.stock]!;
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
