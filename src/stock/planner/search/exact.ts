import { cheaper, fits, type Instance, NOTHING, type Price, withOne } from '../instance.ts';
import { type Bundle, lay } from '../orders/bundle.ts';
import type { Forest } from '../trees/forest.ts';

/** Larger cases are left to the search. */
const MOST_STATES = 6000;
/** Boxes and sheets looked at before it gives up. */
const MOST_WORK = 3_000_000;

export interface ExactPlan extends Price {
  readonly groups: readonly { readonly stock: number; readonly bundle: Bundle }[];
}

/**
 * The true optimum, the cheapest plan, by dynamic programming over the sub-multisets of the blanks: the
 * first cut through any layout divides its blanks in two such sets. Longest cut and factory edges are not looked at, so
 * with these the result is only a bound. Undefined where the case is too large, `'none'` where no plan exists.
 */
export function exactPlan(instance: Instance): ExactPlan | 'none' | undefined {
  let states = 1;
  for (const type of instance.types) {
    states *= type.demand + 1;
    if (states > MOST_STATES) return undefined;
  }
  return new Exact(instance, states).solve();
}

class Exact {
  private work = 0;
  /** A state counts the blanks of each type, as one number of mixed radix; this is what one blank of a type adds. */
  private readonly unit: number[];
  private readonly bundles: Bundle[][];
  private readonly limited: number[];
  private readonly memo = new Map<string, ExactPlan | 'none'>();

  constructor(
    private readonly instance: Instance,
    private readonly states: number,
  ) {
    let unit = 1;
    this.unit = instance.types.map((type) => {
      const own = unit;
      unit *= type.demand + 1;
      return own;
    });
    this.bundles = Array.from({ length: states }, () => []);
    this.limited = instance.stocks.flatMap((stock, s) => (Number.isFinite(stock.limit) ? [s] : []));
  }

  solve(): ExactPlan | 'none' | undefined {
    for (let state = 1; state < this.states && !this.tired(); state++) this.fill(state);
    const limits = this.instance.stocks.map((stock) => stock.limit);
    const plan = this.cover(this.states - 1, limits);
    return this.tired() ? undefined : plan;
  }

  private tired(): boolean {
    return this.work > MOST_WORK;
  }

  private digit(state: number, type: number): number {
    return Math.floor(state / this.unit[type]!) % (this.instance.types[type]!.demand + 1);
  }

  /** Every sub-multiset of `state`, itself and the empty one included. */
  private parts(state: number): number[] {
    let out = [0];
    this.instance.types.forEach((_, type) => {
      const digit = this.digit(state, type);
      if (digit === 0) return;
      const sets = out;
      out = [];
      for (let d = 0; d <= digit; d++) for (const set of sets) out.push(set + d * this.unit[type]!);
    });
    return out;
  }

  private fill(state: number): void {
    const type = this.unit.indexOf(state);
    if (type >= 0) {
      const { width, height, turn } = this.instance.types[type]!;
      if (this.isNew(state, width, height)) this.add(state, { type, width, height });
      if (turn && this.isNew(state, height, width)) this.add(state, { type, width: height, height: width });
      return;
    }
    for (const part of this.parts(state)) {
      const rest = state - part;
      if (part < rest || rest === 0) continue;
      for (const a of this.bundles[part]!) {
        for (const b of this.bundles[rest]!) {
          this.work++;
          const [width, height] = [a.width + b.width, a.height + b.height];
          const [wide, high] = [Math.max(a.width, b.width), Math.max(a.height, b.height)];
          if (this.isNew(state, width, high)) this.add(state, { width, height: high, along: 'x', parts: [a, b] });
          if (this.isNew(state, wide, height)) this.add(state, { width: wide, height, along: 'y', parts: [a, b] });
        }
      }
      if (this.tired()) return;
    }
  }

  /** True for a box that fits some sheet, unless another of the same blanks is as small both ways. */
  private isNew(state: number, width: number, height: number): boolean {
    for (const other of this.bundles[state]!) if (other.width <= width && other.height <= height) return false;
    for (const stock of this.instance.stocks) if (width <= stock.width && height <= stock.height) return true;
    return false;
  }

  private add(state: number, bundle: Bundle): void {
    const kept = this.bundles[state]!.filter((other) => !fits(bundle.width, bundle.height, other));
    this.bundles[state] = [...kept, bundle];
  }

  /** The best plan for the blanks of `state` from what is left of the stock. */
  private cover(state: number, left: readonly number[]): ExactPlan | 'none' {
    if (state === 0) return { ...NOTHING, groups: [] };
    const key = `${state} ${this.limited.map((s) => left[s]).join(' ')}`;
    const known = this.memo.get(key);
    if (known !== undefined) return known;
    // One of the blanks lies somewhere: only sets with the first one are tried.
    const first = this.instance.types.findIndex((_, type) => this.digit(state, type) > 0);
    let best: ExactPlan | 'none' = 'none';
    for (const part of this.parts(state)) {
      if (this.digit(part, first) === 0 || this.bundles[part]!.length === 0) continue;
      for (let s = 0; s < left.length; s++) {
        if (this.work++ > MOST_WORK) return 'none';
        const plan = this.onto(part, s, state, left);
        if (plan !== undefined && (best === 'none' || cheaper(this.instance, plan, best))) best = plan;
      }
    }
    this.memo.set(key, best);
    return best;
  }

  /** The set `part` on a sheet of stock `s`, and the best for the rest of `state`. */
  private onto(part: number, s: number, state: number, left: readonly number[]): ExactPlan | undefined {
    const stock = this.instance.stocks[s]!;
    if (left[s] === 0) return undefined;
    const bundle = this.bundles[part]!.find(({ width, height }) => fits(width, height, stock));
    if (bundle === undefined) return undefined;
    const rest = this.cover(
      state - part,
      left.map((count, other) => (other === s ? count - 1 : count)),
    );
    if (rest === 'none') return undefined;
    return {
      ...withOne(this.instance, rest, s),
      groups: [...rest.groups, { stock: s, bundle }],
    };
  }
}

/** Lays an exact plan out in a forest without sheets. */
export function layOut(plan: ExactPlan, forest: Forest): void {
  for (const { stock, bundle } of plan.groups) lay(forest, forest.open(stock), bundle);
}
