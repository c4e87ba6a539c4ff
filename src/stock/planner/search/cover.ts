import type { Instance } from '../instance.ts';
import type { Patterns } from './patterns.ts';
import type { Random } from './random.ts';

/**
 * Puts sheets of many states together: picks so many patterns that little area stays uncovered. Prices of the types by
 * subgradient steps on the covering problem (as in A. Caprara, M. Fischetti and P. Toth, A heuristic method for the set
 * covering problem, Operations Research 47, 1999, from memory), greedy picks by these prices, then exchanges one by one.
 */

const ROUNDS = 300;
/** Prices settle before the first pick. */
const FIRST_PICK = 60;
const PICK_EVERY = 2;
/** The picks look at the patterns that are cheapest at the prices of the round, chosen anew now and then. */
const CORE = 1000;
const CORE_EVERY = 20;
/** Rounds without a better bound before the steps are halved. */
const PATIENCE = 15;
const FIRST_STEP = 0.1;
/** Picks differ by so much chance in a pattern's gain. */
const NOISE = 0.02;
const NOTHING = 1e-9;

export interface Picked {
  readonly patterns: Int32Array;
  readonly steps: number;
}

/** Picks `count` patterns for the copies in `need`; undefined where there are none to pick from. */
export function cover(
  instance: Instance,
  patterns: Patterns,
  need: Int32Array,
  count: number,
  random: Random,
): Picked | undefined {
  if (patterns.count === 0 || count === 0) return undefined;
  return new Cover(instance, patterns, need, count, random).run();
}

class Cover {
  private steps = 0;
  /** Area of a type, a sheet's being 1. */
  private readonly area: Float64Array;
  private readonly price: Float64Array;
  /** What a pattern costs above the prices of its pieces: 1 less these. */
  private readonly reduced: Float64Array;
  private readonly core: Int32Array;
  private coreCount = 0;
  /** Places in the core of the patterns with type t: from at[t] up to at[t + 1]. */
  private readonly at: Int32Array;
  private inverse = new Int32Array(0);
  private readonly gain: Float64Array;
  private readonly left: Int32Array;
  private readonly picked: Int32Array;

  constructor(
    instance: Instance,
    private readonly patterns: Patterns,
    private readonly need: Int32Array,
    private readonly count: number,
    private readonly random: Random,
  ) {
    const { width, height } = instance.stocks[patterns.stock]!;
    this.area = Float64Array.from(instance.types, (type) => (type.width * type.height) / (width * height));
    this.price = this.area.slice();
    this.reduced = new Float64Array(patterns.count);
    this.core = new Int32Array(patterns.count);
    this.gain = new Float64Array(patterns.count);
    this.at = new Int32Array(need.length + 1);
    this.left = new Int32Array(need.length);
    this.picked = new Int32Array(count);
  }

  run(): Picked {
    const gradient = new Float64Array(this.need.length);
    let [bound, stalled, step] = [-Infinity, 0, FIRST_STEP];
    let [best, uncovered] = [this.picked.slice(), Infinity];
    for (let round = 0; round < ROUNDS && uncovered > NOTHING; round++) {
      const relaxed = this.relax(gradient);
      if (relaxed > bound + 1e-6) [bound, stalled] = [relaxed, 0];
      else if (++stalled > PATIENCE) [step, stalled] = [step / 2, 0];
      if (round >= FIRST_PICK && (round - FIRST_PICK) % PICK_EVERY === 0) {
        if ((round - FIRST_PICK) % CORE_EVERY === 0) this.chooseCore();
        let open = this.pick();
        if (open < uncovered * 1.2 + 0.05) open = this.exchange(open);
        if (open < uncovered) [best, uncovered] = [this.picked.slice(), open];
      }
      if (!this.move(gradient, step * Math.max(0.5, this.count * 1.02 - relaxed))) break;
    }
    return { patterns: best, steps: Math.round(this.steps) };
  }

  /** The relaxed problem at the prices: its value, and in `gradient` what stays uncovered. */
  private relax(gradient: Float64Array): number {
    const { need, price, reduced } = this;
    const { start, type, copies, count } = this.patterns;
    let value = 0;
    for (let t = 0; t < need.length; t++) {
      gradient[t] = need[t]!;
      value += price[t]! * need[t]!;
    }
    for (let p = 0; p < count; p++) {
      let cost = 1;
      for (let e = start[p]!; e < start[p + 1]!; e++) cost -= price[type[e]!]! * copies[e]!;
      reduced[p] = cost;
      if (cost >= 0) continue;
      value += cost;
      for (let e = start[p]!; e < start[p + 1]!; e++) gradient[type[e]!]! -= copies[e]!;
    }
    this.steps += this.patterns.entries / 4;
    return value;
  }

