import type { Item } from '../drawing/model.ts';
import type { Fonts } from '../fonts/model.ts';
import { point } from '../geometry/point.ts';
import { type Block, itemsAt, stacked } from './block.ts';
import { boxItem, frame, rule } from './figures.ts';
import type { Density, Piece } from './flow.ts';
import { capHeight, depthOf, set, widthOf } from './line.ts';
import { headline, level, paragraph, type TextBlock, typed } from './paragraph.ts';
import { tickBlock } from './signs.ts';
import { HEAD, inBold, NAME, pitch, type Style } from './styles.ts';
import { type RowBlocks, type Table, tableBlock, tableRows } from './table.ts';

/** What runs down the columns of a sheet, in the order of reading: what stands there, not how it is set. */
export type Entry =
  | { readonly kind: 'title'; readonly text: string }
  | { readonly kind: 'heading'; readonly text: string }
  /** A heading of the work's parts, numbered, under a rule; `aside` is said behind it where there is room, else below. */
  | {
      readonly kind: 'section';
      readonly number?: number;
      /** Of the board that the part is about. */
      readonly colour?: string;
      readonly text: string;
      readonly aside?: string;
    }
  | { readonly kind: 'text'; readonly text: string; readonly bold?: boolean }
  | { readonly kind: 'step'; readonly number: number; readonly text: string }
  /** A thing to do, with its square to tick. */
  | { readonly kind: 'action'; readonly text: string }
  /** A name and its value, the value on a stop of its own. */
  | { readonly kind: 'row'; readonly name: string; readonly value: string }
  /** A stretch of a pen's line and what it means. */
  | { readonly kind: 'legend'; readonly pen: string; readonly text: string }
  /** Lines of a file, as they are to be typed. */
  | { readonly kind: 'file'; readonly lines: readonly string[] }
  | ({ readonly kind: 'table' } & Table)
  /** Whatever else stands in a column. */
  | { readonly kind: 'figure'; readonly make: (width: number, density: Density) => Block };

/** Sections numbered in their order. */
export function numbered(entries: readonly Entry[]): readonly Entry[] {
  let number = 0;
  return entries.map((entry) => (entry.kind === 'section' ? { ...entry, number: ++number } : entry));
}

/** White above an entry, em of the running words. */
const ABOVE: Readonly<Record<Entry['kind'], number>> = {
  title: 0,
  heading: 1.1,
  section: 1.7,
  text: 0.55,
  step: 0.4,
  action: 0.5,
  row: 0.4,
  legend: 0.4,
  file: 0.7,
  table: 0.7,
  figure: 0.6,
};
const BELOW_HEADING = 0.4;
const BELOW_SECTION = 0.75;

const isHeading = ({ kind }: Entry): boolean => kind === 'heading' || kind === 'section';
/** Lists of short lines are better not parted from their heading. */
const isShort = ({ kind }: Entry): boolean => kind === 'row' || kind === 'legend';

/** Entries as pieces that flow: a heading never without what follows it, a section or a list of short lines whole where it can be. */
export function piecesOf(entries: readonly Entry[], fonts: Fonts): readonly Piece[] {
  return entries.map((entry, i): Piece => {
    const before = entries[i - 1];
    const under = before === undefined ? undefined : isHeading(before) ? before : undefined;
    const behind = entries.slice(i + 1);
    const list =
      entry.kind === 'section'
        ? behind.findIndex((each) => each.kind === 'section')
        : behind.findIndex((each) => !isShort(each));
    const all = list < 0 ? behind.length : list;
    const piece: Piece = {
      above: under === undefined ? ABOVE[entry.kind] : under.kind === 'section' ? BELOW_SECTION : BELOW_HEADING,
      bound: isHeading(entry) ? Math.min(1, behind.length) : 0,
      whole: isHeading(entry) ? all : 0,
      make: (width, density) => entryBlock(entry, width, density, fonts),
    };
    return entry.kind === 'table' ? { ...piece, parts: rowPieces(entry, piece.above, fonts) } : piece;
  });
}

/** A table row by row, each under the one before or under the head again. */
function rowPieces(table: Table, above: number, fonts: Fonts): readonly Piece[] {
  const made = new Map<string, readonly RowBlocks[]>();
  const rows = (width: number, { text }: Density): readonly RowBlocks[] => {
    const key = `${width} ${text.size}`;
    const known = made.get(key) ?? tableRows(table, width, text, fonts);
    made.set(key, known);
    return known;
  };
  return table.rows.map((_, i) => ({
    above: i === 0 ? above : 0,
    // The first is not left alone below a heading, nor the last on a page of its own.
    bound: i === 0 || i === table.rows.length - 2 ? Math.min(1, table.rows.length - 1) : 0,
    whole: 0,
    make: (width, density) => rows(width, density)[i]!.below,
    atTop: (width, density) => rows(width, density)[i]!.atTop,
  }));
}

