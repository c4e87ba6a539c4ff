import type { LowerBound } from '../bounds/bounds.ts';
import { costOfWhole } from '../bounds/whole-costs.ts';
import { cheaper, type Instance, type Price, priceOf } from '../instance.ts';
import type { Pace } from '../pace.ts';
import { Random } from '../search/random.ts';
import { Search } from '../search/search.ts';
import { flatLayout, layFlat, typesOf } from '../trees/flat.ts';
import { Forest } from '../trees/forest.ts';
import { Columns, type SheetPattern } from './columns.ts';
import { fewerPatterns, type Repeated } from './fewer-patterns.ts';
import { beginning, type Stage, wholeSheets } from './rounding.ts';
import type { Wanted } from './wanted.ts';

/** A plan in two parts: sheets that are cut many times alike, and a search for what these leave. */
export interface OrderPlan {
  readonly bound: LowerBound;
  readonly search: Search;
  /** All sheets of both parts. */
  readonly joined: () => Forest;
  /** The same by fewer different patterns. */
  readonly alike: () => Forest;
}

/** Where blanks are wanted so many times each on the average, and so many in all, the same sheets come again and again. */
const LEAST_TIMES = 4;
const LEAST_BLANKS = 100;
/** More kinds, or kinds of sheets, make the linear program too large. */
const MOST_KINDS = 120;
const MOST_STOCKS = 6;
/** Shares of the budget: for the linear program, for whole sheets with the searches of their rests, for the first such search and the others. */
const RELAX_SHARE = 0.9;
const WHOLE_SHARE = 0.75;
const FIRST_SHARE = 0.1;
const REST_SHARE = 0.0125;
/** All of it, with what follows. */
export const ORDER_SHARE = RELAX_SHARE + WHOLE_SHARE + 0.2;
/** Orders of no more sheets are searched as a whole too, and whole sheets get less. */
const SMALL = 25;
const SMALL_SHARE = 0.2;
const ALL_SHARE = 0.5;
/** From so many sheets on, whole sheets are chosen by chance in many ways. */
const BY_CHANCE = 12;
/** So many sheets at the least, and one or two more, are left to the search of what whole sheets leave. */
const REST_SHEETS = 3;
/** A sum of doubles so near a whole number is that number. */
const NEARLY_WHOLE = 1e-6;

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
 * A plan for an order, no dearer than `start` or undefined. Patterns by column generation, whole sheets out of that, and
 * ruin and recreate for the rest; then with other whole sheets by chance, until the bound is met.
 */
export function planOrder(
  instance: Instance,
  start: Search,
  bound: LowerBound,
  budget: number,
  seed: number,
  pace?: Pace,
): OrderPlan | { readonly bound: LowerBound } {
  const columns = new Columns(instance, pace);
  for (const pattern of sheetsOf(start.best)) columns.add(pattern);
  const wanted: Wanted = {
    need: Int32Array.from(instance.types, (type) => type.demand),
    limits: instance.stocks.map(({ limit }) => limit),
  };
  const relaxed = columns.relax(wanted, { steps: RELAX_SHARE * budget, enough: bound.value });
  const proved = raised(instance, bound, relaxed.bound);
  const random = new Random(seed);
  const nothing = beginning(columns, wanted);
  const small = start.price.sheets <= SMALL;
  const until = columns.steps + (small ? SMALL_SHARE : WHOLE_SHARE) * budget;
  const trunk = wholeSheets(columns, nothing, { last: BY_CHANCE, steps: until });
  const plans = new Plans(instance, columns, wanted, start, proved);
  let searched = 0;
  const search = (stage: Stage, steps: number): void => {
    const rest = new Search(restOf(instance, stage), seed, { pace });
    rest.placeAll(steps);
    rest.saveFirst(Math.max(0, proved.value - takenBy(instance, stage)), steps);
    searched += rest.steps;
    plans.offer(stage, rest);
  };
  for (let dive = 0; !plans.met && (dive === 0 || searched + columns.steps < until); dive++) {
    const { most } = plans;
    const ends = { last: REST_SHEETS + (dive % 3), most, steps: until - searched };
    const stage = wholeSheets(columns, trunk, ends, dive === 0 ? undefined : random);
    if (stage.cost <= most) search(stage, (dive === 0 ? FIRST_SHARE : REST_SHARE) * budget);
    else if (trunk.cost > most) break;
  }
  if (small && !plans.met) search(nothing, ALL_SHARE * budget);
  return plans.best ?? { bound: proved };
}

