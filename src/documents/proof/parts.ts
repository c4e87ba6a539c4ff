import type { Item, Pen } from '../../drawing/model.ts';
import { fraction } from '../../fonts/fractions.ts';
import type { Fonts } from '../../fonts/model.ts';
import { box } from '../../geometry/box.ts';
import { money, type PriceList } from '../../stock/prices.ts';
import {
  BODY,
  boxItem,
  capHeight,
  fitted,
  HAIRLINE,
  LEADING,
  paragraph,
  rule,
  SIZE,
  SMALL,
  SOFTLY,
  STRONG,
  type Style,
  set,
  widthOf,
} from '../../text/type-scale.ts';
import { printDecimal } from '../../units/print.ts';
import type { Units } from '../../units/units.ts';
import { mmFromInches } from '../../units/units.ts';
import type { Material, NamedSize } from './words.ts';

/** Items whose first base line, or top, is at `y`; `bottom` is where the next part may begin to count from. */
export interface Part {
  readonly items: readonly Item[];
  readonly bottom: number;
}

export const LINE = LEADING * SIZE.body;

/** How a list is set: the fonts, and its size, 1 unless there is too much of it for the sheet. */
export interface ListStyle {
  readonly share: number;
  readonly fonts: Fonts;
}

const shrunk = (style: Style, share: number): Style => ({ ...style, size: style.size * share });

export const PART_PENS: Readonly<Record<string, Pen>> = {
  rule: HAIRLINE,
  sign: { width: 0.18, colour: 0.25, dash: [], cap: 'butt' },
  chip: { width: 0.1, colour: 0.55, dash: [], cap: 'butt' },
  bar: { width: 0.14, colour: 0.15, dash: [], cap: 'butt' },
};

/** Columns that the pairs stand in are no narrower than this. */
const PAIR = 29;
const BETWEEN = 4.5;

/** Pairs of a small word and a size below it, in columns of one width; a long one takes several. */
export function sizeRow(pairs: readonly NamedSize[], x: number, y: number, width: number, fonts: Fonts): Part {
  const items: Item[] = [];
  const count = Math.max(1, Math.floor(width / PAIR));
  const step = width / count;
  let [at, line] = [0, y];
  for (const { of, size, first } of pairs) {
    const word = fitted(of, SMALL, width, 0.3, fonts);
    const value = fitted(size, BODY, width, 0.5, fonts);
    const wide = Math.max(widthOf(of, word, fonts), widthOf(size, value, fonts));
    const takes = Math.min(count, Math.ceil((wide + BETWEEN) / step));
    if (at > 0 && (first === true || at + takes > count)) [at, line] = [0, line + 2.75 * LINE];
    items.push(set(of, x + at * step, line, word), set(size, x + at * step, line + 1.08 * LINE, value));
    at += takes;
  }
  return { items, bottom: line + 1.08 * LINE };
}

const CHIP = 3.2;
const PART_WIDTH = 21;

/** A row for each material: a chip of its colour, its part in the piece, what it is. */
export function materialRows(
  rows: readonly Material[],
  x: number,
  y: number,
  width: number,
  { share, fonts }: ListStyle,
): Part {
  const [body, soft] = [shrunk(BODY, share), shrunk(SOFTLY, share)];
  const [chip, gap, wide, line] = [CHIP * share, 2.4 * share, PART_WIDTH * share, LINE * share];
  const items: Item[] = [];
  let at = y;
  for (const { part, what, colour } of rows) {
    if (colour !== undefined)
      items.push(boxItem(box(x, at - (capHeight(body, fonts) + chip) / 2, chip, chip), colour, 'chip'));
    items.push(set(part, x + chip + gap, at, fitted(part, soft, wide - 1.5, 0.7, fonts)));
    const start = x + chip + gap + wide;
    const text = paragraph(what, start, at, x + width - start, body, fonts);
    items.push(...text.items);
    at = text.bottom + line * 1.12;
  }
  return { items, bottom: at - line * 1.12 };
}

