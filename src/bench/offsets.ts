import { theNamed } from '../mat/layers.ts';
import type { MatLayer } from '../mat/model.ts';
import { defined } from '../problems/defined.ts';
import { type Problem, warning } from '../problems/problem.ts';
import type { Head, OffsetAt } from '../shop/head.ts';
import { showLength } from '../units/print.ts';
import { fitLine } from './fit.ts';

/**
 * A board's thickness as its maker states it varies by 0.004 in, about 0.1 mm (Saitzyk, Art Hardware, 1987):
 * within that a board counts as the one that was calibrated.
 */
export const THICKNESS_PLAY = 0.1;

interface OffsetHere {
  /** How far the blade is ahead of the scribe, mm. */
  readonly offset: number;
  /** Thicknesses that the calibration covers, where the board lies outside them. */
  readonly outside?: { readonly from: number; readonly to: number };
}

/** A head's offsets on one board. */
export interface EndOffsets {
  readonly start: number;
  readonly stop: number;
  /** Thicknesses that the calibration covers, where the board lies outside them. */
  readonly outside?: OffsetHere['outside'];
}

/**
 * How far outside the face corners of a side a head starts and stops, whatever carries it. With u along the travel, u = 0
 * and u = L at the corners, the blade being e ahead of the head: it starts at u = −e_start − x and stops at
 * u = L − e_stop + x, x being the overrun that is wished, and `on` how far it runs on into the fallout besides.
 */
export const beyondCorners = (
  { start, stop }: EndOffsets,
  overrun: number,
  on: { readonly before: number; readonly after: number } = { before: 0, after: 0 },
): { readonly before: number; readonly after: number } => ({
  before: start + overrun + on.before,
  after: overrun - stop + on.after,
});

/** Of both ends on one board. */
export function offsetsOn(head: Pick<Head, 'start' | 'stop'>, thickness: number): EndOffsets {
  const [start, stop] = [offsetAt(head.start, thickness), offsetAt(head.stop, thickness)];
  const outside = start.outside ?? stop.outside;
  return { start: start.offset, stop: stop.offset, ...defined({ outside }) };
}

/** A warning where a layer's board is none of those that `who` was calibrated on. */
export function outsideWarning(
  { name, board }: Pick<MatLayer, 'name' | 'board'>,
  index: number,
  who: string,
  outside: EndOffsets['outside'],
  hint: string,
): readonly Problem[] {
  if (outside === undefined) return [];
  const show = (mm: number): string => showLength(mm, 'mm');
  const from = show(outside.from);
  const range = outside.from === outside.to ? from : `${from} to ${show(outside.to)}`;
  const message = `${theNamed(name)} is ${show(board.thickness)} thick, but ${who} was calibrated at ${range}`;
  return [warning('head-thickness-outside', ['mat', 'layers', index, 'board'], message, hint)];
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
