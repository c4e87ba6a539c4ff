import type { Rotation } from '../drawing/document.ts';
import type { Item } from '../drawing/model.ts';
import { turnedItem } from '../drawing/turned.ts';
import { textBox } from '../fonts/measure.ts';
import type { Fonts } from '../fonts/model.ts';
import { type Box, box, union } from '../geometry/box.ts';
import type { Point, Size } from '../geometry/point.ts';
import { once } from '../problems/once.ts';
import { set, widthOf } from './line.ts';
import { LEADINGS, type Style } from './styles.ts';
import { wrap } from './wrap.ts';

/** Items that move as one; top left at 0 0, mm. */
export interface Block extends Size {
  readonly items: readonly Item[];
  /** The name of the group that each item belongs to, in a drawing that has several. */
  readonly groups?: readonly string[];
}

/** A block whose items are made when they are asked for: words are tried in more columns and sizes than are printed. */
export function blockOf({ width, height }: Size, make: () => readonly Item[]): Block {
  const items = once(make);
  return {
    width,
    height,
    get items() {
      return items();
    },
  };
}

/** Of blocks that are made of others, what is in them from a point on. A copy with other items is not among them. */
const COMPOSED = new WeakMap<Block, (x: number, y: number) => readonly Item[]>();

/** The items of a block whose top left lies at a point. What lies in it block within block is moved once. */
export function itemsAt(block: Block, x: number, y: number): readonly Item[] {
  const place = COMPOSED.get(block);
  return place === undefined || (x === 0 && y === 0) ? moved(block.items, x, y) : place(x, y);
}

/** A block of others, as `place` puts them from a point on by `itemsAt`. */
export function composed<T extends Size>(size: T, place: (x: number, y: number) => readonly Item[]): T & Block {
  const items = once(() => place(0, 0));
  const block = {
    ...size,
    get items() {
      return items();
    },
  };
  COMPOSED.set(block, place);
  return block;
}

export interface Line {
  readonly text: string;
  readonly style: Style;
  readonly group?: string;
  /** Broken into more lines where it is wider. */
  readonly width?: number;
}

/** Lines below each other, flush left or about their middle, no larger than their ink: words that find their place among other things. */
export function labelBlock(given: readonly Line[], fonts: Fonts, anchor: 'start' | 'middle' = 'start'): Block {
  const lines = given.flatMap((line) => brokenLine(line, fonts));
  let y = 0;
  const items = lines.map(({ text, style }) => {
    y += LEADINGS.tight * style.size;
    return set(text, 0, y, style, anchor);
  });
  // Some characters reach above the capitals or below the descenders: what counts is what is inked.
  const ink = union(items.map((item) => textBox(item, fonts)));
  const groups = lines.flatMap(({ group }) => group ?? []);
  return {
    width: ink.width,
    height: ink.height,
    items: moved(items, -ink.x, -ink.y),
    ...(groups.length > 0 ? { groups } : {}),
  };
}

function brokenLine(line: Line, fonts: Fonts): readonly Line[] {
  const { text, style, width } = line;
  if (width === undefined) return [line];
  return wrap(text, width, (part) => widthOf(part, style, fonts)).map((part) => ({ ...line, text: part }));
}

/** Two blocks side by side, their tops or their middles level. */
export function beside(a: Block, b: Block, gap: number, level: 'top' | 'middle' = 'top'): Block {
  const height = Math.max(a.height, b.height);
  const down = (block: Block): number => (level === 'top' ? 0 : (height - block.height) / 2);
  return joined({ width: a.width + gap + b.width, height }, [
    [a, { x: 0, y: down(a) }],
    [b, { x: a.width + gap, y: down(b) }],
  ]);
}

/** Blocks below each other, flush left or with their middles in line. */
export function stacked(blocks: readonly Block[], gap: number, align: 'left' | 'middle' = 'left'): Block {
  const width = Math.max(0, ...blocks.map((block) => block.width));
  let height = 0;
  const parts = blocks.map((block, i) => {
    const y = i === 0 ? 0 : height + gap;
    height = y + block.height;
    return [block, { x: align === 'left' ? 0 : (width - block.width) / 2, y }] as const;
  });
  return joined({ width, height }, parts);
}

/** Blocks that together make one of a size, each with its top left at a point. */
export function joined(size: Size, parts: readonly (readonly [block: Block, at: Point])[]): Block {
  const made = composed(size, (x, y) => parts.flatMap(([block, at]) => itemsAt(block, x + at.x, y + at.y)));
  const groups = parts.flatMap(([{ groups: own }]) => own ?? []);
  return groups.length > 0 && groups.length === made.items.length ? { ...made, groups } : made;
}

/** The block as one of a group. */
export const inGroup = (block: Block, group: string): Block => ({ ...block, groups: block.items.map(() => group) });

/** The block with more of it around: white, or room for what hangs over. */
export const padded = (block: Block, above: number, below = 0): Block =>
  joined({ width: block.width, height: above + block.height + below }, [[block, { x: 0, y: above }]]);

export const moved = <T extends Item>(items: readonly T[], x: number, y: number): readonly Item[] =>
  x === 0 && y === 0 ? items : items.map((item) => turnedItem(item, 0, { x, y }));

/** The size of a block after quarter turns. */
export function turnedSize({ width, height }: Size, rotation: Rotation): Size {
  return rotation % 180 === 0 ? { width, height } : { width: height, height: width };
}

/** A block turned clockwise, its top left then at `at`. */
export function turnedBlock(block: Block, rotation: Rotation, at: Point = { x: 0, y: 0 }): Block {
  const { width, height } = block;
  const by: Readonly<Record<Rotation, Point>> = {
    0: at,
    90: { x: at.x + height, y: at.y },
    180: { x: at.x + width, y: at.y + height },
    270: { x: at.x, y: at.y + width },
  };
  return {
    ...block,
    ...turnedSize(block, rotation),
    items: block.items.map((item) => turnedItem(item, rotation, by[rotation])),
  };
}

export const boxAt = ({ width, height }: Size, at: Point): Box => box(at.x, at.y, width, height);