/** Amounts in a column, the total under a rule. */
export function priceRows(list: PriceList, x: number, y: number, width: number, { share, fonts }: ListStyle): Part {
  const [body, soft, strong] = [shrunk(BODY, share), shrunk(SOFTLY, share), shrunk(STRONG, share)];
  const line = LINE * share;
  const items: Item[] = [];
  let at = y;
  const row = (what: string, amount: string, isTotal: boolean): void => {
    const style = isTotal ? strong : body;
    const own = fitted(amount, style, width * 0.6, 0.3, fonts);
    const text = paragraph(what, x, at, width - widthOf(amount, own, fonts) - 4, isTotal ? strong : soft, fonts);
    items.push(...text.items, set(amount, x + width, at, own, 'end'));
    at = text.bottom + line * 1.12;
  };
  const { tax, total, all } = list;
  const plain = (amount: number): string => amount.toFixed(list.decimals);
  for (const { what, amount } of list.lines) row(what, plain(amount), false);
  if (tax !== undefined && !tax.included) row(tax.what, plain(tax.amount), false);
  items.push(rule('rule', x, x + width, at - line * 0.72));
  at += line * 0.42;
  row('Total', money(total, list), true);
  if (tax?.included === true) row(`${tax.what} in it`, plain(tax.amount), false);
  if (all !== undefined) row(`${all.count} alike`, money(all.total, list), false);
  if (list.without.length > 0) {
    const words = `Not in the total: ${list.without.join('; ')}`;
    const text = paragraph(words, x, at, width, shrunk(SMALL, share), fonts);
    items.push(...text.items);
    at = text.bottom + line * 1.12;
  }
  return { items, bottom: at - line * 1.12 };
}

/** A line to sign on, its word below it. */
export function signLine(word: string, x: number, y: number, width: number): readonly Item[] {
  return [rule('sign', x, x + width, y), set(word, x, y + 1.35 * SMALL.size, SMALL)];
}

/** Lengths that a scale bar may stand for, and into how many parts each is cut. */
const INCHES: readonly (readonly [number, number])[] = [
  [1, 4],
  [2, 2],
  [3, 3],
  [4, 4],
  [6, 3],
  [8, 4],
  [12, 4],
  [24, 4],
  [48, 4],
  [96, 4],
];
const MILLIMETRES: readonly (readonly [number, number])[] = [
  [10, 2],
  [20, 2],
  [40, 4],
  [50, 5],
  [100, 4],
  [200, 4],
  [400, 4],
  [500, 5],
  [1000, 4],
  [2000, 4],
];
const LONGEST_BAR = 42;

export interface ScaleBar {
  /** What it stands for, mm of the piece. */
  readonly stands: number;
  readonly items: readonly Item[];
}

/** A bar of dark and light parts, its right end at `x`, with what its ends stand for and the scale. */
export function scaleBar(scale: number, units: Units, x: number, y: number): ScaleBar {
  const inches = units === 'in';
  const known = (inches ? INCHES : MILLIMETRES).map(([n, parts]) => [inches ? mmFromInches(n) : n, parts] as const);
  const [stands, parts] = known.findLast(([mm]) => mm * scale <= LONGEST_BAR) ?? known[0]!;
  const long = stands * scale;
  const left = x - long;
  const height = 1.1;
  const cells = Array.from({ length: parts }, (_, i): Item => {
    return boxItem(box(left + (i * long) / parts, y, long / parts, height), i % 2 === 0 ? 0.15 : 1, 'bar');
  });
  const unit = units === 'cm' ? 'cm' : units;
  const end = `${printDecimal(stands, units, 2).text} ${unit}`;
  const below = y + height + 1.25 * SMALL.size;
  return {
    stands,
    items: [
      set(`Scale 1 : ${printDecimal(1 / scale, 'mm', 2).text}`, x, y - 1.5, SMALL, 'end'),
      ...cells,
      set('0', left, below, SMALL),
      set(fraction(end), x, below, SMALL, 'end'),
    ],
  };
}

/** A box to tick, behind it a letter and what it stands for, as many lines as that takes. */
export function tickBox(letter: string, label: string, x: number, y: number, width: number, fonts: Fonts): Part {
  const side = 3.6;
  const top = y - (capHeight(STRONG, fonts) + side) / 2;
  const text = paragraph(label, x + side + 6.2, y, width - side - 6.2, STRONG, fonts);
  return {
    items: [boxItem(box(x, top, side, side), 1, 'sign'), set(letter, x + side + 1.8, y, STRONG), ...text.items],
    bottom: text.bottom,
  };
}
