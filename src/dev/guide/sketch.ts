import type { Drawing, Item, Pen } from '../../drawing/model.ts';
import { polygon } from '../../geometry/path.ts';
import { between, distance, leftOf, minus, type Point, plus, point, times, unit } from '../../geometry/point.ts';
import { defined } from '../../problems/defined.ts';
import { set } from '../../text/line.ts';
import { LARGE, LARGE_BOLD, type Style } from '../../text/styles.ts';

/** The figures of the guide: black and greys, so that they print, and one colour for what is wrong. */
const WRONG = '#b3261e';
export const CORE = 0.96;
export const BOARD = 0.82;
export const UNDER = 0.62;

const pen = (width: number, colour: Pen['colour'] = 0, dash: readonly number[] = []): Pen => ({
  width,
  colour,
  dash,
  cap: 'butt',
});

const PENS = {
  line: pen(0.3),
  bold: pen(0.6),
  fine: pen(0.15),
  hidden: pen(0.2, 0, [1.2, 0.9]),
  axis: pen(0.15, 0, [3, 0.8, 0.6, 0.8]),
  wrong: pen(0.6, WRONG),
} as const satisfies Readonly<Record<string, Pen>>;

export type PenName = keyof typeof PENS;

export const sketch = (
  title: string,
  width: number,
  height: number,
  items: readonly (Item | readonly Item[])[],
): Drawing => ({
  title,
  width,
  height,
  view: 'sheet',
  pens: PENS,
  groups: [{ name: 'figure', label: 'Figure', shown: true, items: items.flat() }],
});

export const stroke = (name: PenName, ...[from, ...more]: readonly Point[]): Item => ({
  kind: 'path',
  pen: name,
  paths: [polygon([from!, ...more], false)],
});

export const area = (fill: number | string, corners: readonly Point[], name?: PenName): Item => ({
  kind: 'path',
  fill,
  ...defined({ pen: name }),
  paths: [polygon(corners)],
});

export const box4 = (x: number, y: number, width: number, height: number): readonly Point[] => [
  point(x, y),
  point(x + width, y),
  point(x + width, y + height),
  point(x, y + height),
];

export function label(
  text: string,
  x: number,
  y: number,
  how: { anchor?: 'start' | 'middle' | 'end'; style?: Style; turn?: number; wrong?: boolean } = {},
): Item {
  const style = how.style ?? LARGE;
  return set(
    text,
    x,
    y,
    how.wrong === true ? { ...style, colour: WRONG } : style,
    how.anchor ?? 'start',
    how.turn ?? 0,
  );
}

export const heading = (text: string, x: number, y: number): Item => label(text, x, y, { style: LARGE_BOLD });

/** An arrowhead whose tip is `to`. */
function head(from: Point, to: Point, name: PenName): Item {
  const along = unit(minus(to, from));
  const [back, aside] = [plus(to, times(along, -2.2)), times(leftOf(along), 0.7)];
  return area(name === 'wrong' ? WRONG : 0, [to, plus(back, aside), minus(back, aside)]);
}

export const arrow = (from: Point, to: Point, name: PenName = 'line'): readonly Item[] => [
  stroke(name, from, to),
  head(from, to, name),
];

/** A length between two points, its words beside the middle; from outside where there is no room for the arrows. */
export function measure(from: Point, to: Point, text: string, away: Point = point(0, -1.6)): readonly Item[] {
  const middle = between(from, to, 0.5);
  const along = unit(minus(to, from));
  const inside = distance(from, to) > 7;
  const lines = inside
    ? [stroke('fine', from, to), head(to, from, 'fine'), head(from, to, 'fine')]
    : [...arrow(plus(from, times(along, -5)), from, 'fine'), ...arrow(plus(to, times(along, 5)), to, 'fine')];
  const anchor = Math.abs(away.x) < 0.5 ? 'middle' : away.x < 0 ? 'end' : 'start';
  return [...lines, label(text, middle.x + away.x, middle.y + away.y + (anchor === 'middle' ? 0 : 1.2), { anchor })];
}
