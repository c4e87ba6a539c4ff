import type { Item, TextItem } from '../../drawing/model.ts';
import { turnedItem } from '../../drawing/turned.ts';
import { metrics, textBox, textWidth, wrap } from '../../fonts/measure.ts';
import type { Fonts, Weight } from '../../fonts/model.ts';
import { type Box, bottom } from '../../geometry/box.ts';
import { polygon } from '../../geometry/path.ts';
import { point } from '../../geometry/point.ts';

/** What runs down a jig's sheet beside its figure. */
export type Entry =
  | { readonly kind: 'title'; readonly text: string }
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'text'; readonly text: string; readonly weight?: Weight }
  | { readonly kind: 'step'; readonly number: number; readonly text: string }
  /** Lines of a file, as they are to be typed. */
  | { readonly kind: 'file'; readonly lines: readonly string[] }
  | Table;

/** Cells that are empty are written into by hand. */
export interface Table {
  readonly kind: 'table';
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** Of the columns, relative to one another; as wide as their words without it. */
  readonly widths?: readonly number[];
  /** Room for a hand's writing, mm. */
  readonly rowHeight?: number;
}

/** Em sizes of running words, mm, the largest first: all are read at arm's length. */
const BODIES = [5.3, 4.8, 4.5, 4.2, 3.9, 3.6, 3.4, 3.2, 3] as const;
const LEADING = 1.28;
const SCALE = { title: 2.1, heading: 1.25 } as const;
/** Pen of tables and frames. */
export const FRAME_PEN = 'frame';

interface Piece {
  /** From 0 0. */
  readonly items: readonly Item[];
  readonly height: number;
}

export const steps = (texts: readonly string[]): readonly Entry[] =>
  texts.map((text, i) => ({ kind: 'step', number: i + 1, text }));

export function words(
  text: string,
  at: { readonly x: number; readonly y: number },
  size: number,
  options: { readonly weight?: Weight; readonly anchor?: TextItem['anchor']; readonly turn?: number } = {},
): TextItem {
  const { weight = 'regular', anchor = 'start', turn = 0 } = options;
  return { kind: 'text', text, at: { x: at.x, y: at.y }, anchor, size, weight, turn, colour: 0 };
}

/** From the base line to the top of h and l, which stand above capitals. */
const rise = (size: number, weight: Weight, fonts: Fonts): number =>
  -textBox({ text: 'h', at: { x: 0, y: 0 }, anchor: 'start', size, weight, turn: 0 }, fonts).y;

export const capHeight = (size: number, fonts: Fonts, weight: Weight = 'regular'): number =>
  metrics(weight, fonts).capHeight * size;

/**
 * Sets entries into boxes one after the other, in the largest size in which they all go in; what has no room goes on into
 * as many further pages as it takes, each with the boxes `more`. One list of items for each page.
 */
export function setEntries(
  entries: readonly Entry[],
  boxes: readonly Box[],
  more: readonly Box[],
  fonts: Fonts,
): readonly (readonly Item[])[] {
  let last: readonly (readonly Item[])[] = [[]];
  for (const body of BODIES) {
    last = setAt(entries, boxes, more, body, fonts);
    if (last.length === 1) return last;
  }
  return last;
}

function setAt(
  entries: readonly Entry[],
  boxes: readonly Box[],
  more: readonly Box[],
  body: number,
  fonts: Fonts,
): Item[][] {
  const pages: Item[][] = [[]];
  const queue = [...boxes];
  let area = queue.shift();
  let y = area?.y ?? 0;
  const advance = (): Box => {
    let next = queue.shift();
    if (next === undefined) {
      pages.push([]);
      queue.push(...more);
      next = queue.shift()!;
    }
    y = next.y;
    return next;
  };
  area ??= advance();
  entries.forEach((entry, i) => {
    const follows = entries[i + 1];
    for (let tries = 0; ; tries++) {
      const gap = y === area!.y ? 0 : gapAbove(entry, entries[i - 1], body);
      const piece = set(entry, area!.width, body, fonts);
      // A heading is never the last thing in a box.
      const bound =
        entry.kind === 'heading' && follows !== undefined ? set(follows, area!.width, body, fonts).height + body : 0;
      const fits = y + gap + piece.height + Math.min(bound, 150) <= bottom(area!) + 1e-6;
      if (fits || (y === area!.y && tries >= boxes.length + more.length)) {
        pages.at(-1)!.push(...piece.items.map((item) => shifted(item, area!.x, y + gap)));
        y += gap + piece.height;
        return;
      }
      area = advance();
    }
  });
  return pages;
}

function gapAbove(entry: Entry, before: Entry | undefined, body: number): number {
  if (entry.kind === 'heading') return 1.2 * body;
  if (entry.kind === 'table' || entry.kind === 'file') return 0.7 * body;
  const apart = before?.kind !== entry.kind;
  return (apart ? 0.8 : 0.42) * body;
}

