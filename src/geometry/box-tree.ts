import { type Box, union } from './box.ts';
import type { Point } from './point.ts';

/** Boxes in a tree by where they lie, so that questions about a place look at few of them. */
export type BoxTree =
  | { readonly kind: 'leaf'; readonly box: Box; readonly of: readonly number[] }
  | { readonly kind: 'fork'; readonly box: Box; readonly near: BoxTree; readonly far: BoxTree };

/** So few are looked at one by one. */
const FEW = 6;

/** The tree of boxes, known by their places in the list; undefined for none. */
export function boxTree(boxes: readonly Box[]): BoxTree | undefined {
  if (boxes.length === 0) return undefined;
  const middle = { x: boxes.map((b) => b.x + b.width / 2), y: boxes.map((b) => b.y + b.height / 2) };
  const grow = (of: readonly number[]): BoxTree => {
    const box = union(of.map((i) => boxes[i]!));
    if (of.length <= FEW) return { kind: 'leaf', box, of };
    const along = box.width >= box.height ? middle.x : middle.y;
    const sorted = [...of].sort((i, j) => along[i]! - along[j]!);
    const half = sorted.length >> 1;
    return { kind: 'fork', box, near: grow(sorted.slice(0, half)), far: grow(sorted.slice(half)) };
  };
  return grow(boxes.map((_, i) => i));
}

/** Asks about every box in the parts of the tree that may hold what is looked for, until one answers true. */
export function someIn(
  tree: BoxTree | undefined,
  mayHold: (part: Box) => boolean,
  ask: (index: number) => boolean,
): boolean {
  if (tree === undefined || !mayHold(tree.box)) return false;
  if (tree.kind === 'leaf') return tree.of.some(ask);
  return someIn(tree.near, mayHold, ask) || someIn(tree.far, mayHold, ask);
}

/** Where two boxes touch, or come within `slack`. */
export const touching = (a: Box, b: Box, slack = 0): boolean =>
  a.x <= b.x + b.width + slack &&
  b.x <= a.x + a.width + slack &&
  a.y <= b.y + b.height + slack &&
  b.y <= a.y + a.height + slack;

/** Every box that touches another one, or comes within `slack`. */
export function touched(
  tree: BoxTree | undefined,
  boxes: readonly Box[],
  box: Box,
  slack: number,
  visit: (index: number) => void,
): void {
  someIn(
    tree,
    // The box of several is as good as its rounding.
    (part) => touching(part, box, slack + 1e-9),
    (i) => {
      if (touching(boxes[i]!, box, slack)) visit(i);
      return false;
    },
  );
}

export const boxDistance = (box: Box, p: Point): number =>
  Math.hypot(Math.max(box.x - p.x, 0, p.x - box.x - box.width), Math.max(box.y - p.y, 0, p.y - box.y - box.height));

/** The least of the distances from a point, the nearer parts asked first, or `atMost`; `away` may give up beyond what it is told. */
export function leastFrom(
  tree: BoxTree | undefined,
  boxes: readonly Box[],
  p: Point,
  away: (index: number, atMost: number) => number,
  atMost = Number.POSITIVE_INFINITY,
): number {
  let best = atMost;
  const visit = (part: BoxTree): void => {
    if (boxDistance(part.box, p) >= best) return;
    if (part.kind === 'leaf') {
      for (const i of part.of) if (boxDistance(boxes[i]!, p) < best) best = Math.min(best, away(i, best));
      return;
    }
    const nearFirst = boxDistance(part.near.box, p) <= boxDistance(part.far.box, p);
    visit(nearFirst ? part.near : part.far);
    visit(nearFirst ? part.far : part.near);
  };
  if (tree !== undefined) visit(tree);
  return best;
}
