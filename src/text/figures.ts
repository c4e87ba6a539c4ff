import type { LineItem, PathItem, Pen } from '../drawing/model.ts';
import type { Box } from '../geometry/box.ts';
import { polygon } from '../geometry/path.ts';
import { point } from '../geometry/point.ts';
import { defined } from '../problems/defined.ts';

/** Pens of what is drawn with words: rules, frames of tables, squares to tick, lines to write on. */
export const WORD_PENS = {
  /** Between rows. */
  rule: { width: 0.12, colour: 0, dash: [], cap: 'butt' },
  /** Above a heading. */
  head: { width: 0.5, colour: 0, dash: [], cap: 'butt' },
  /** Around tables and files. */
  frame: { width: 0.15, colour: 0, dash: [], cap: 'butt' },
  tick: { width: 0.25, colour: 0, dash: [], cap: 'butt' },
  cross: { width: 0.5, colour: 0, dash: [], cap: 'butt' },
  write: { width: 0.15, colour: 0, dash: [], cap: 'butt' },
} as const satisfies Readonly<Record<string, Pen>>;

export function rule(pen: string, fromX: number, toX: number, y: number): LineItem {
  return { kind: 'line', pen, from: point(fromX, y), to: point(toX, y) };
}

export function boxItem({ x, y, width, height }: Box, fill: number | string | undefined, pen?: string): PathItem {
  const corners = [point(x, y), point(x + width, y), point(x + width, y + height), point(x, y + height)];
  return {
    kind: 'path',
    paths: [polygon(corners)],
    ...defined({ fill }),
    ...defined({ pen }),
  };
}

/** A frame within a width and a height, its own line too. */
export function frame(width: number, height: number): PathItem {
  const half = WORD_PENS.frame.width / 2;
  return boxItem({ x: half, y: half, width: width - 2 * half, height: height - 2 * half }, undefined, 'frame');
}
