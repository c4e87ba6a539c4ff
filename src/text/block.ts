import type { Item, TextItem } from '../drawing/model.ts';
import { type Quarter, turnedItem } from '../drawing/turned.ts';
import { metrics, textBox, textWidth } from '../fonts/measure.ts';
import type { Fonts, Weight } from '../fonts/model.ts';
import { type Box, box } from '../geometry/box.ts';
import type { Point, Size } from '../geometry/point.ts';

/** Items that move as one; top left at 0 0, mm. */
export interface Block extends Size {
  readonly items: readonly Item[];
}

export interface Words {
  readonly text: string;
  /** Em, mm. */
  readonly size: number;
  readonly weight?: Weight;
}

/** A line of text whose base line starts, has its middle or ends at `at`. */
export function words(
  { text, size, weight = 'regular' }: Words,
  at: Point,
  anchor: TextItem['anchor'] = 'start',
  turn = 0,
): TextItem {
  return { kind: 'text', text, at, anchor, size, weight, turn, colour: 0 };
}

/** From the base line to the highest ink of a text, and at least to the top of small letters' stems; em. */
export function rise(text: string, weight: Weight, fonts: Fonts): number {
  return -textBox({ text: `h${text}`, at: { x: 0, y: 0 }, anchor: 'start', size: 1, weight, turn: 0 }, fonts).y;
}

const LEADING = 1.3;

/** Lines below each other, flush left. */
export function linesBlock(lines: readonly Words[], fonts: Fonts): Block {
  const items: Item[] = [];
  let [y, width, hang] = [0, 0, 0];
  lines.forEach((line, i) => {
    const weight = line.weight ?? 'regular';
    y += (i === 0 ? rise(line.text, weight, fonts) : LEADING) * line.size;
    hang = metrics(weight, fonts).descender * line.size;
    items.push(words(line, { x: 0, y }));
    width = Math.max(width, textWidth(line.text, weight, line.size, fonts));
  });
  return { width, height: y + hang, items };
}

/** Two blocks side by side, their middles level. */
export function besideEachOther(a: Block, b: Block, gap: number): Block {
  const height = Math.max(a.height, b.height);
  return {
    width: a.width + gap + b.width,
    height,
    items: [
      ...shifted(a.items, { x: 0, y: (height - a.height) / 2 }),
      ...shifted(b.items, { x: a.width + gap, y: (height - b.height) / 2 }),
    ],
  };
}

/** Two blocks below each other, flush left. */
export function belowEachOther(a: Block, b: Block, gap: number): Block {
  return {
    width: Math.max(a.width, b.width),
    height: a.height + gap + b.height,
    items: [...a.items, ...shifted(b.items, { x: 0, y: a.height + gap })],
  };
}

export function shifted(items: readonly Item[], by: Point): readonly Item[] {
  return items.map((item) => turnedItem(item, 0, by));
}

/** Turned by quarters clockwise, its top left at 0 0 again. */
export function turnedBlock(block: Block, quarter: Quarter): Block {
  const { width, height } = block;
  const by: Readonly<Record<Quarter, Point>> = {
    0: { x: 0, y: 0 },
    1: { x: height, y: 0 },
    2: { x: width, y: height },
    3: { x: 0, y: width },
  };
  return {
    width: quarter % 2 === 0 ? width : height,
    height: quarter % 2 === 0 ? height : width,
    items: block.items.map((item) => turnedItem(item, quarter, by[quarter])),
  };
}

export const boxAt = ({ width, height }: Size, at: Point): Box => box(at.x, at.y, width, height);
