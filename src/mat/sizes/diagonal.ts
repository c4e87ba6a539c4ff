import type { System } from './linear.ts';
import { border, HORIZONTAL, outer } from './unknowns.ts';

/**
 * The diagonal weighting gives the top (H − h)(W + w) / 4W, where w × h is the top mat's face opening. As H − h is top
 * and bottom together, the top is a fixed share (W + w) / 4W of them as soon as the widths are known, whatever the
 * heights. (The diagonal method as taught in darkroom classes.)
 */
export function diagonalShare(system: System): number | undefined {
  const width = system.value(outer(HORIZONTAL));
  const left = system.value(border('left'));
  const right = system.value(border('right'));
  if (width === undefined || left === undefined || right === undefined) return undefined;
  return (2 * width - left - right) / (4 * width);
}
