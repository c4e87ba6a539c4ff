import type { Pen } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { box } from '../../geometry/box.ts';
import { money, type PriceList } from '../../stock/prices.ts';
import { type Block, joined, moved, stacked } from '../../text/block.ts';
import { boxItem, rule } from '../../text/figures.ts';
import { capHeight } from '../../text/line.ts';
import { fittedLine, level, line, paragraph, type TextBlock } from '../../text/paragraph.ts';
import { BODY, inBold, SMALL, SOFTLY, STRONG, type Style } from '../../text/styles.ts';
import type { Material, NamedSize } from './words.ts';

/** How lists are set: their words, and how much white there is between rows. */
export interface ListStyle {
  readonly body: Style;
  readonly gap: number;
  readonly fonts: Fonts;
}

const soft = (body: Style): Style => ({ ...body, colour: SOFTLY.colour });

export const PART_PENS: Readonly<Record<string, Pen>> = {
  rule: { width: 0.12, colour: 0.72, dash: [], cap: 'butt' },
  sign: { width: 0.18, colour: 0.25, dash: [], cap: 'butt' },
  chip: { width: 0.1, colour: 0.55, dash: [], cap: 'butt' },
  bar: { width: 0.14, colour: 0.15, dash: [], cap: 'butt' },
};

/** Columns that the pairs stand in are no narrower than this. */
const PAIR = 29;
const BETWEEN = 4.5;

/** Pairs of a small word and a size below it, in columns of one width; a long one takes several. */
export function sizeRow(pairs: readonly NamedSize[], width: number, fonts: Fonts): Block {
  const count = Math.max(1, Math.floor(width / PAIR));
  const step = width / count;
  const parts: (readonly [Block, { readonly x: number; readonly y: number }])[] = [];
  let [at, top, height] = [0, 0, 0];
  for (const { of, size, first } of pairs) {
    const pair = stacked([fittedLine(of, width, SMALL, fonts), fittedLine(size, width, BODY, fonts)], 0.9);
    const takes = Math.min(count, Math.ceil((pair.width + BETWEEN) / step));
    if (at > 0 && (first === true || at + takes > count)) [at, top] = [0, height + 3.6];
    parts.push([pair, { x: at * step, y: top }]);
    height = Math.max(height, top + pair.height);
    at += takes;
  }
  return joined({ width, height }, parts);
}

const PART_WIDTH = 21;

/** A row for each material: a chip of its colour, its part in the piece, what it is. */
export function materialRows(rows: readonly Material[], width: number, { body, gap, fonts }: ListStyle): Block {
  const side = 1.05 * body.size;
  const chip = (colour: string): TextBlock => ({
    items: [boxItem(box(0.06, 0, side, side), colour, 'chip')],
    width: side,
    height: side,
    base: (side + capHeight(body, fonts)) / 2,
  });
  const left = side + 2.4;
  const made = rows.map(({ part, what, colour }) =>
    level([
      ...(colour === undefined ? [] : [[0, chip(colour)] as const]),
      [left, fittedLine(part, PART_WIDTH - 1.5, soft(body), fonts)],
      [0, paragraph(what, width, body, fonts, left + PART_WIDTH)],
    ]),
  );
  return stacked(made, gap);
}

/** Amounts in a column, the total under a rule. */
export function priceRows(list: PriceList, width: number, { body, gap, fonts }: ListStyle): Block {
  const row = (what: string, amount: string, isTotal = false): TextBlock => {
    const own = fittedLine(amount, width * 0.6, isTotal ? inBold(body) : body, fonts);
    return level([
      [0, paragraph(what, width - own.width - 4, isTotal ? inBold(body) : soft(body), fonts)],
      [width - own.width, own],
    ]);
  };
  const { tax, total, all, without, deposit, balance } = list;
  const plain = (amount: number): string => amount.toFixed(list.decimals);
  const above =
    list.totalAlone === true
      ? []
      : [
          ...list.lines.map(({ what, amount }) => row(what, plain(amount))),
          ...(tax === undefined || tax.included ? [] : [row(tax.what, plain(tax.amount))]),
        ];
  const missing = without.join('; ');
  const totalRows = (): readonly Block[] => {
    if (total !== undefined) return [row(list.agreed === true ? 'Agreed price' : 'Total', money(total, list), true)];
    // Where the shop has no prices, what was paid is all that is known.
    if (missing === '') return [];
    return [row('Total', 'not known yet', true), paragraph(`No price yet for ${missing}`, width, SMALL, fonts)];
  };
  const below = [
    ...totalRows(),
    ...(tax?.included === true ? [row(`${tax.what} in it`, plain(tax.amount))] : []),
    ...(all === undefined ? [] : [row(`${all.count} alike`, money(all.total, list))]),
    ...(deposit === undefined ? [] : [row('Deposit', money(deposit, list))]),
    ...(balance === undefined ? [] : [row('Balance', money(balance, list), true)]),
    ...(total === undefined || without.length === 0
      ? []
      : [paragraph(`Not in the total: ${missing}`, width, SMALL, fonts)]),
  ];
  const line: Block = { items: [rule('rule', 0, width, 0)], width, height: 0 };
  const lines = above.length === 0 ? [] : [stacked(above, gap)];
  return stacked([...lines, line, stacked(below, gap)], gap);
}

/** A line to sign on, its word below it. */
export function signLine(word: string, width: number, fonts: Fonts): Block {
  const words = line(word, SMALL, fonts);
  return {
    items: [rule('sign', 0, width, 0), ...moved(words.items, 0, 1.2)],
    width,
    height: 1.2 + words.height,
  };
}

/** A box to tick, behind it a letter and what it stands for, as many lines as that takes. */
export function tickBox(letter: string, label: string, width: number, fonts: Fonts): Block {
  const side = 3.6;
  const square: TextBlock = {
    items: [boxItem(box(0, 0, side, side), 1, 'sign')],
    width: side,
    height: side,
    base: (side + capHeight(STRONG, fonts)) / 2,
  };
  return level([
    [0, square],
    [side + 1.8, line(letter, STRONG, fonts)],
    [0, paragraph(label, width, STRONG, fonts, side + 6.2)],
  ]);
}
