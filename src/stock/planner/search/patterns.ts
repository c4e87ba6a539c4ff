import { type FlatLayout, flatLayout, layFlat, typesOf } from '../trees/flat.ts';
import type { Forest } from '../trees/forest.ts';
import { grown } from '../trees/leftovers.ts';
import { Random } from './random.ts';

/** The most entries (a type and its copies) that are kept over all patterns. */
const MOST_ENTRIES = 60_000;

/** Sheets of one stock that the search has met, every set of pieces once, with the layout that it was met in. */
export class Patterns {
  count = 0;
  /** Entries of pattern p: from start[p] up to start[p + 1]. */
  start = new Int32Array(1024);
  type = new Int32Array(4096);
  copies = new Int32Array(4096);
  private readonly layouts: FlatLayout[] = [];
  private readonly known = new Set<number>();
  private readonly keys: Int32Array;

  /** Sheets with less than `leastArea` on them are passed over. */
  constructor(
    types: number,
    readonly stock: number,
    private readonly leastArea: number,
  ) {
    const random = new Random(types);
    this.keys = Int32Array.from({ length: types }, () => random.next() | 0);
  }

  get entries(): number {
    return this.start[this.count]!;
  }

  /** Takes the sheets that got pieces since the forest was last copied from another. */
  collect(forest: Forest): void {
    if (this.entries > MOST_ENTRIES) return;
    for (let sheet = 0; sheet < forest.sheets; sheet++) {
      if (forest.dirty[sheet] === 0 || forest.stock[sheet] !== this.stock) continue;
      const root = forest.root[sheet]!;
      if (forest.nodes.filled(root) < this.leastArea) continue;
      const hash = forest.nodes.hash(root, this.keys);
      if (this.known.has(hash)) continue;
      this.known.add(hash);
      this.add(flatLayout(forest, root));
    }
  }

  /** Opens a sheet laid out as pattern p; pieces that are not missing any more stay away. */
  lay(forest: Forest, pattern: number): void {
    layFlat(forest, this.stock, this.layouts[pattern]!);
  }

  private add(layout: FlatLayout): void {
    const types = typesOf(layout).sort((a, b) => a - b);
    let at = this.entries;
    if (this.count + 2 > this.start.length) this.start = grown(this.start, 2 * this.start.length);
    if (at + types.length > this.type.length) {
      this.type = grown(this.type, 2 * (at + types.length));
      this.copies = grown(this.copies, 2 * (at + types.length));
    }
    for (let i = 0; i < types.length; at++) {
      let end = i;
      while (types[end] === types[i]) end++;
      this.type[at] = types[i]!;
      this.copies[at] = end - i;
      i = end;
    }
    this.start[++this.count] = at;
    this.layouts.push(layout);
  }
}
