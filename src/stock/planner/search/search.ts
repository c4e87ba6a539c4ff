import { ANY_PRICE, cheaper, type Instance, type Price, priceOf } from '../instance.ts';
import type { Pace } from '../pace.ts';
import { Forest } from '../trees/forest.ts';
import { cover } from './cover.ts';
import { Patterns } from './patterns.ts';
import { Random } from './random.ts';
import { type Opener, ORDERS, openBelow, openInOrder, openNone, Recreate } from './recreate.ts';
import { Ruin } from './ruin.ts';

/**
 * Goal-driven ruin and recreate on cut trees with late acceptance (T. Gardeyn and T. Wauters, A goal-driven ruin and
 * recreate heuristic for the 2D variable-sized bin packing problem with guillotine constraints, EJOR 301, 2022): take a
 * sheet away, then turn parts of the trees into leftover and put the missing blanks back until none is missing.
 */

/** A state is compared with the one of so many goes ago. */
const HISTORY = 20;
/**
 * What a go costs besides putting blanks back, in steps; one for two nodes that are copied comes on top. Measured, so that
 * a step takes about as long for few blanks as for many.
 */
const STEPS_PER_GO = 110;
/** Steps between two attempts to put the sheets of many states together. */
const STEPS_PER_COVER = 6_000_000;
/** With fewer sheets nothing is gained by that. */
const FEWEST_TO_COVER = 5;
/** A sheet is remembered unless it is emptier than the average must be, by this share of its area. */
const SLACK = 0.1;
/** Costs are sums of doubles. */
const NOISE = 1e-9;
/** The most offcuts and fallouts that are looked at, the largest ones. */
const MOST_FREE = 500;

interface SearchOptions {
  readonly start?: Forest;
  /** Orders of the blanks for the first plans. */
  readonly ways?: number;
  readonly pace?: Pace | undefined;
}

export class Search {
  readonly random: Random;
  readonly recreate: Recreate;
  readonly ruin = new Ruin();
  /** The best plan so far; some blanks are missing where the stock was too small. */
  best: Forest;
  readonly pace: Pace | undefined;
  private spent = 0;
  private told = 0;

  /** Begins with `start`, or with the best of some plans made in one go, with the blanks in `ways` orders. */
  constructor(
    readonly instance: Instance,
    seed: number,
    { start, ways = ORDERS, pace }: SearchOptions = {},
  ) {
    this.pace = pace;
    this.random = new Random(seed);
    this.recreate = new Recreate(instance);
    this.best = start ?? this.start(ways);
  }

  get steps(): number {
    return this.pace?.stopped === true ? Infinity : this.spent + this.recreate.steps;
  }

  /** What another search took, which has told of it. */
  spend(steps: number): void {
    this.spent += steps;
    this.told += steps;
  }

  private tell(): void {
    const all = this.spent + this.recreate.steps;
    this.pace?.spend(all - this.told);
    this.told = all;
  }

  get price(): Price {
    return priceOf(this.instance, this.best.opened);
  }

  /** What ruin and recreate cost beside looking at leftovers: copying the state. */
  spendGo(forest: Forest): void {
    this.spent += STEPS_PER_GO + (forest.nodes.used >> 1);
    this.tell();
  }

  /** All that is free is opened at once; sheets of each stock in turn are the first choice, blanks in each order. */
  private start(ways: number): Forest {
    const { stocks } = this.instance;
    const counted = stocks.flatMap((stock, s) => (stock.free ? [] : [s]));
    const bySize = [...counted].sort((a, b) => areaOf(stocks[b]!) - areaOf(stocks[a]!));
    const small = [...bySize].reverse();
    const choices = counted.length === 0 ? [[]] : counted.map((s) => [s, ...bySize.filter((other) => other !== s)]);
    if (counted.length > 1) choices.push(small);
    let best: Forest | undefined;
    for (const choice of choices) {
      for (let how = 0; how < ways; how++) {
        const forest = this.freeOpened();
        this.recreate.run(forest, how, undefined, openInOrder(choice));
        if (best === undefined || this.better(forest, best)) best = forest;
      }
    }
    return best!;
  }

