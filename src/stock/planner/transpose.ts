import type { BySide } from '../../geometry/sides.ts';
import type { CutNode } from './model.ts';

/** The mirror image in the diagonal: x and y change places. */
export function transposedNode(node: CutNode): CutNode {
  const swapped = { x: node.y, y: node.x, width: node.height, height: node.width };
  if (node.kind !== 'cuts') return { ...node, ...swapped };
  return { ...node, ...swapped, along: node.along === 'x' ? 'y' : 'x', parts: node.parts.map(transposedNode) };
}

export const transposedSides = <T>(sides: BySide<T>): BySide<T> => ({
  left: sides.top,
  right: sides.bottom,
  top: sides.left,
  bottom: sides.right,
});
