import { BestPattern } from './best-pattern.ts';
import { lay } from './bundle.ts';
import { type FlatLayout, flatLayout } from './flat.ts';
import { Forest } from './forest.ts';
import type { Instance } from './instance.ts';
import { type Column, Simplex } from './simplex.ts';

/**
 * Patterns for large demands by column generation (P. Gilmore and R. Gomory, Multistage cutting stock problems of two and
 * more dimensions, Operations Research 13, 1965, from memory): the linear program says what each blank is worth at present, the pattern
 * of the best worth at these prices comes in, until none is worth more than its sheet costs.
 */

/** A pattern of one kind of sheet. */
export interface SheetPattern {
  readonly stock: number;
  /** Copies of each type. */
  readonly copies: Int32Array;
  readonly layout: FlatLayout;
}

/** How often each pattern is to be cut, not in whole numbers. */
export interface Relaxed {
  readonly used: readonly { readonly pattern: SheetPattern; readonly amount: number }[];
  readonly cost: number;
  /** No plan costs less; −Infinity where that is not known. */
  readonly bound: number;
}

/** Points of a raster in each direction: few as long as they give better patterns, then more. */
const MOST_POINTS = [160, 320, 640];
/** Patterns that come in at a time, for each kind of sheet. */
const PATTERNS = 8;
/** A pattern must be worth so much more than its sheet costs. */
const GAIN = 1e-7;
/** Changes of the basis between two patterns. */
const MOST_CHANGES = 400;
/** Multiplications of the linear program that take as long as a step of the search: measured. */
const WORK_PER_STEP = 8;

/** What came of looking for patterns at prices. */
interface Priced {
  readonly prices: Float64Array;
  readonly added: boolean;
  /** True where `bound` is one, since the best patterns are known. */
  readonly complete: boolean;
  readonly bound: number;
}

/**
 * Prices of the program jump about; new patterns are looked for between these and the prices with the best bound so far
 * (P. Wentges, Weighted Dantzig–Wolfe decomposition for linear mixed-integer programming, International Transactions in
 * Operational Research 4, 1997, from memory).
 */
const TO_CENTRE = 0.5;

const between = (own: Float64Array, centre: Float64Array): Float64Array =>
  own.map((price, type) => (1 - TO_CENTRE) * price + TO_CENTRE * centre[type]!);

export class Columns {
  /** Steps of the search that all this took. */
  steps = 0;
  private readonly known = new Set<string>();
  private readonly patterns: SheetPattern[] = [];
  private readonly columns: Column[] = [];
  /** For each fineness, one for each stock. */
  private readonly makers: readonly (readonly BestPattern[])[];
  /** The stocks that are limited, with their place among the rows. */
  private readonly limitRow: Int32Array;
  private readonly limits: number[] = [];

  /** True where plans cost whole numbers only. */
  private readonly whole: boolean;

  /** Of a sheet of each stock: its price, or one, whichever counts first. */
  private readonly costs: readonly number[];

  constructor(private readonly instance: Instance) {
    this.costs = instance.stocks.map(({ free, cost }) => (free ? 0 : instance.first === 'cost' ? cost : 1));
    const makers = (most: number): BestPattern[] =>
      instance.stocks.map((stock) => new BestPattern(stock, instance.types, most));
    const all: (readonly BestPattern[])[] = [];
    for (const most of MOST_POINTS) {
      all.push(makers(most));
      if (all.at(-1)!.every(({ complete }) => complete)) break;
    }
    this.makers = all;
    this.whole = this.costs.every((cost) => Number.isInteger(cost));
    this.limitRow = Int32Array.from(instance.stocks, ({ limit }) => {
      if (limit === Infinity) return -1;
      this.limits.push(limit);
      return instance.types.length + this.limits.length - 1;
    });
  }