  private freeOpened(): Forest {
    const forest = new Forest(this.instance);
    const { stocks } = this.instance;
    const free = stocks.flatMap((stock, s) => (stock.free ? [s] : []));
    free.sort((a, b) => areaOf(stocks[b]!) - areaOf(stocks[a]!));
    for (const s of free) {
      for (let i = 0; i < stocks[s]!.limit && forest.sheets < MOST_FREE; i++) forest.open(s);
    }
    return forest;
  }

  private better(a: Forest, b: Forest): boolean {
    if (a.missingCount === 0 || b.missingCount === 0) {
      if (a.missingCount > 0) return false;
      if (b.missingCount > 0) return true;
    } else if (a.missingArea !== b.missingArea) {
      return a.missingArea < b.missingArea;
    }
    const [first, second] = [priceOf(this.instance, a.opened), priceOf(this.instance, b.opened)];
    if (cheaper(this.instance, first, second)) return true;
    return !cheaper(this.instance, second, first) && a.leftovers.value > b.leftovers.value;
  }

  /** Looks for a place for all blanks where the stock was too small for the first attempts. */
  placeAll(until: number): void {
    if (this.best.missingCount === 0) return;
    this.reach(this.copyOfBest(), openBelow(ANY_PRICE, this.random), this.exchangeable(), until);
  }

  /** Looks for a place for all blanks on the sheets that are open; true where it finds one. */
  fitAll(until: number): boolean {
    return this.best.missingCount === 0 || this.reach(this.copyOfBest(), openNone, false, until);
  }

  /** Saves one sheet after the other, or cost, whichever counts first, down to `bound`. */
  saveFirst(bound: number, until: number): void {
    const { first } = this.instance;
    while (this.best.missingCount === 0 && this.price.sheets > 0 && !this.reached(bound) && this.steps < until) {
      const below = { ...this.price, [first === 'sheets' ? 'cost' : 'sheets']: -Infinity };
      const state = this.copyOfBest();
      state.close(first === 'sheets' ? emptiest(state) : dearest(state));
      const exchange = this.exchangeable();
      const opener = exchange ? openBelow(below, this.random) : openNone;
      if (!this.reach(state, opener, exchange, until)) return;
    }
  }

  /** True where no plan has less of what counts first, nor less to buy. */
  reached(bound: number): boolean {
    const { [this.instance.first]: value, bought } = this.price;
    return value <= bound + NOISE * Math.max(1, bound) && bought === 0;
  }

  /** Changes sheets for others that are cheaper, or fewer, with no more of what counts first. */
  saveThen(until: number): void {
    if (!this.exchangeable() || this.best.missingCount > 0) return;
    while (this.price.sheets > 0 && this.steps < until) {
      const below = this.price;
      const state = this.copyOfBest();
      state.close(dearest(state));
      if (!this.reach(state, openBelow(below, this.random), true, until)) return;
    }
  }

  /** True where there is a choice of sheets to buy. */
  exchangeable(): boolean {
    return this.instance.stocks.filter((stock) => !stock.free).length > 1;
  }

  private copyOfBest(): Forest {
    const state = new Forest(this.instance);
    state.copy(this.best);
    return state;
  }

