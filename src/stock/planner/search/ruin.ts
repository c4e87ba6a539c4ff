import type { Forest } from '../trees/forest.ts';
import type { Random } from './random.ts';

/** At most so many nodes become leftover in one go, counting those above pieces as one. */
const MOST_NODES = 8;
/** In so many of a hundred goes the nodes lie on one to three sheets only. */
const FOCUSED = 70;
/** In so many of a hundred goes a whole sheet is given back, where others could take its place. */
const WHOLE_SHEET = 15;

/** Turns a few nodes by chance into leftover. */
export class Ruin {
  private list = new Int32Array(256);

  /** `exchange`: whole sheets may be given back, since there are others to open. */
  run(forest: Forest, random: Random, exchange: boolean): void {
    if (forest.sheets === 0) return;
    if (exchange && random.below(100) < WHOLE_SHEET) this.giveBack(forest, random);
    const count = 1 + random.below(MOST_NODES);
    if (random.below(100) >= FOCUSED) {
      for (let i = 0; i < count; i++) this.anywhere(forest, random);
      return;
    }
    const sheets = 1 + random.below(3);
    for (let s = 0; s < sheets && forest.sheets > 0; s++) {
      const sheet = random.below(forest.sheets);
      for (let i = 0; i < count; i += sheets) if (!this.onSheet(forest, random, sheet)) break;
    }
  }

  private giveBack(forest: Forest, random: Random): void {
    const sheet = random.below(forest.sheets);
    if (!forest.instance.stocks[forest.stock[sheet]!]!.free) forest.close(sheet);
  }

  private anywhere(forest: Forest, random: Random): void {
    const { used } = forest.nodes;
    for (let tries = 0; tries < 50; tries++) {
      const node = random.below(used);
      if (!forest.holdsPieces(node)) continue;
      forest.remove(node);
      return;
    }
  }

  private onSheet(forest: Forest, random: Random, sheet: number): boolean {
    if (this.list.length < forest.nodes.used) this.list = new Int32Array(2 * forest.nodes.used);
    const count = forest.nodes.list(forest.root[sheet]!, this.list, 0);
    if (count === 0) return false;
    forest.remove(this.list[random.below(count)]!);
    return true;
  }
}