/** One entry, as wide as its column; top left at 0 0. */
function entryBlock(entry: Entry, width: number, density: Density, fonts: Fonts): Block {
  const { text } = density;
  switch (entry.kind) {
    case 'title':
      return headline(entry.text, width, NAME, fonts);
    case 'heading':
      return paragraph(entry.text, width, headingStyle(text), fonts);
    case 'section':
      return sectionBlock(entry, width, text, fonts);
    case 'text':
      return paragraph(entry.text, width, entry.bold === true ? inBold(text) : text, fonts);
    case 'step':
      return named(`${entry.number}`, entry.text, widthOf('00 ', inBold(text), fonts), width, text, fonts);
    case 'action':
      return actionBlock(entry.text, width, text, fonts);
    case 'row':
      return named(entry.name, entry.value, Math.min(26, width * 0.36), width, text, fonts);
    case 'legend':
      return legendBlock(entry.pen, entry.text, width, text, fonts);
    case 'file':
      return fileBlock(entry.lines, width, text, fonts);
    case 'table':
      return tableBlock(entry, width, text, fonts);
    case 'figure':
      return entry.make(width, density);
    default: {
      const never: never = entry;
      throw new TypeError(`unknown entry ${JSON.stringify(never)}`);
    }
  }
}

/** Headings are as large as running words at most where those are large themselves. */
const headingStyle = (text: Style): Style => (text.size >= HEAD.size ? inBold(text) : HEAD);

/** A word and what is said of it, in two columns; the value moves aside for a word that is wider than its stop. */
function named(name: string, value: string, stop: number, width: number, text: Style, fonts: Fonts): TextBlock {
  const bold = inBold(text);
  const own = Math.max(stop, Math.min(widthOf(`${name} `, bold, fonts), width * 0.6));
  return level([
    [0, paragraph(name, own - 0.2 * text.size, bold, fonts)],
    [0, paragraph(value, width, text, fonts, own)],
  ]);
}

function actionBlock(words: string, width: number, style: Style, fonts: Fonts): Block {
  const square = tickBlock(style, fonts);
  return level([
    [0, square],
    [0, paragraph(words, width, style, fonts, square.width + 0.5 * style.size)],
  ]);
}

const SAMPLE = 16;

function legendBlock(pen: string, words: string, width: number, style: Style, fonts: Fonts): Block {
  const part = paragraph(words, width, style, fonts, SAMPLE + 3);
  const y = part.base - capHeight(style, fonts) / 2;
  return { ...part, items: [{ kind: 'line', pen, from: point(0.4, y), to: point(SAMPLE, y) }, ...part.items] };
}

/** In a frame. Spaces at the front of a line are kept as an indent; a line that is too long goes on below, further in. */
function fileBlock(lines: readonly string[], width: number, style: Style, fonts: Fonts): Block {
  const pad = 0.6 * style.size;
  const made = lines.map((line) => {
    const indent = pad + /^ */.exec(line)![0].length * 0.6 * style.size;
    return typed(line.trim(), width - pad, style, fonts, indent, 1.5 * style.size);
  });
  const text = stacked(made, pitch(style) - style.size);
  const height = text.height + 2 * pad;
  return {
    width,
    height,
    items: [frame(width, height), ...itemsAt(text, 0, pad)],
  };
}

const ABOVE_SECTION = 1.5;
/** Hangs from the end of a section's rule, above what is said behind its title: it takes no room from the words. */
const STRIP = { width: 22, height: 1.3 };
/** Its edge is a line of 0.15 mm, which is not to stand out of the sheet's margin. */
const HALF_EDGE = 0.075;

/** Number, title and what is said behind it; a title too long for the line goes on below, never cut. */
function sectionBlock(
  { number, colour, text, aside = '' }: Extract<Entry, { kind: 'section' }>,
  width: number,
  style: Style,
  fonts: Fonts,
): Block {
  const counted = number === undefined ? '' : `${number}`;
  const indent = counted === '' ? 0 : Math.max(widthOf(counted, HEAD, fonts), 0.9 * HEAD.size) + 1.8;
  const room = colour === undefined ? width : width - STRIP.width - 1;
  const title = paragraph(text, room, HEAD, fonts, indent);
  const base = ABOVE_SECTION + title.base;
  const items: Item[] = [
    rule('head', 0, width, 0),
    ...(counted === '' ? [] : [set(counted, 0, base, HEAD)]),
    ...(colour === undefined ? [] : [boxItem({ x: width - STRIP.width - HALF_EDGE, y: 0, ...STRIP }, colour, 'frame')]),
    ...itemsAt(title, 0, ABOVE_SECTION),
  ];
  const height = ABOVE_SECTION + title.height - depthOf(HEAD, fonts);
  if (aside === '') return { items, width, height };
  const behind = indent + widthOf(text, HEAD, fonts) + 2.2;
  const said = paragraph(aside, width, style, fonts);
  if (behind + widthOf(aside, style, fonts) <= width)
    return { items: [...items, ...itemsAt(said, behind, base - said.base)], width, height };
  const below = height + depthOf(HEAD, fonts) + 0.6;
  return { items: [...items, ...itemsAt(said, 0, below)], width, height: below + said.height };
}
