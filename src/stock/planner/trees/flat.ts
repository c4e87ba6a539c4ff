import type { Forest } from './forest.ts';
import { CUT_X, LEFTOVER, NONE, PIECE } from './nodes.ts';

/** Numbers of one node of a layout: kind, width, height, and type of a piece or count of children. */
const PER_NODE = 4;

/** The tree of a sheet, parents before children. */
export type FlatLayout = Int32Array;

export function flatLayout(forest: Forest, root: number): FlatLayout {
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

/** The type of every piece of a layout. */
export function typesOf(layout: FlatLayout): number[] {
  const types: number[] = [];
  for (let i = 0; i < layout.length; i += PER_NODE) if (layout[i] === PIECE) types.push(layout[i + 3]!);
  return types;
}

/** Opens a sheet with the layout; pieces that are not missing any more stay away. */
export function layFlat(forest: Forest, stock: number, layout: FlatLayout): void {
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
  build(forest.open(stock));
  for (const leftover of skipped) if (forest.nodes.kind[leftover] === LEFTOVER) forest.remove(leftover);
}
