import { edgeAt } from '../trees/edges.ts';
import type { Forest } from '../trees/forest.ts';
import { worth } from '../trees/leftovers.ts';
import type { Stops } from '../trees/stops.ts';
import type { Random } from './random.ts';

/** One option in so many is overlooked, which keeps the search from walking in circles. */
const OVERLOOK = 1000;

/** The cheapest place for a blank: the leftover, how it lies and which way is cut first. Cost is the worth that leftovers lose. */
export class Spot {
  leftover = -1;
  width = 0;
  height = 0;
  yFirst = false;
  /** How often a blank was tried in a leftover that holds it. */
  looks = 0;
  /** Where given, settings of the stop cost as much as shares of the leftover. */
  stops: Stops | undefined;
  private cost = 0;

  /** False where no leftover holds the blank. Without `random` nothing is overlooked. */
  find(forest: Forest, type: number, random: Random | undefined): boolean {
    const { width, height, turn, edge } = forest.instance.types[type]!;
    this.leftover = -1;
    this.cost = Infinity;
    const { leftovers } = forest;
    const { count } = leftovers;
    const [widths, heights, worths] = [leftovers.width, leftovers.height, leftovers.worth];
    const least = worth(width, height);
    const turns = turn && width !== height;
    for (let slot = 0; slot < count; slot++) {
      if (worths[slot]! < least) continue;
      const w = widths[slot]!;
      const h = heights[slot]!;
      if (w >= width && h >= height) this.look(forest, slot, width, height, edge, random);
      if (turns && w >= height && h >= width) this.look(forest, slot, height, width, edge, random);
    }
    return this.leftover >= 0;
  }

  private look(
    forest: Forest,
    slot: number,
    width: number,
    height: number,
    edge: boolean,
    random: Random | undefined,
  ): void {
    this.looks++;
    if (random !== undefined && random.below(OVERLOOK) === 0) return;
    const { leftovers, instance } = forest;
    const { longest } = instance;
    const w = leftovers.width[slot]!;
    const h = leftovers.height[slot]!;
    const value = leftovers.worth[slot]!;
    const dx = w - width;
    const dy = h - height;
    if (dx === 0 && dy === 0 && longest < w && !wholeAllowed(forest, slot)) return;
    if ((dx === 0 || h <= longest) && (dy === 0 || width <= longest)) {
      this.offer(forest, slot, width, height, edge, false, value - worth(dx, h) - worth(width, dy));
    }
    if (dx > 0 && dy > 0 && w <= longest && height <= longest) {
      this.offer(forest, slot, width, height, edge, true, value - worth(w, dy) - worth(dx, height));
    }
  }

  private offer(
    forest: Forest,
    slot: number,
    width: number,
    height: number,
    edge: boolean,
    yFirst: boolean,
    cost: number,
  ): void {
    const leftover = forest.leftovers.node[slot]!;
    const whole =
      this.stops === undefined
        ? cost
        : cost / forest.leftovers.worth[slot]! + this.stops.cost(forest, leftover, width, height, yFirst);
    if (whole >= this.cost) return;
    if (edge && !edgeAt(forest, leftover)) return;
    this.cost = whole;
    this.leftover = leftover;
    this.width = width;
    this.height = height;
    this.yFirst = yFirst;
  }
}

/** A whole sheet as a blank must still be trimmed. */
function wholeAllowed(forest: Forest, slot: number): boolean {
  const { nodes } = forest;
  const node = forest.leftovers.node[slot]!;
  return nodes.parent[node]! >= 0 || forest.instance.stocks[forest.stock[nodes.sheetOf(node)]!]!.whole;
}
