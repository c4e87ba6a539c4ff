import type { LineItem, PathItem, Pen, TextItem } from '../drawing/model.ts';
import { fitSize, metrics, textWidth, wrap } from '../fonts/measure.ts';
import type { Fonts, Weight } from '../fonts/model.ts';
import type { Box } from '../geometry/box.ts';
import { polygon } from '../geometry/path.ts';

/**
 * The sizes that sheets for people are set in: em in mm, each about 1.4 times the next. Body is 8.5 pt and the smallest
 * 7 pt, which is read in the hand; what is read at arm's length has its own sizes.
 */
export const SIZE = { title: 7.4, intro: 4.3, body: 3.05, small: 2.5 } as const;

/** Base line to base line, em. */
export const LEADING = 1.38;

/** Greys of text and rules: what is said, what explains it, what only parts. */
export const INK = 0.1;
const SOFT = 0.42;
const RULE = 0.72;

export interface Style {
  readonly size: number;
  readonly weight: Weight;
  readonly colour: number | string;
}

export const TITLE: Style = { size: SIZE.title, weight: 'bold', colour: INK };
export const INTRO: Style = { size: SIZE.intro, weight: 'regular', colour: SOFT };
export const BODY: Style = { size: SIZE.body, weight: 'regular', colour: INK };
export const STRONG: Style = { size: SIZE.body, weight: 'bold', colour: INK };
export const SOFTLY: Style = { size: SIZE.body, weight: 'regular', colour: SOFT };
export const SMALL: Style = { size: SIZE.small, weight: 'regular', colour: SOFT };

export const HAIRLINE: Pen = { width: 0.12, colour: RULE, dash: [], cap: 'butt' };

/** One line with its base line at `y`. */
export function set(text: string, x: number, y: number, style: Style, anchor: TextItem['anchor'] = 'start'): TextItem {
  const { size, weight, colour } = style;
  return { kind: 'text', text, at: { x, y }, anchor, size, weight, turn: 0, colour };
}

/** Lines no wider than `width`, the first base line at `y`; `bottom` is the last base line. */
export function paragraph(
  text: string,
  x: number,
  y: number,
  width: number,
  style: Style,
  fonts: Fonts,
): { readonly items: readonly TextItem[]; readonly bottom: number } {
  const lines = wrap(text, style.weight, style.size, width, fonts);
  const items = lines.map((line, i) => set(line, x, y + i * LEADING * style.size, style));
  return { items, bottom: y + (lines.length - 1) * LEADING * style.size };
}

/** A headline: as large as it may be in two lines, smaller in more, never cut. */
export function headline(text: string, width: number, style: Style, fonts: Fonts) {
  const shrunk = [1, 0.78, 0.6, 0.46].map((share) => ({ ...style, size: style.size * share }));
  const made = shrunk.map((own) => ({ style: own, lines: wrap(text, own.weight, own.size, width, fonts) }));
  return made.find(({ lines }) => lines.length <= 2) ?? made.at(-1)!;
}

/** The style in which a line fits into `width`, no smaller than `least` of its size. */
export function fitted(text: string, style: Style, width: number, least: number, fonts: Fonts): Style {
  return { ...style, size: fitSize(text, style.weight, style.size, width, style.size * least, fonts) };
}

export const widthOf = (text: string, { weight, size }: Style, fonts: Fonts): number =>
  textWidth(text, weight, size, fonts);

/** From the base line up to the tops of capitals, mm. */
export const capHeight = ({ weight, size }: Style, fonts: Fonts): number => metrics(weight, fonts).capHeight * size;

export function rule(pen: string, fromX: number, toX: number, y: number): LineItem {
  return { kind: 'line', pen, from: { x: fromX, y }, to: { x: toX, y } };
}

export function boxItem({ x, y, width, height }: Box, fill: number | string | undefined, pen?: string): PathItem {
  const corners = [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ];
  return {
    kind: 'path',
    paths: [polygon(corners)],
    ...(fill === undefined ? {} : { fill }),
    ...(pen === undefined ? {} : { pen }),
  };
}
