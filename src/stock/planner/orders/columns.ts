import type { Instance } from '../instance.ts';
import type { Pace } from '../pace.ts';
import { openNone, Recreate } from '../search/recreate.ts';
import { type FlatLayout, flatLayout } from '../trees/flat.ts';
import { Forest } from '../trees/forest.ts';
import { BestPattern } from './best-pattern.ts';
import { type Bundle, lay } from './bundle.ts';
import type { Column } from './column-list.ts';
import { dualBound, mostWorth } from './dual-bound.ts';
import type { PatternMaker } from './pattern-maker.ts';
import { Simplex } from './simplex.ts';
import { StripPatterns } from './strips.ts';
import type { Wanted } from './wanted.ts';

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

/** When to end: after so many rounds, so many steps, or where the program costs no more than `enough`. */
export interface Until {
  readonly rounds?: number;
  readonly steps: number;
  readonly enough?: number;
}

/** With no more points than these in each direction, the best pattern is found as quickly as a good one. */
const FEW_POINTS = 160;
const MOST_POINTS = 1000;
/** With more kinds of sheets, no more points than these. */
const FEW_STOCKS = 2;
const SOME_POINTS = 500;
/** Steps that are worth a table for the best patterns, and a bound on a coarse grid. */
const WORTH_TABLES = 2_000_000;
const WORTH_ROUGH = 16_000_000;
/** Patterns that come in at a time, for each kind of sheet: many until the program ends, few where only some rounds are asked for. */
const PATTERNS = 24;
const FEW_PATTERNS = 8;
/** A pattern must be worth so much more than its sheet costs. */
const GAIN = 1e-7;
/** Changes of the basis between two rounds. */
const MOST_CHANGES = 400;
/** Multiplications of the linear program that take as long as a step of the search: measured. */
const WORK_PER_STEP = 8;
/** The program is cheap enough for whole numbers so far below the next one, or so near its bound. */
const ROOM = 0.5;
const NEAR = 0.2;

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
const TO_CENTRE = 0.4;

const between = (own: Float64Array, centre: Float64Array): Float64Array =>
  own.map((price, type) => (1 - TO_CENTRE) * price + TO_CENTRE * centre[type]!);

export class Columns {
  private spent = 0;
  private readonly known = new Set<string>();
  readonly patterns: SheetPattern[] = [];
  private readonly columns: Column[] = [];
  /** Quick ones first; one for each stock. Made where they are needed: their tables are large. */
  private readonly levels: readonly (() => readonly PatternMaker[])[];
  private readonly made: (readonly PatternMaker[])[] = [];
  /** The stocks that are limited, with their place among the rows. */
  private readonly limitRow: Int32Array;
  private simplex: Simplex | undefined;
  private readonly forest: Forest;
  private readonly recreate: Recreate;

  /** True where plans cost whole numbers only. */
  private readonly whole: boolean;

  /** Of a sheet of each stock: its price, or one, whichever counts first. */
  readonly costs: readonly number[];

  constructor(
    private readonly instance: Instance,
    private readonly pace?: Pace,
  ) {
    const { stocks, types } = instance;
    this.costs = stocks.map(({ free, cost }) => (free ? 0 : instance.first === 'cost' ? cost : 1));
    this.whole = this.costs.every((cost) => Number.isInteger(cost));
    this.forest = new Forest(instance);
    this.recreate = new Recreate(instance);
    const exact = (most: number): BestPattern[] => stocks.map((stock) => new BestPattern(stock, types, most));
    const few = exact(FEW_POINTS);
    const most = stocks.length > FEW_STOCKS ? SOME_POINTS : MOST_POINTS;
    this.levels = few.every(({ complete }) => complete)
      ? [() => few]
      : [() => stocks.map((stock) => new StripPatterns(stock, types)), () => exact(most)];
    let row = types.length;
    this.limitRow = Int32Array.from(stocks, ({ limit }) => (limit === Infinity ? -1 : row++));
  }

  /** Steps of the search that all this took. */
  get steps(): number {
    return this.pace?.stopped === true ? Infinity : this.spent;
  }

