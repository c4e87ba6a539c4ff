import type { Forest } from './forest.ts';
import { grown } from './leftovers.ts';
import { CUT_X, LEFTOVER, NONE, PIECE } from './nodes.ts';
import { Random } from './random.ts';

/** The most entries (a type and its copies) that are kept over all patterns. */
const MOST_ENTRIES = 60_000;
/** Numbers of one node of a layout: kind, width, height, and type of a piece or count of children. */
const PER_NODE = 4;

/** Sheets of one stock that the search has met, every set of pieces once, with the layout that it was met in. */
export class Patterns {
  count = 0;
  /** Entries of pattern p: from start[p] up to start[p + 1]. */
  start = new Int32Array(1024);
  type = new Int32Array(4096);
  copies = new Int32Array(4096);
  private readonly layouts: Int32Array[] = [];
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
      this.add(layoutOf(forest, root));
    }
  }

  /** Opens a sheet laid out as pattern p; pieces that are not missing any more stay away. */
  lay(forest: Forest, pattern: number): void {
    const layout = this.layouts[pattern]!;
    const skipped: number[] = [];
    let at = 0;
    const build = (leftover: number): void => {
      const [kind, width, height, data] = [layout[at]!, layout[at + 1]!, layout[at + 2]!, layout[at + 3]!];
      at += PER_NODE;
      if (kind === LEFTOVER) return;
      if (kind === PIECE) {
        if (forest.missing[data]! > 0) forest.place(leftover, data, width, height, false);
        else skipped.push(leftover);
        return;
      }
      let rest = leftover;
      for (let child = 0; child < data; child++) {
        let part = rest;
        const size = layout[at + (kind === CUT_X ? 1 : 2)]!;
        if (child < data - 1) [part, rest] = forest.divide(rest, kind === CUT_X ? 'x' : 'y', size);
        build(part);
      }
    };
    build(forest.open(this.stock));
    for (const leftover of skipped) if (forest.nodes.kind[leftover] === LEFTOVER) forest.remove(leftover);
  }

  private add(layout: Int32Array): void {
    const types: number[] = [];
    for (let i = 0; i < layout.length; i += PER_NODE) if (layout[i] === PIECE) types.push(layout[i + 3]!);
    types.sort((a, b) => a - b);
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

/** The tree of a sheet in flat form, parents before children. */
function layoutOf(forest: Forest, root: number): Int32Array {
  const { kind, width, height, data, first, next } = forest.nodes;
  const out: number[] = [];
  const walk = (node: number): void => {
    const place = out.length + PER_NODE - 1;
    out.push(kind[node]!, width[node]!, height[node]!, kind[node] === PIECE ? data[node]! : 0);
    if (kind[node] === LEFTOVER || kind[node] === PIECE) return;
    for (let child = first[node]!; child !== NONE; child = next[child]!) {
      out[place]!++;
      walk(child);
    }
  };
  walk(root);
  return Int32Array.from(out);
}
