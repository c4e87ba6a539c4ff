import type { Item } from '../drawing/model.ts';
import { metrics, textWidth, wrap } from '../fonts/measure.ts';
import type { Fonts } from '../fonts/model.ts';
import { type Box, bottom, box } from '../geometry/box.ts';
import { type Block, rise, shifted, words } from './block.ts';

/** What runs down the columns of the first sheet. */
export type Entry =
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'text'; readonly text: string; readonly bold?: boolean }
  | { readonly kind: 'step'; readonly number: number; readonly text: string }
  /** A name and its value, the value on a stop of its own. */
  | { readonly kind: 'row'; readonly name: string; readonly value: string }
  /** A stretch of a pen's line and what it means. */
  | { readonly kind: 'legend'; readonly pen: string; readonly text: string }
  | { readonly kind: 'block'; readonly block: Block };

/** Em sizes of the body, mm, the largest first; the smallest is still read at arm's length. */
const BODIES = [3.6, 3.4, 3.2] as const;
const HEADING = 1.34;
const LEADING = 1.27;
const SAMPLE = 16;

/** Entries set into columns: `pages[i]` are the items of the page that the column belonged to. */
export interface Flowed {
  readonly pages: readonly (readonly Item[])[];
  /** Where the text ends in the last column that was used. */
  readonly end: { readonly page: number; readonly y: number };
}

/** Columns in the order of reading; more are asked for when they are full. */
export interface Columns {
  readonly first: readonly Box[];
  /** The columns of page 2, 3 … */
  readonly next: readonly Box[];
}

/** On the fewest pages; if it can be, with lists of short lines whole, then in the largest size. */
export function flow(entries: readonly Entry[], columns: Columns, fonts: Fonts): Flowed {
  let best: Flowed | undefined;
  for (const whole of [true, false]) {
    for (const body of BODIES) {
      const tried = flowAt(entries, columns, body, whole, fonts);
      if (best === undefined || tried.pages.length < best.pages.length) best = tried;
      if (best.pages.length === 1) return best;
    }
  }
  return best!;
}

/** Sets entries one below the other, a heading never alone at the foot of a column; goes on to further pages where they are full. */
function flowAt(entries: readonly Entry[], columns: Columns, body: number, whole: boolean, fonts: Fonts): Flowed {
  const pages: Item[][] = [[]];
  let boxes = columns.first;
  let column = 0;
  let y = boxes[0]!.y;
  const advance = (): void => {
    column++;
    if (column >= boxes.length) {
      pages.push([]);
      boxes = columns.next;
      column = 0;
    }
    y = boxes[column]!.y;
  };
  /** By width, entry by entry: each is asked for more than once. */
  const blocks = new Map<number, Block[]>();
  const blockOf = (index: number, width: number): Block => {
    const known = blocks.get(width) ?? [];
    blocks.set(width, known);
    known[index] ??= entryBlock(entries[index]!, width, body, fonts);
    return known[index];
  };
  const tallest = Math.max(...columns.next.map((area) => area.height));
  /** What must not be parted from an entry: a heading's first paragraph, or its whole list of short lines. */
  const bound = (index: number, width: number): number => {
    const next = entries[index + 1];
    if (entries[index]!.kind !== 'heading' || next === undefined) return 0;
    const first = 0.4 * body + blockOf(index + 1, width).height;
    let list = first;
    for (let i = index + 2; isShort(next) && entries[i] !== undefined && isShort(entries[i]!); i++) {
      list += 0.4 * body + blockOf(i, width).height;
    }
    return blockOf(index, width).height + list > tallest || !whole ? first : list;
  };
  const gapAbove = (index: number): number => {
    const { kind } = entries[index]!;
    if (kind === 'heading') return 1.1 * body;
    return (kind === 'text' && entries[index - 1]?.kind === 'text' ? 0.55 : 0.36) * body;
  };
  const place = (index: number): void => {
    for (;;) {
      const area = boxes[column]!;
      const fresh = y === area.y;
      const gap = fresh ? 0 : gapAbove(index);
      const block = blockOf(index, area.width);
      const fits =
        y + gap + block.height + bound(index, area.width) <= bottom(area) + 1e-6 && block.width <= area.width + 1e-6;
      // What no column has room for stands in the tallest.
      if (fits || (fresh && area.height >= tallest - 1e-6)) {
        pages.at(-1)!.push(...shifted(block.items, { x: area.x, y: y + gap }));
        y += gap + block.height;
        return;
      }
      advance();
    }
  };
  entries.forEach((_, i) => {
    place(i);
  });
  return { pages, end: { page: pages.length - 1, y } };
}