  /** False where the pattern is known. */
  add({ stock, copies, layout }: SheetPattern): boolean {
    const key = `${stock} ${copies.join(' ')}`;
    if (this.known.has(key)) return false;
    this.known.add(key);
    const rows = [...copies.keys()].filter((type) => copies[type]! > 0);
    const values = rows.map((type) => copies[type]!);
    const row = this.limitRow[stock]!;
    if (row >= 0) {
      rows.push(row);
      values.push(1);
    }
    this.patterns.push({ stock, copies, layout });
    this.columns.push({ cost: this.costs[stock]!, rows: Int32Array.from(rows), values: Float64Array.from(values) });
    return true;
  }

  /**
   * The relaxed problem for `need`, by patterns that are known and new ones, until `until`, for so many rounds, or until
   * it costs no more than `enough`.
   */
  relax(need: Int32Array, rounds: number, until: number, enough = Number.NEGATIVE_INFINITY): Relaxed {
    const simplex = new Simplex(need, this.limits);
    let bound = Number.NEGATIVE_INFINITY;
    let level = 0;
    let centre: Priced | undefined;
    for (let round = 0; ; round++) {
      while (simplex.columns.length < this.columns.length) simplex.add(this.columns[simplex.columns.length]!);
      const before = simplex.work;
      simplex.solve(MOST_CHANGES);
      this.steps += Math.ceil((simplex.work - before) / WORK_PER_STEP);
      if (round >= rounds || this.steps > until || simplex.solution().cost <= enough) break;
      const own = Float64Array.from(need, (_, type) => Math.max(0, simplex.prices[type]!));
      const smooth = centre === undefined ? own : between(own, centre.prices);
      const priced = this.price(need, simplex, own, smooth, level);
      if (priced.complete) bound = Math.max(bound, priced.bound);
      if (centre === undefined || priced.bound > centre.bound) centre = priced;
      if (this.whole && Math.ceil(bound - GAIN) >= simplex.solution().cost - GAIN) break;
      if (priced.added) {
        level = 0;
      } else if (smooth !== own) {
        // At the program's own prices there may be one still.
        centre = undefined;
      } else {
        centre = undefined;
        if (++level === this.makers.length || this.steps + this.stepsOf(level) > until) break;
      }
    }
    const { cost, used } = simplex.solution();
    return { cost, bound, used: used.map(({ column, amount }) => ({ pattern: this.patterns[column]!, amount })) };
  }

  /**
   * Adds patterns that are worth more than they cost, and gives a bound by weak duality: prices, made smaller until no
   * pattern of a stock without limit is worth more than its sheet, times the need, less what limited stock could gain.
   */
  private price(need: Int32Array, simplex: Simplex, own: Float64Array, prices: Float64Array, level: number): Priced {
    const { stocks } = this.instance;
    let [added, complete, scale] = [false, true, 1];
    const best = stocks.map((_, s) => {
      const maker = this.makers[level]![s]!;
      const before = maker.steps;
      const worth = maker.best(prices);
      this.steps += maker.steps - before;
      const row = this.limitRow[s]!;
      const cost = this.costs[s]! - (row < 0 ? 0 : simplex.prices[row]!);
      complete &&= maker.complete;
      if (row < 0 && worth > this.costs[s]!) scale = Math.min(scale, this.costs[s]! / worth);
      for (const { bundle, copies } of maker.patterns(PATTERNS)) {
        const value = copies.reduce((sum, count, type) => sum + count * own[type]!, 0);
        if (value > cost + GAIN && this.add({ stock: s, copies, layout: this.layoutOf(s, bundle) })) added = true;
      }
      return worth;
    });
    let bound = prices.reduce((sum, price, type) => sum + scale * price * need[type]!, 0);
    stocks.forEach(({ limit }, s) => {
      if (limit < Infinity) bound -= limit * Math.max(0, scale * best[s]! - this.costs[s]!);
    });
    return { added, complete, bound, prices };
  }

  private stepsOf(level: number): number {
    return this.makers[level]!.reduce((sum, { size }) => sum + size, 0);
  }

  private layoutOf(stock: number, bundle: Parameters<typeof lay>[2]): FlatLayout {
    const forest = new Forest(this.instance);
    lay(forest, forest.open(stock), bundle);
    return flatLayout(forest, forest.root[0]!);
  }
}