  private move(gradient: Float64Array, step: number): boolean {
    let norm = 0;
    for (const part of gradient) norm += part * part;
    if (norm === 0) return false;
    for (let t = 0; t < gradient.length; t++) {
      this.price[t] = Math.max(0, this.price[t]! + (step / norm) * gradient[t]!);
    }
    return true;
  }

  private chooseCore(): void {
    const { start, type, count } = this.patterns;
    const sorted = this.reduced.slice().sort();
    const limit = sorted[Math.min(CORE, count) - 1]!;
    this.coreCount = 0;
    for (let p = 0; p < count; p++) if (this.reduced[p]! <= limit) this.core[this.coreCount++] = p;
    const held = new Int32Array(this.need.length);
    let total = 0;
    for (let k = 0; k < this.coreCount; k++) {
      const p = this.core[k]!;
      total += start[p + 1]! - start[p]!;
      for (let e = start[p]!; e < start[p + 1]!; e++) held[type[e]!]!++;
    }
    for (let t = 0; t < held.length; t++) this.at[t + 1] = this.at[t]! + held[t]!;
    held.set(this.at.subarray(0, held.length));
    this.inverse = new Int32Array(total);
    for (let k = 0; k < this.coreCount; k++) {
      const p = this.core[k]!;
      for (let e = start[p]!; e < start[p + 1]!; e++) this.inverse[held[type[e]!]!++] = k;
    }
    this.steps += this.patterns.entries / 2;
  }

  /** Greedy by the prices; returns the area left uncovered. */
  private pick(): number {
    const { core, gain, left, picked, random } = this;
    const { start, type, copies } = this.patterns;
    left.set(this.need);
    for (let k = 0; k < this.coreCount; k++) {
      let value = (random.next() / 4_294_967_296) * NOISE;
      for (let e = start[core[k]!]!; e < start[core[k]! + 1]!; e++) {
        value += this.price[type[e]!]! * Math.min(copies[e]!, left[type[e]!]!);
      }
      gain[k] = value;
    }
    for (let c = 0; c < this.count; c++) {
      let best = 0;
      for (let k = 1; k < this.coreCount; k++) if (gain[k]! > gain[best]!) best = k;
      const p = core[best]!;
      picked[c] = p;
      for (let e = start[p]!; e < start[p + 1]!; e++) this.take(type[e]!, copies[e]!);
    }
    this.steps += (this.count * this.coreCount) / 2;
    return this.open();
  }

  /** Covers copies of a type: patterns that hold more of it than are left gain less. */
  private take(t: number, taken: number): void {
    const { start, type, copies } = this.patterns;
    const before = this.left[t]!;
    const after = Math.max(0, before - taken);
    if (after === before) return;
    this.left[t] = after;
    for (let i = this.at[t]!; i < this.at[t + 1]!; i++) {
      const k = this.inverse[i]!;
      let e = start[this.core[k]!]!;
      while (type[e] !== t) e++;
      const had = Math.min(copies[e]!, before);
      const has = Math.min(copies[e]!, after);
      if (has < had) this.gain[k]! -= this.price[t]! * (had - has);
    }
  }

  private open(): number {
    let sum = 0;
    for (let t = 0; t < this.left.length; t++) sum += this.left[t]! * this.area[t]!;
    return sum;
  }

  /** Changes one pattern after the other for one that covers more area. */
  private exchange(uncovered: number): number {
    const { core, picked } = this;
    let open = uncovered;
    for (let pass = 0; pass < 3; pass++) {
      let changed = false;
      for (let c = 0; c < this.count && open > NOTHING; c++) {
        this.leaveOut(c);
        const own = this.covered(picked[c]!);
        let [best, bestGain] = [-1, own + NOTHING];
        for (let k = 0; k < this.coreCount; k++) {
          const gain = this.covered(core[k]!);
          if (gain > bestGain) [best, bestGain] = [core[k]!, gain];
        }
        this.steps += 2 * this.coreCount;
        if (best < 0) continue;
        picked[c] = best;
        open -= bestGain - own;
        changed = true;
      }
      if (!changed) break;
    }
    return open;
  }

  private leaveOut(c: number): void {
    const { left, picked } = this;
    const { start, type, copies } = this.patterns;
    left.set(this.need);
    for (let d = 0; d < picked.length; d++) {
      if (d === c) continue;
      const p = picked[d]!;
      for (let e = start[p]!; e < start[p + 1]!; e++) left[type[e]!]! -= copies[e]!;
    }
    for (let t = 0; t < left.length; t++) if (left[t]! < 0) left[t] = 0;
  }

  private covered(p: number): number {
    const { start, type, copies } = this.patterns;
    let sum = 0;
    for (let e = start[p]!; e < start[p + 1]!; e++) {
      const left = this.left[type[e]!]!;
      sum += this.area[type[e]!]! * Math.min(copies[e]!, left);
    }
    return sum;
  }
}
