import type { SheetPattern } from './columns.ts';

/** A pattern with the number of sheets that are cut by it. */
export interface Repeated {
  readonly pattern: SheetPattern;
  readonly count: number;
}

/** So many patterns, those with the fewest sheets, are tried three by three. */
const FEW = 24;

/**
 * The same number of sheets of each stock by fewer different patterns, since who cuts sets up anew for each: the sheets
 * of one, two or three patterns become as many by another one that holds what would be missing. Blanks that nobody needs
 * make room for that. `pool`: other patterns that may come in. What counts is in `need`.
 */
export function fewerPatterns(
  plan: readonly Repeated[],
  need: Int32Array,
  pool: readonly SheetPattern[],
): readonly Repeated[] {
  let now = [...plan];
  for (;;) {
    now.sort((a, b) => a.count - b.count);
    const better = joinedTwo(now, need, pool) ?? joinedThree(now, need, pool);
    if (better === undefined) return now;
    now = better;
  }
}

/** One pattern's sheets by another of the plan, or those of two by a third of the plan or of the pool. */
function joinedTwo(plan: Repeated[], need: Int32Array, pool: readonly SheetPattern[]): Repeated[] | undefined {
  const over = spare(plan, need);
  const own = plan.map(({ pattern }) => pattern);
  for (const [i, first] of plan.entries()) {
    const without = replaced(plan, [i], over, own);
    if (without !== undefined) return without;
    for (let j = 0; j < i; j++) {
      if (plan[j]!.pattern.stock !== first.pattern.stock) continue;
      const joined = replaced(plan, [j, i], over, own) ?? replaced(plan, [j, i], over, pool);
      if (joined !== undefined) return joined;
    }
  }
  return undefined;
}

/** The sheets of three patterns that have few. */
function joinedThree(plan: Repeated[], need: Int32Array, pool: readonly SheetPattern[]): Repeated[] | undefined {
  const over = spare(plan, need);
  const few = Math.min(FEW, plan.length);
  const own = plan.map(({ pattern }) => pattern);
  for (let i = 0; i < few; i++) {
    for (let j = 0; j < i; j++) {
      for (let k = 0; k < j; k++) {
        const stocks = new Set([i, j, k].map((each) => plan[each]!.pattern.stock));
        if (stocks.size > 1) continue;
        const joined = replaced(plan, [k, j, i], over, own) ?? replaced(plan, [k, j, i], over, pool);
        if (joined !== undefined) return joined;
      }
    }
  }
  return undefined;
}

/** Copies of each type beyond what is needed. */
function spare(plan: readonly Repeated[], need: Int32Array): Int32Array {
  const over = need.map((count) => -count);
  for (const { pattern, count } of plan)
    for (const [type, copies] of pattern.copies.entries()) over[type]! += count * copies;
  return over;
}

/** The plan with the sheets of `out` by one of `others` instead. */
function replaced(
  plan: readonly Repeated[],
  out: readonly number[],
  over: Int32Array,
  others: readonly SheetPattern[],
): Repeated[] | undefined {
  const gone = out.map((i) => plan[i]!);
  const count = gone.reduce((sum, each) => sum + each.count, 0);
  const missing: { readonly type: number; readonly each: number }[] = [];
  for (const [type, spared] of over.entries()) {
    let lost = 0;
    for (const each of gone) lost += each.count * each.pattern.copies[type]!;
    if (lost > spared) missing.push({ type, each: Math.ceil((lost - spared) / count) });
  }
  // Where most must be held, it fails soonest.
  missing.sort((a, b) => b.each - a.each);
  const { stock } = gone[0]!.pattern;
  const isGone = (pattern: SheetPattern): boolean => gone.some((each) => each.pattern === pattern);
  const found = others.find(
    (pattern) =>
      missing.every(({ type, each }) => pattern.copies[type]! >= each) && pattern.stock === stock && !isGone(pattern),
  );
  if (found === undefined) return undefined;
  const kept = plan.filter((_, i) => !out.includes(i));
  const known = kept.findIndex(({ pattern }) => pattern === found);
  if (known < 0) return out.length > 1 ? [...kept, { pattern: found, count }] : undefined;
  return kept.map((each, i) => (i === known ? { ...each, count: each.count + count } : each));
}
