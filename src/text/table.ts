import type { Item } from '../drawing/model.ts';
import type { Fonts } from '../fonts/model.ts';
import { point } from '../geometry/point.ts';
import { type Block, blockOf, itemsAt } from './block.ts';
import { frame, rule } from './figures.ts';
import { depthOf, widthOf } from './line.ts';
import { underline } from './numerals.ts';
import { level, paragraph, type TextBlock } from './paragraph.ts';
import { inBold, type Style, stepsDown } from './styles.ts';

/** Rows of cells under a head, framed. Cells that are empty are written into by hand. */
export interface Table {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** Of the columns, relative to one another; as wide as their words without it. */
  readonly widths?: readonly number[];
  /** Room for a hand's writing, mm. */
  readonly rowHeight?: number;
}

const PAD = 1;
/** Between words and the rule above or below them, em. */
const AIR = 0.25;
/** A column to write a number into, and a row to write in. */
const BLANK = { width: 15, height: 7.5 };

/** As wide as `width`, in a size no larger than `style`'s in which no word is broken. */
export function tableBlock(table: Table, width: number, style: Style, fonts: Fonts): Block {
  return framed(table, table.rows, isHeaded(table), width, columnsOf(table, width, style, fonts), fonts);
}

/** One of a table's rows as it stands below others, and at the top of a column, under the head. */
export interface RowBlocks {
  readonly below: Block;
  readonly atTop: Block;
}

/** The same table row by row, for what no column holds whole; its columns are those of the whole. */
export function tableRows(table: Table, width: number, style: Style, fonts: Fonts): readonly RowBlocks[] {
  const columns = columnsOf(table, width, style, fonts);
  const headed = isHeaded(table);
  return table.rows.map((row, i) => {
    const atTop = framed(table, [row], headed, width, columns, fonts);
    return { atTop, below: i === 0 || !headed ? atTop : framed(table, [row], false, width, columns, fonts) };
  });
}

const isHeaded = ({ head }: Table): boolean => head.some((text) => text !== '');

function framed(
  { head, rowHeight }: Table,
  own: Table['rows'],
  headed: boolean,
  width: number,
  { widths, own: style }: Columns,
  fonts: Fonts,
): Block {
  const lefts = widths.map((_, i) => widths.slice(0, i).reduce((sum, w) => sum + w, 0));
  const row = (cells: readonly string[], of: Style): TextBlock =>
    level(
      cells.map((text, i) => {
        const room = Math.max(1, widths[i]! - 2 * PAD);
        return [lefts[i]! + PAD, numeralCell(paragraph(text, room, of, fonts), fonts)];
      }),
    );
  const rows: { readonly words: TextBlock; readonly y: number; readonly down: number }[] = [];
  let y = 0;
  const add = (words: TextBlock, least: number): void => {
    const height = Math.max(least, words.height + 2 * AIR * style.size);
    // In the middle by its capitals: what hangs below a line is not counted.
    rows.push({ words, y, down: y + (height - words.height + depthOf(style, fonts)) / 2 });
    y += height;
  };
  if (headed) add(row(head, inBold(style)), 0);
  for (const cells of own) add(row(cells, style), rowHeight ?? BLANK.height);
  return blockOf({ width, height: y }, () => [
    frame(width, y),
    ...rows.flatMap(({ words, y: above, down }) => [
      ...(above > 0 ? [rule('frame', 0, width, above)] : []),
      ...itemsAt(words, 0, down),
    ]),
    ...lefts.slice(1).map((x): Item => ({ kind: 'line', pen: 'frame', from: point(x, 0), to: point(x, y) })),
  ]);
}

/** A number that stands alone in its cell tells which way up it is read. */
function numeralCell(cell: TextBlock, fonts: Fonts): TextBlock {
  const bars = cell.items.flatMap((item) => (item.kind === 'text' ? underline(item, fonts) : []));
  return bars.length === 0 ? cell : { ...cell, items: [...cell.items, ...bars] };
}

interface Columns {
  readonly widths: readonly number[];
  readonly own: Style;
}

function columnsOf(table: Table, width: number, style: Style, fonts: Fonts): Columns {
  const { head, rows, widths } = table;
  if (widths !== undefined) {
    const total = widths.reduce((sum, w) => sum + w, 0);
    const given = widths.map((w) => (w * width) / total);
    // No word is broken.
    const isWhole = (own: Style, cells: readonly string[]): boolean =>
      cells.every((text, i) => text.split(' ').every((word) => widthOf(word, own, fonts) <= given[i]! - 2 * PAD));
    const steps = stepsDown(style);
    const own = steps.find((each) => isWhole(inBold(each), head) && rows.every((row) => isWhole(each, row)));
    return { widths: given, own: own ?? steps.at(-1)! };
  }
  const isBlank = head.map((_, column) => rows.every((cells) => cells[column] === ''));
  const fixed = isBlank.filter(Boolean).length * BLANK.width;
  const room = width - 2 * PAD * head.length - fixed;
  const needs = (own: Style): readonly number[] =>
    head.map((title, column) => {
      if (isBlank[column]) return 0;
      const cells = rows.map((each) => widthOf(each[column] ?? '', own, fonts));
      return Math.max(widthOf(title, inBold(own), fonts), ...cells);
    });
  const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);
  const tried = stepsDown(style).map((own) => ({ own, needed: needs(own) }));
  const { own, needed } = tried.find((each) => sum(each.needed) <= room) ?? tried.at(-1)!;
  const k = Math.min(1, room / Math.max(1e-9, sum(needed)));
  const spare = (room - sum(needed) * k) / head.length;
  return { own, widths: needed.map((w, i) => (isBlank[i] ? BLANK.width : w * k) + 2 * PAD + spare) };
}