const isShort = ({ kind }: Entry): boolean => kind === 'row' || kind === 'legend';

/** The lines of one entry, as wide as its column; top left at 0 0. */
function entryBlock(entry: Entry, width: number, body: number, fonts: Fonts): Block {
  switch (entry.kind) {
    case 'heading':
      return paragraph(entry.text, HEADING * body, 'bold', 0, width, fonts);
    case 'text':
      return paragraph(entry.text, body, entry.bold === true ? 'bold' : 'regular', 0, width, fonts);
    case 'step': {
      const number = `${entry.number}`;
      const indent = textWidth('00 ', 'bold', body, fonts);
      const block = paragraph(entry.text, body, 'regular', indent, width, fonts);
      return {
        ...block,
        items: [words({ text: number, size: body, weight: 'bold' }, { x: 0, y: block.base }), ...block.items],
      };
    }
    case 'row': {
      const stop = Math.max(Math.min(26, width * 0.36), textWidth(`${entry.name} `, 'bold', body, fonts));
      const block = paragraph(entry.value, body, 'regular', stop, width, fonts);
      return {
        ...block,
        items: [words({ text: entry.name, size: body, weight: 'bold' }, { x: 0, y: block.base }), ...block.items],
      };
    }
    case 'legend': {
      const block = paragraph(entry.text, body, 'regular', SAMPLE + 3, width, fonts);
      const y = block.base - (metrics('regular', fonts).capHeight / 2) * body;
      return {
        ...block,
        items: [{ kind: 'line', pen: entry.pen, from: { x: 0.4, y }, to: { x: SAMPLE, y } }, ...block.items],
      };
    }
    case 'block':
      return entry.block;
    default: {
      const never: never = entry;
      throw new TypeError(`unknown entry ${JSON.stringify(never)}`);
    }
  }
}

interface Paragraph extends Block {
  /** Where its first base line runs. */
  readonly base: number;
}

function paragraph(
  text: string,
  size: number,
  weight: 'regular' | 'bold',
  indent: number,
  width: number,
  fonts: Fonts,
): Paragraph {
  const lines = wrapped(text, weight, size, width - indent, fonts);
  const base = rise(lines[0] ?? '', weight, fonts) * size;
  const last = base + (lines.length - 1) * LEADING * size;
  const items = lines.map((line, i) =>
    words({ text: line, size, weight }, { x: indent, y: base + i * LEADING * size }),
  );
  return { width, height: last + metrics(weight, fonts).descender * size, items, base };
}

const WRAPPED = new WeakMap<Fonts, Map<string, readonly string[]>>();
const MOST_WRAPPED = 1000;

/** The first sheets of a job's patterns say much the same. */
function wrapped(
  text: string,
  weight: 'regular' | 'bold',
  size: number,
  width: number,
  fonts: Fonts,
): readonly string[] {
  const all = WRAPPED.get(fonts) ?? new Map<string, readonly string[]>();
  WRAPPED.set(fonts, all);
  const key = `${weight} ${size} ${width} ${text}`;
  const known = all.get(key) ?? wrap(text, weight, size, width, fonts);
  if (all.size >= MOST_WRAPPED) all.clear();
  all.set(key, known);
  return known;
}

/** An area in columns of equal width. */
export function columnsOf(area: Box, count: number, gap: number): readonly Box[] {
  const width = (area.width - gap * (count - 1)) / count;
  return Array.from({ length: count }, (_, i) => box(area.x + i * (width + gap), area.y, width, area.height));
}
