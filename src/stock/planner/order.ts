import type { LowerBound } from './bounds.ts';
import { Columns, type Relaxed, type SheetPattern } from './columns.ts';
import { flatLayout, layFlat, typesOf } from './flat.ts';
import { Forest } from './forest.ts';
import { cheaper, type Instance, priceOf } from './instance.ts';
import { Search } from './search.ts';
import { costOfWhole } from './whole-costs.ts';

/** Part of a plan: each pattern with the number of sheets that are cut by it, and what is left to be laid. */
interface Stage {
  readonly sheets: ReadonlyMap<SheetPattern, number>;
  readonly count: number;
  /** Copies of each type. */
  readonly rest: Int32Array;
}

/** A plan in two parts: sheets that are cut many times alike, and a search for what these leave. */
export interface OrderPlan {
  readonly bound: LowerBound;
  readonly search: Search;
  /** All sheets of both parts. */
  readonly joined: () => Forest;
}

/** Where blanks are wanted so many times each on the average, and so many in all, the same sheets come again and again. */
const LEAST_TIMES = 4;
const LEAST_BLANKS = 100;
/** More kinds, or kinds of sheets, make the linear program too large. */
const MOST_KINDS = 120;
const MOST_STOCKS = 6;
/** Shares of the budget: for the linear program, for whole numbers, and for the search of what is left. */
const RELAX_SHARE = 1.4;
const STAGES_SHARE = 0.25;
const REST_SHARE = 0.5;
/** So many sheets are left to the search of what whole numbers leave. */
const REST_SHEETS = 25;
/** An amount so near below a whole number is that number. */
const NEARLY_WHOLE = 1e-6;
/** New patterns are looked for so many times for each rest. */
const ROUNDS = 6;

/** True for an order that asks for the same blanks many times. `instance` has no restriction that patterns do not know. */
export function isOrder({ types, stocks }: Instance): boolean {
  const blanks = types.reduce((sum, { demand }) => sum + demand, 0);
  return (
    types.length <= MOST_KINDS &&
    stocks.length <= MOST_STOCKS &&
    blanks >= LEAST_BLANKS &&
    blanks >= LEAST_TIMES * types.length
  );
}

/**
 * A plan for an order, better than `start` or undefined. Patterns by column generation, the whole part of how often each
 * is cut, and ruin and recreate for the rest.
 */
export function planOrder(
  instance: Instance,
  start: Search,
  bound: LowerBound,
  budget: number,
  seed: number,
): OrderPlan | { readonly bound: LowerBound } {
  const columns = new Columns(instance);
  for (const pattern of sheetsOf(start.best)) columns.add(pattern);
  const demand = Int32Array.from(instance.types, (type) => type.demand);
  const relaxed = columns.relax(demand, Infinity, RELAX_SHARE * budget, bound.value);
  const proved = raised(instance, bound, relaxed.bound);
  const stages = stagesOf(columns, demand, columns.steps + STAGES_SHARE * budget);
  const whole = stages.at(-1)!.count;
  const stage = stages.find(({ count }) => whole - count <= REST_SHEETS) ?? stages.at(-1)!;
  const search = new Search(restOf(instance, stage), seed);
  search.placeAll(REST_SHARE * budget);
  search.saveFirst(Math.max(0, proved.value - takenBy(instance, stage)), REST_SHARE * budget);
  const joined = (): Forest => join(instance, stage, search.best);
  const found = joined();
  if (found.missingCount > 0 || cheaper(instance, start.price, priceOf(instance, found.opened)))
    return { bound: proved };
  return { bound: proved, search, joined };
}

/** Sums of doubles are rounded down by far more than they err. */
export function raised(instance: Instance, bound: LowerBound, relaxed: number): LowerBound {
  const low = relaxed - NEARLY_WHOLE * Math.max(1, Math.abs(relaxed));
  const value = instance.first === 'sheets' ? Math.ceil(low) : costOfWhole(instance, low);
  return value > bound.value ? { value, by: 'the best patterns' } : bound;
}

function sheetsOf(forest: Forest): SheetPattern[] {
  return Array.from({ length: forest.sheets }, (_, sheet) => {
    const layout = flatLayout(forest, forest.root[sheet]!);
    const copies = new Int32Array(forest.instance.types.length);
    for (const type of typesOf(layout)) copies[type]!++;
    return { stock: forest.stock[sheet]!, copies, layout };
  });
}

/**
 * Whole sheets out of a relaxed plan: whole parts of its amounts are taken, then the same is done with what is left; where
 * no amount reaches one, the largest is made one. The first stage takes nothing, the last one leaves nothing.
 */
function stagesOf(columns: Columns, demand: Int32Array, until: number): readonly Stage[] {
  const rest = demand.slice();
  const sheets = new Map<SheetPattern, number>();
  const stages: Stage[] = [{ sheets: new Map(), count: 0, rest: demand }];
  while (rest.some((count) => count > 0)) {
    const { used } = columns.relax(rest, ROUNDS, until);
    const taken = wholeParts(used);
    if (taken.length === 0) break;
    for (const { pattern, count } of taken) {
      sheets.set(pattern, (sheets.get(pattern) ?? 0) + count);
      for (const [type, copies] of pattern.copies.entries()) rest[type] = Math.max(0, rest[type]! - count * copies);
    }
    const count = [...sheets.values()].reduce((sum, each) => sum + each, 0);
    stages.push({ sheets: new Map(sheets), count, rest: rest.slice() });
  }
  return stages;
}

function wholeParts(used: Relaxed['used']): readonly { readonly pattern: SheetPattern; readonly count: number }[] {
  const whole = used.map(({ pattern, amount }) => ({ pattern, count: Math.floor(amount + NEARLY_WHOLE) }));
  const taken = whole.filter(({ count }) => count > 0);
  if (taken.length > 0 || used.length === 0) return taken;
  const largest = used.reduce((best, each) => (each.amount > best.amount ? each : best));
  return [{ pattern: largest.pattern, count: 1 }];
}

/** What a stage takes of what counts first. */
function takenBy(instance: Instance, { sheets }: Stage): number {
  const opened = new Float64Array(instance.stocks.length);
  for (const [{ stock }, count] of sheets) opened[stock]! += count;
  return priceOf(instance, opened)[instance.first];
}

/** The instance of what a stage leaves, without the sheets that it takes. */
function restOf(instance: Instance, { sheets, rest }: Stage): Instance {
  const taken = instance.stocks.map(() => 0);
  for (const [{ stock }, count] of sheets) taken[stock]! += count;
  return {
    ...instance,
    stocks: instance.stocks.map((stock, s) => ({ ...stock, limit: stock.limit - taken[s]! })),
    types: instance.types.map((type, t) => ({ ...type, demand: rest[t]! })),
  };
}

/** Blanks of a pattern that nobody needs any more stay away. */
function join(instance: Instance, { sheets }: Stage, rest: Forest): Forest {
  const forest = new Forest(instance);
  for (const [{ stock, layout }, count] of sheets) for (let i = 0; i < count; i++) layFlat(forest, stock, layout);
  for (let sheet = 0; sheet < rest.sheets; sheet++) {
    if (!rest.isEmpty(sheet)) layFlat(forest, rest.stock[sheet]!, flatLayout(rest, rest.root[sheet]!));
  }
  return forest;
}