  /** Ruins and recreates `now` until no blank is missing: then that is the best plan. */
  private reach(now: Forest, opener: Opener, exchange: boolean, until: number): boolean {
    this.recreate.run(now, 0, this.random, opener);
    const kept = new Forest(this.instance);
    kept.copy(now);
    const missing = new Float64Array(HISTORY).fill(now.missingArea);
    const value = new Float64Array(HISTORY).fill(now.leftovers.value);
    const patterns = this.patternsFor(now);
    let nextCover = this.steps + STEPS_PER_COVER;
    for (let go = 0; now.missingCount > 0 && this.steps < until; go++) {
      this.ruin.run(now, this.random, exchange);
      this.recreate.run(now, this.random.below(ORDERS), this.random, opener);
      this.spendGo(now);
      if (patterns !== undefined) {
        patterns.collect(now);
        if (this.steps > nextCover && now.missingCount > 0) {
          if (this.putTogether(now, kept, patterns, opener)) {
            kept.copy(now);
            missing.fill(now.missingArea);
            value.fill(now.leftovers.value);
          }
          nextCover = this.steps + STEPS_PER_COVER;
        }
      }
      const slot = go % HISTORY;
      if (
        atLeastAsGood(now, missing[slot]!, value[slot]!) ||
        atLeastAsGood(now, kept.missingArea, kept.leftovers.value)
      ) {
        kept.copy(now);
        // Late acceptance may leave the fullest state again; where not all finds room, that is the one to tell of.
        if (kept.missingArea < this.best.missingArea) this.best.copy(kept);
      } else {
        now.copy(kept);
      }
      if (!worse(kept, missing[slot]!, value[slot]!)) {
        missing[slot] = kept.missingArea;
        value[slot] = kept.leftovers.value;
      }
    }
    if (now.missingCount > 0) return false;
    now.closeEmpty();
    this.best = now;
    return true;
  }

  /** Remembers sheets of the stock that is used most, where it is worth it. */
  private patternsFor(forest: Forest): Patterns | undefined {
    const { stocks, types } = this.instance;
    let most = -1;
    for (let s = 0; s < stocks.length; s++) {
      if (!stocks[s]!.free && (most < 0 || forest.opened[s]! > forest.opened[most]!)) most = s;
    }
    // Layouts of patterns leave the factory edges out of account.
    if (most < 0 || forest.opened[most]! < FEWEST_TO_COVER || types.some((type) => type.edge)) return undefined;
    const count = forest.opened[most]!;
    let filled = forest.missingArea;
    for (let sheet = 0; sheet < forest.sheets; sheet++) {
      if (forest.stock[sheet] === most) filled += forest.nodes.filled(forest.root[sheet]!);
    }
    const area = areaOf(stocks[most]!);
    return new Patterns(types.length, most, Math.min(1, filled / (count * area)) * area - SLACK * area);
  }

  /** Makes `now` of sheets that many states had; false, with nothing changed, where that is no better than `kept`. */
  private putTogether(now: Forest, kept: Forest, patterns: Patterns, opener: Opener): boolean {
    now.copy(kept);
    const count = now.opened[patterns.stock]!;
    for (let sheet = now.sheets - 1; sheet >= 0; sheet--) if (now.stock[sheet] === patterns.stock) now.close(sheet);
    const picked = cover(this.instance, patterns, now.missing, count, this.random);
    if (picked !== undefined) {
      this.spent += picked.steps;
      for (const pattern of picked.patterns) patterns.lay(now, pattern);
      this.recreate.run(now, 0, this.random, opener);
      if (now.missingArea <= kept.missingArea) return true;
    }
    now.copy(kept);
    return false;
  }
}

const areaOf = (size: { readonly width: number; readonly height: number }): number => size.width * size.height;

function atLeastAsGood(forest: Forest, missing: number, value: number): boolean {
  return forest.missingArea < missing || (forest.missingArea === missing && forest.leftovers.value >= value);
}

function worse(forest: Forest, missing: number, value: number): boolean {
  return !atLeastAsGood(forest, missing, value);
}

/** The sheet, not a free one, with the least on it; there must be one. */
function emptiest(forest: Forest): number {
  let [best, least] = [-1, Infinity];
  for (let sheet = 0; sheet < forest.sheets; sheet++) {
    if (forest.instance.stocks[forest.stock[sheet]!]!.free) continue;
    const filled = forest.nodes.filled(forest.root[sheet]!);
    if (filled < least) [best, least] = [sheet, filled];
  }
  return best;
}

/** The sheet, not a free one, with the most money in its empty part; there must be one. */
function dearest(forest: Forest): number {
  let [best, most] = [-1, -Infinity];
  for (let sheet = 0; sheet < forest.sheets; sheet++) {
    const stock = forest.instance.stocks[forest.stock[sheet]!]!;
    if (stock.free) continue;
    const waste = stock.cost * (1 - forest.nodes.filled(forest.root[sheet]!) / areaOf(stock));
    if (waste > most) [best, most] = [sheet, waste];
  }
  return best;
}