/** Plans out of whole sheets and a search, the best of them. */
class Plans {
  best: OrderPlan | undefined;
  /** True where the best one meets the bound. */
  met = false;
  private least: Price;

  constructor(
    private readonly instance: Instance,
    private readonly columns: Columns,
    private readonly wanted: Wanted,
    start: Search,
    private readonly bound: LowerBound,
  ) {
    this.least = start.price;
  }

  /** The most that a better plan costs. */
  get most(): number {
    if (this.best === undefined) return Infinity;
    const { sheets, cost } = this.least;
    return this.instance.first === 'sheets' ? sheets - 1 + NEARLY_WHOLE : cost - NEARLY_WHOLE;
  }

  offer(stage: Stage, search: Search): void {
    const { instance, bound, least } = this;
    const all = (): Repeated[] => [
      ...[...stage.sheets].map(([pattern, count]) => ({ pattern, count })),
      ...counted(sheetsOf(search.best)),
    ];
    const joined = (): Forest => laid(instance, all());
    const alike = (): Forest => laid(instance, fewerPatterns(all(), this.wanted.need, this.columns.patterns));
    const found = joined();
    const price = priceOf(instance, found.opened);
    // The first one is taken where it is as good as what was there before, since its sheets are alike.
    const worse = this.best === undefined ? cheaper(instance, least, price) : !cheaper(instance, price, least);
    if (found.missingCount > 0 || worse) return;
    [this.best, this.least] = [{ bound, search, joined, alike }, price];
    this.met = price[instance.first] <= bound.value + NEARLY_WHOLE && price.bought === 0;
  }
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

/** What a stage takes of what counts first. */
function takenBy(instance: Instance, { sheets }: Stage): number {
  const opened = new Float64Array(instance.stocks.length);
  for (const [{ stock }, count] of sheets) opened[stock]! += count;
  return priceOf(instance, opened)[instance.first];
}

/** The instance of what a stage leaves, without the sheets that it takes. */
function restOf(instance: Instance, { rest: { need, limits } }: Stage): Instance {
  return {
    ...instance,
    stocks: instance.stocks.map((stock, s) => ({ ...stock, limit: limits[s]! })),
    types: instance.types.map((type, t) => ({ ...type, demand: need[t]! })),
  };
}

/** Sheets with the same blanks as one pattern, those without any left out. */
function counted(sheets: readonly SheetPattern[]): Repeated[] {
  const groups = new Map<string, Repeated>();
  for (const pattern of sheets) {
    if (pattern.copies.every((copies) => copies === 0)) continue;
    const key = `${pattern.stock} ${pattern.copies.join(' ')}`;
    const known = groups.get(key);
    groups.set(key, known === undefined ? { pattern, count: 1 } : { ...known, count: known.count + 1 });
  }
  return [...groups.values()];
}

/**
 * Blanks of a pattern that nobody needs any more stay away. Patterns with many sheets come first: so it is the others
 * that lack some, and fewer sheets differ.
 */
function laid(instance: Instance, plan: readonly Repeated[]): Forest {
  const forest = new Forest(instance);
  const sorted = [...plan].sort((a, b) => b.count - a.count);
  for (const { pattern, count } of sorted)
    for (let i = 0; i < count; i++) layFlat(forest, pattern.stock, pattern.layout);
  return forest;
}
