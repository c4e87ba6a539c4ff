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

  /** `setting`: what a new setting costs. */
  constructor(private readonly setting: number) {}

  /** Cost of cutting a blank, `width` × `height` as it lies, from a leftover. */
  cost(forest: Forest, leftover: number, width: number, height: number, yFirst: boolean): number {
    let cost = 0;
    this.each(forest, leftover, width, height, yFirst, (level, size) => {
      const known = this.onLevel.has(level * LEVEL + size) ? CUT : this.sizes.has(size) ? AGAIN : 1;
      cost += known * this.setting;
    });
    return cost;
  }

  /** Takes the settings of a blank into account; to be called before it is placed. */
  add(forest: Forest, leftover: number, width: number, height: number, yFirst: boolean): void {
    this.each(forest, leftover, width, height, yFirst, (level, size) => {
      this.onLevel.add(level * LEVEL + size);
      this.sizes.add(size);
    });
  }

  private each(
    forest: Forest,
    leftover: number,
    width: number,
    height: number,
    yFirst: boolean,
    cut: (level: number, size: number) => void,
  ): void {
    const { nodes } = forest;
    let level = -1;
    const over = nodes.parent[leftover]!;
    for (let at = over; at >= 0; at = nodes.parent[at]!) level++;
    const dx = nodes.width[leftover]! > width;
    const dy = nodes.height[leftover]! > height;
    // A cut in the direction of the one above belongs to its level.
    let alongX = over >= 0 && nodes.kind[over] === CUT_X;
    const make = (x: boolean, size: number): void => {
      if (level < 0 || alongX !== x) level++;
      alongX = x;
      cut(level, size);
    };
    if (dy && yFirst) make(false, height);
    if (dx) make(true, width);
    if (dy && !yFirst) make(false, height);
  }
}
