import type { Forest } from './forest.ts';
import { CUT_X, LEFTOVER, PIECE } from './nodes.ts';

/**
 * Factory edges. The children of a cut may lie in any order, so a blank that needs an edge of the sheet gets one when
 * it can be at an end of some cut on its way down, or keeps one from above. `x` and `y` say how many of a node's two
 * sides in each direction are free factory edges; mirrored layouts make the sides of one direction alike.
 */

/** True where an order of children gives every blank that needs an edge one; `also`: a leftover that shall hold such a blank. */
function edgesReach(forest: Forest, node: number, x: number, y: number, also: number): boolean {
  const { nodes, instance } = forest;
  const kind = nodes.kind[node]!;
  if (kind === LEFTOVER) return node !== also || x + y > 0;
  if (kind === PIECE) return !instance.types[nodes.data[node]!]!.edge || x + y > 0;
  return endsFor(forest, node, x, y, also) !== undefined;
}

/** The children of a cut that must lie at an end with a factory edge, or undefined where that is not possible. */
export function endsFor(forest: Forest, node: number, x: number, y: number, also: number): number[] | undefined {
  const { nodes } = forest;
  const alongX = nodes.kind[node] === CUT_X;
  const ends: number[] = [];
  for (const child of nodes.children(node)) {
    if (edgesReach(forest, child, alongX ? 0 : x, alongX ? y : 0, also)) continue;
    if (!edgesReach(forest, child, alongX ? 1 : x, alongX ? y : 1, also)) return undefined;
    ends.push(child);
  }
  return ends.length <= (alongX ? x : y) ? ends : undefined;
}

/** True where a blank that needs a factory edge may go into the leftover. */
export function edgeAt(forest: Forest, leftover: number): boolean {
  const sheet = forest.nodes.sheetOf(leftover);
  const { edgesX, edgesY } = forest.instance.stocks[forest.stock[sheet]!]!;
  return edgesReach(forest, forest.root[sheet]!, edgesX, edgesY, leftover);
}