function set(entry: Entry, width: number, body: number, fonts: Fonts): Piece {
  switch (entry.kind) {
    case 'title': {
      const size = Math.min(SCALE.title * body, width / textWidth(entry.text, 'bold', 1, fonts));
      return paragraph(entry.text, size, 'bold', 0, width, fonts);
    }
    case 'heading':
      return paragraph(entry.text, SCALE.heading * body, 'bold', 0, width, fonts);
    case 'text':
      return paragraph(entry.text, body, entry.weight ?? 'regular', 0, width, fonts);
    case 'step': {
      const indent = textWidth('00 ', 'bold', body, fonts);
      const piece = paragraph(entry.text, body, 'regular', indent, width, fonts);
      return {
        ...piece,
        items: [
          words(`${entry.number}`, point(0, rise(body, 'regular', fonts)), body, { weight: 'bold' }),
          ...piece.items,
        ],
      };
    }
    case 'file':
      return file(entry.lines, width, body, fonts);
    case 'table':
      return table(entry, width, body, fonts);
    default: {
      const never: never = entry;
      throw new TypeError(`unknown entry ${JSON.stringify(never)}`);
    }
  }
}

function paragraph(text: string, size: number, weight: Weight, indent: number, width: number, fonts: Fonts): Piece {
  const lines = wrap(text, weight, size, width - indent, fonts);
  const items = lines.map((line, i) =>
    words(line, point(indent, rise(size, weight, fonts) + i * LEADING * size), size, { weight }),
  );
  return {
    items,
    height: rise(size, weight, fonts) + (lines.length - 1) * LEADING * size + metrics(weight, fonts).descender * size,
  };
}

/** In a frame. Spaces at the front of a line are kept as an indent; a line that is too long goes on below, further in. */
function file(lines: readonly string[], width: number, body: number, fonts: Fonts): Piece {
  const size = 0.94 * body;
  const pad = 0.6 * body;
  const items: Item[] = [];
  let y = pad + capHeight(size, fonts);
  for (const line of lines) {
    const depth = /^ */.exec(line)![0].length;
    const indent = pad + depth * 0.62 * size;
    for (const [i, part] of wrap(line.trim(), 'regular', size, width - indent - pad - 1.5 * size, fonts).entries()) {
      items.push(words(part, point(indent + (i === 0 ? 0 : 1.5 * size), y), size));
      y += LEADING * size;
    }
  }
  const height = y - LEADING * size + metrics('regular', fonts).descender * size + pad;
  return { items: [frame(0, 0, width, height), ...items], height };
}

const PAD = 1.2;
/** A column to write a number into. */
const BLANK = 15;

/** Widths of columns and the size of words in them: as given, or as the words need, all words alike. */
function tableColumns(
  table: Table,
  width: number,
  body: number,
  fonts: Fonts,
): { readonly widths: readonly number[]; readonly size: number } {
  const { head, rows, widths } = table;
  if (widths !== undefined) {
    const total = widths.reduce((sum, w) => sum + w, 0);
    return { widths: widths.map((w) => (w * width) / total), size: body };
  }
  const blank = head.map((_, column) => rows.every((row) => row[column] === ''));
  const wide = head.map((title, column) => {
    const cells = rows.map((row) => textWidth(row[column] ?? '', column === 0 ? 'bold' : 'regular', body, fonts));
    return Math.max(textWidth(title, 'bold', body, fonts), ...cells);
  });
  const fixed = blank.filter(Boolean).length * BLANK;
  const needed = wide.reduce((sum, w, i) => (blank[i] ? sum : sum + w), 0);
  const room = width - 2 * PAD * head.length - fixed;
  const k = Math.min(1, room / needed);
  const spare = (room - needed * k) / head.length;
  return { widths: wide.map((w, i) => (blank[i] ? BLANK : w * k) + 2 * PAD + spare), size: body * k };
}

function table(given: Table, width: number, body: number, fonts: Fonts): Piece {
  const { head, rows, rowHeight = 7.5 } = given;
  const { widths, size } = tableColumns(given, width, body, fonts);
  const lefts = widths.map((_, i) => widths.slice(0, i).reduce((sum, w) => sum + w, 0));
  const headHeight = head.some((text) => text !== '') ? 1.6 * body : 0;
  const height = headHeight + rows.length * rowHeight;
  const items: Item[] = [frame(0, 0, width, height)];
  const cell = (text: string, column: number, middle: number, weight: Weight): void => {
    if (text === '') return;
    const fitted = Math.min(size, (widths[column]! - 2 * PAD) / textWidth(text, weight, 1, fonts));
    items.push(words(text, point(lefts[column]! + PAD, middle + capHeight(fitted, fonts) / 2), fitted, { weight }));
  };
  head.forEach((text, column) => {
    cell(text, column, headHeight / 2, 'bold');
  });
  rows.forEach((row, r) => {
    const y = headHeight + r * rowHeight;
    if (y > 0) items.push({ kind: 'line', pen: FRAME_PEN, from: point(0, y), to: point(width, y) });
    row.forEach((text, column) => {
      cell(text, column, y + rowHeight / 2, column === 0 ? 'bold' : 'regular');
    });
  });
  for (const x of lefts.slice(1)) items.push({ kind: 'line', pen: FRAME_PEN, from: point(x, 0), to: point(x, height) });
  return { items, height };
}

const frame = (x: number, y: number, width: number, height: number): Item => ({
  kind: 'path',
  pen: FRAME_PEN,
  paths: [polygon([point(x, y), point(x + width, y), point(x + width, y + height), point(x, y + height)])],
});

/** An item moved by x and y. */
export function shifted(item: Item, x: number, y: number): Item {
  return turnedItem(item, 0, { x, y });
}
