import type { Item } from '../drawing/model.ts';
import type { Fonts } from '../fonts/model.ts';
import { point } from '../geometry/point.ts';
import type { Block } from './block.ts';
import { depthOf, set, widthOf } from './line.ts';
import { disc, discRadius, roundArrow, squareSide, tickSquare } from './signs.ts';
import type { Style } from './styles.ts';

/** Words and signs that stand on one base line: how wide they are, and their items with the base line at `y`. */
export interface Run {
  readonly width: number;
  readonly items: (x: number, y: number) => readonly Item[];
}

export const wordRun = (text: string, style: Style, fonts: Fonts): Run => ({
  width: widthOf(text, style, fonts),
  items: (x, y) => [set(text, x, y, style)],
});

/** A number on its disc. */
export function discRun(text: string, style: Style, fonts: Fonts): Run {
  const radius = discRadius(style);
  return {
    width: 2 * radius,
    items: (x, y) => disc(text, point(x + radius, y - 0.35 * style.size), style, fonts),
  };
}

/** A square to tick; crossed where it is done. */
export const squareRun = (style: Style, fonts: Fonts, done = false): Run => ({
  width: squareSide(style) + 0.4,
  items: (x, y) => tickSquare(x, y, style, fonts, done),
});

/** Words and the arrow that turns behind them. */
export function turnRun(text: string, clockwise: boolean, style: Style, fonts: Fonts): Run {
  const words = wordRun(text, style, fonts);
  const radius = 0.42 * style.size;
  return {
    width: words.width + 1.1 + 2 * radius + 0.5,
    items: (x, y) => [
      ...words.items(x, y),
      ...roundArrow(point(x + words.width + 1.1 + radius, y - 0.35 * style.size), radius, clockwise),
    ],
  };
}

/** More white, in gaps, between groups than inside them. */
const BETWEEN_GROUPS = 0.8;
/** Base line to base line, em: signs are taller than words. */
const PITCH = 1.6;

/** Runs in lines no wider than `width`; each list of runs stays together where a line can hold it. */
export function runsBlock(groups: readonly (readonly Run[])[], width: number, style: Style, fonts: Fonts): Block {
  const items: Item[] = [];
  const gap = 0.36 * style.size;
  const pitch = PITCH * style.size;
  let [x, line] = [0, 0];
  const wide = (runs: readonly Run[]): number => runs.reduce((sum, { width: w }) => sum + w, 0);
  for (const group of groups) {
    if (x > 0 && x + wide(group) + gap * (group.length - 1) > width) [x, line] = [0, line + 1];
    for (const run of group) {
      if (x > 0 && x + run.width > width) [x, line] = [0, line + 1];
      items.push(...run.items(x, (line + 1) * pitch));
      x += run.width + gap;
    }
    x += BETWEEN_GROUPS * gap;
  }
  return { items, width, height: (line + 1) * pitch + depthOf(style, fonts) };
}
