import { ANY_PRICE, cheaper, holds, type Instance, type Price, priceOf, withOne } from '../instance.ts';
import type { Forest } from '../trees/forest.ts';
import type { Random } from './random.ts';
import { Spot } from './spot.ts';

/** Ways to put the missing blanks in order: by area, longer side, sum of sides, shorter side; large ones first. */
export const ORDERS = 4;

function sizeOf(how: number, width: number, height: number): number {
  switch (how) {
    case 0:
      return width * height;
    case 1:
      return Math.max(width, height);
    case 2:
      return width + height;
    default:
      return Math.min(width, height);
  }
}

/** Which sheet to open for a blank that fits no leftover, or −1. */
export type Opener = (forest: Forest, type: number) => number;

export const openNone: Opener = () => -1;

/** True where one more sheet of a stock exists and the price stays below `below`. */
function mayOpen(forest: Forest, stock: number, below: Price): boolean {
  const { instance, opened } = forest;
  if (opened[stock]! >= instance.stocks[stock]!.limit) return false;
  return cheaper(instance, withOne(instance, priceOf(instance, opened), stock), below);
}

/** Opens the first of `order` that is left and holds the blank. */
export function openInOrder(order: readonly number[]): Opener {
  return (forest, type) => {
    const { stocks, types } = forest.instance;
    return order.find((s) => holds(stocks[s]!, types[type]!) && mayOpen(forest, s, ANY_PRICE)) ?? -1;
  };
}

/** Opens any stock that keeps the price below `below`, by chance, more often one that is large. */
export function openBelow(below: Price, random: Random): Opener {
  return (forest, type) => {
    const { stocks, types } = forest.instance;
    let [best, bestArea] = [-1, -1];
    for (let s = 0; s < stocks.length; s++) {
      const stock = stocks[s]!;
      if (!holds(stock, types[type]!) || !mayOpen(forest, s, below)) continue;
      const area = stock.width * stock.height * (1 + random.below(256) / 128);
      if (area > bestArea) [best, bestArea] = [s, area];
    }
    return best;
  };
}

/** What work costs, in steps: passing over so many leftovers takes one, trying a blank in one, placement and all, more. */
const PASSED_PER_STEP = 4;
const STEPS_PER_LOOK = 18;

/** Puts missing blanks back, each where it costs least. */
export class Recreate {
  private passed = 0;
  private readonly spot = new Spot();
  private readonly order: Int32Array;
  private readonly keys: Float64Array;

  constructor(readonly instance: Instance) {
    this.order = new Int32Array(instance.types.length);
    this.keys = new Float64Array(instance.types.length);
  }

  get steps(): number {
    return Math.floor(this.passed / PASSED_PER_STEP) + STEPS_PER_LOOK * this.spot.looks;
  }

  /** With `random` in an order up to twofold off the sizes' own, and overlooking some options. */
  run(forest: Forest, how: number, random: Random | undefined, opener: Opener): void {
    const count = this.sort(forest, how, random);
    for (let i = 0; i < count; i++) {
      const type = this.order[i]!;
      while (forest.missing[type]! > 0) {
        this.passed += forest.leftovers.count + 1;
        if (this.spot.find(forest, type, random)) {
          const { leftover, width, height, yFirst } = this.spot;
          forest.place(leftover, type, width, height, yFirst);
          continue;
        }
        const stock = opener(forest, type);
        if (stock < 0) break;
        const root = forest.open(stock);
        // A blank that no leftover took, the new one included, was overlooked or has no factory edge there.
        this.passed += forest.leftovers.count + 1;
        if (!this.spot.find(forest, type, undefined)) {
          forest.close(forest.nodes.sheetOf(root));
          break;
        }
        forest.place(this.spot.leftover, type, this.spot.width, this.spot.height, this.spot.yFirst);
      }
    }
  }

  /** Missing types by falling size; returns how many. */
  private sort(forest: Forest, how: number, random: Random | undefined): number {
    const { order, keys } = this;
    const { types } = this.instance;
    const { missing } = forest;
    let count = 0;
    for (let type = 0; type < types.length; type++) {
      if (missing[type] === 0) continue;
      const { width, height } = types[type]!;
      let key = sizeOf(how, width, height);
      if (random !== undefined) key *= 1 + random.next() / 4_294_967_296;
      let at = count++;
      while (at > 0 && keys[at - 1]! < key) {
        order[at] = order[at - 1]!;
        keys[at] = keys[at - 1]!;
        at--;
        this.passed++;
      }
      order[at] = type;
      keys[at] = key;
    }
    return count;
  }
}
