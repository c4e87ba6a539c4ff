import type { Forest } from './forest.ts';
import { CUT_X } from './nodes.ts';

/** Keeps levels apart from sizes, which are below 2³¹. */
const LEVEL = 2 ** 31;
/** Shares of a new setting that it costs to come back to one, and to make one more cut at it. */
const AGAIN = 0.5;
const CUT = 0.25;

/**
 * The settings of the stop that a layout asks for. Cuts on one level of the tree can be made one after the other at the
 * same setting; for a deeper level the stop is mostly set again.
 */
export class Stops {
  private readonly sizes = new Set<number>();
  private readonly onLevel = new Set<number>();
  /** The settings that one blank asks for: sizes, and the levels of the tree. */
  private readonly size = [0, 0];
  private readonly level = [0, 0];

  /** `setting`: what a new setting costs. */
  constructor(private readonly setting: number) {}

  /** Cost of cutting a blank, `width` × `height` as it lies, from a leftover. */
  cost(forest: Forest, leftover: number, width: number, height: number, yFirst: boolean): number {
    const cuts = this.find(forest, leftover, width, height, yFirst);
    let cost = 0;
    for (let i = 0; i < cuts; i++) {
      const size = this.size[i]!;
      const known = this.onLevel.has(this.level[i]! * LEVEL + size) ? CUT : this.sizes.has(size) ? AGAIN : 1;
      cost += known * this.setting;
    }
    return cost;
  }

  /** Takes the settings of a blank into account; to be called before it is placed. */
  add(forest: Forest, leftover: number, width: number, height: number, yFirst: boolean): void {
    const cuts = this.find(forest, leftover, width, height, yFirst);
    for (let i = 0; i < cuts; i++) {
      this.onLevel.add(this.level[i]! * LEVEL + this.size[i]!);
      this.sizes.add(this.size[i]!);
    }
  }

  /** Fills in the settings and returns how many there are. */
  private find(forest: Forest, leftover: number, width: number, height: number, yFirst: boolean): number {
    const { nodes } = forest;
    let level = -1;
    const over = nodes.parent[leftover]!;
    for (let at = over; at >= 0; at = nodes.parent[at]!) level++;
    const dx = nodes.width[leftover]! > width;
    const dy = nodes.height[leftover]! > height;
    // A cut in the direction of the one above belongs to its level.
    let alongX = over >= 0 && nodes.kind[over] === CUT_X;
    let cuts = 0;
    for (let i = 0; i < 2; i++) {
      const x = (i === 0) !== yFirst;
      if (!(x ? dx : dy)) continue;
      if (level < 0 || alongX !== x) level++;
      alongX = x;
      this.size[cuts] = x ? width : height;
      this.level[cuts++] = level;
    }
    return cuts;
  }
}
