import type { OffsetAt } from '../shop/head.ts';
import { fitLine } from './fit.ts';

/**
 * A board's thickness as its maker states it varies by 0.004 in, about 0.1 mm (Saitzyk, Art Hardware, 1987):
 * within that a board counts as the one that was calibrated.
 */
export const THICKNESS_PLAY = 0.1;

export interface OffsetHere {
  /** How far the blade is ahead of the scribe, mm. */
  readonly offset: number;
  /** Thicknesses that the calibration covers, where the board lies outside them. */
  readonly outside?: { readonly from: number; readonly to: number };
}

/**
 * A head's offset at a thickness. None given: 0. One: that one. Two thicknesses: the exact line. Three or more: least
 * squares. An offset without a thickness serves for all; it counts only where no other has a thickness.
 */
export function offsetAt(offsets: readonly OffsetAt[], thickness: number): OffsetHere {
  const known = offsets.flatMap((o) => (o.thickness === undefined ? [] : [{ x: o.thickness, y: o.offset }]));
  if (known.length === 0) {
    const total = offsets.reduce((sum, o) => sum + o.offset, 0);
    return { offset: offsets.length === 0 ? 0 : total / offsets.length };
  }
  const line = fitLine(known);
  const offset = line.intercept + line.slope * thickness;
  const from = Math.min(...known.map((p) => p.x));
  const to = Math.max(...known.map((p) => p.x));
  const outside = thickness < from - THICKNESS_PLAY - 1e-9 || thickness > to + THICKNESS_PLAY + 1e-9;
  return outside ? { offset, outside: { from, to } } : { offset };
}