  private spend(steps: number): void {
    this.spent += steps;
    this.pace?.spend(steps);
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

  /** The relaxed problem by patterns that are known and new ones. */
  relax(wanted: Wanted, until: Until): Relaxed {
    const { need } = wanted;
    const begun = this.steps;
    const simplex = this.programFor(wanted);
    let bound = Number.NEGATIVE_INFINITY;
    let level = 0;
    const centres: (Priced | undefined)[] = this.levels.map(() => undefined);
    for (let round = 0; ; round++) {
      this.solve(simplex);
      const { cost } = simplex.solution();
      if (round >= (until.rounds ?? Infinity) || this.steps > until.steps) break;
      if (cost <= (until.enough ?? Number.NEGATIVE_INFINITY) || this.nearEnough(cost, bound)) break;
      const own = Float64Array.from(need, (_, type) => Math.max(0, simplex.prices[type]!));
      const centre = centres[level];
      const smooth = centre === undefined ? own : between(own, centre.prices);
      const most = until.rounds === undefined ? PATTERNS : FEW_PATTERNS;
      const priced = this.price(wanted, simplex, { own, prices: smooth }, level, most);
      if (priced.complete) bound = Math.max(bound, priced.bound);
      if (centre === undefined || priced.bound > centre.bound) centres[level] = priced;
      if (priced.added) {
        level = 0;
      } else {
        // At the program's own prices there may be one still.
        centres[level] = undefined;
        if (smooth === own && !this.hasLevel(++level, until.steps)) break;
      }
    }
    if (bound === Number.NEGATIVE_INFINITY && until.rounds === undefined && until.steps - begun >= WORTH_ROUGH)
      bound = Math.max(bound, this.roughBound(wanted, simplex));
    const { cost, used } = simplex.solution();
    return { cost, bound, used: used.map(({ column, amount }) => ({ pattern: this.patterns[column]!, amount })) };
  }

  /** What the relaxed problem costs by patterns that are known. */
  costOf(wanted: Wanted): number {
    const simplex = this.programFor(wanted);
    this.solve(simplex);
    return simplex.solution().cost;
  }

  private programFor({ need, limits }: Wanted): Simplex {
    const rows = limits.filter((_, stock) => this.limitRow[stock]! >= 0);
    if (this.simplex !== undefined) {
      const before = this.simplex.work;
      const done = this.simplex.change(need, rows, MOST_CHANGES);
      this.spend(Math.ceil((this.simplex.work - before) / WORK_PER_STEP));
      if (done) return this.simplex;
    }
    this.simplex = new Simplex(need, rows);
    return this.simplex;
  }

  private solve(simplex: Simplex): void {
    while (simplex.count < this.columns.length) simplex.add(this.columns[simplex.count]!);
    const before = simplex.work;
    simplex.solve(MOST_CHANGES);
    this.spend(Math.ceil((simplex.work - before) / WORK_PER_STEP));
  }

  private nearEnough(cost: number, bound: number): boolean {
    if (!this.whole || Math.ceil(bound - GAIN) < cost - GAIN) return false;
    return Math.ceil(bound - GAIN) - cost >= ROOM || cost - bound < NEAR;
  }

  /** Adds patterns that are worth more than they cost. */
  private price(
    wanted: Wanted,
    simplex: Simplex,
    { own, prices }: { readonly own: Float64Array; readonly prices: Float64Array },
    level: number,
    most: number,
  ): Priced {
    let [added, complete] = [false, true];
    const best = this.instance.stocks.map((_, s) => {
      const maker = this.makersOf(level)[s]!;
      const before = maker.steps;
      const worth = maker.best(prices);
      const row = this.limitRow[s]!;
      const cost = this.costs[s]! - (row < 0 ? 0 : simplex.prices[row]!);
      complete &&= maker.complete;
      for (const { bundle } of maker.patterns(most)) {
        const pattern = this.filled(s, bundle);
        const value = pattern.copies.reduce((sum, count, type) => sum + count * own[type]!, 0);
        if (value > cost + GAIN && this.add(pattern)) added = true;
      }
      this.spend(maker.steps - before);
      return worth;
    });
    const bound = dualBound(wanted, this.costs, prices, best);
    return { added, complete, bound, prices };
  }

  private roughBound(wanted: Wanted, simplex: Simplex): number {
    const prices = Float64Array.from(wanted.need, (_, type) => Math.max(0, simplex.prices[type]!));
    const { best, steps } = mostWorth(this.instance, prices);
    this.spend(steps);
    return dualBound(wanted, this.costs, prices, best);
  }

  private makersOf(level: number): readonly PatternMaker[] {
    this.made[level] ??= this.levels[level]!();
    return this.made[level];
  }

  /** True where there is such a level, and steps for one call of it. */
  private hasLevel(level: number, until: number): boolean {
    if (level === this.levels.length || until - this.steps < WORTH_TABLES) return false;
    return this.steps + this.makersOf(level).reduce((sum, { size }) => sum + size, 0) <= until;
  }

  /** The bundle on its sheet, and what else finds room there. */
  private filled(stock: number, bundle: Bundle): SheetPattern {
    const { forest } = this;
    const root = forest.open(stock);
    lay(forest, root, bundle);
    const before = this.recreate.steps;
    this.recreate.run(forest, 0, undefined, openNone);
    this.spend(this.recreate.steps - before);
    const copies = new Int32Array(this.instance.types.length);
    forest.nodes.count(root, copies);
    const layout = flatLayout(forest, root);
    forest.close(0);
    return { stock, copies, layout };
  }
}
