import type { Item, TextItem } from '../drawing/model.ts';
import { type Quarter, turnedItem, turnedPoint } from '../drawing/turned.ts';
import { textBox } from '../fonts/measure.ts';
import type { Fonts, Weight } from '../fonts/model.ts';
import { type Box, box, union } from '../geometry/box.ts';
import type { Point, Size } from '../geometry/point.ts';

/** Words and signs that move as one: upright, top left at 0 0, each item with the name of the group it belongs to. */
export interface Block extends Size {
  readonly parts: readonly { readonly group: string; readonly item: Item }[];
}

export interface Line {
  readonly group: string;
  readonly text: string;
  /** Em size, mm. */
  readonly size: number;
  readonly weight: Weight;
}

/** From base line to base line, em. */
const LEADING = 1.22;

/** Lines of text, set below each other, flush left. */
export function textBlock(lines: readonly Line[], fonts: Fonts): Block {
  let y = 0;
  const parts = lines.map((line) => {
    y += LEADING * line.size;
    return { group: line.group, item: textItem(line.text, { x: 0, y }, line.size, line.weight) };
  });
  // Some characters reach above the capitals or below the descenders: what counts is what is inked.
  const ink = union(parts.map(({ item }) => textBox(item, fonts)));
  const shift = { x: -ink.x, y: -ink.y };
  return {
    width: ink.width,
    height: ink.height,
    parts: parts.map(({ group, item }) => ({ group, item: turnedItem(item, 0, shift) })),
  };
}

function textItem(text: string, at: Point, size: number, weight: Weight): TextItem {
  return { kind: 'text', text, at, anchor: 'start', size, weight, turn: 0, colour: 0 };
}

/** Side by side, `gap` mm apart, tops level. */
export function beside(first: Block, second: Block, gap: number): Block {
  const shift = { x: first.width + gap, y: 0 };
  return {
    width: first.width + gap + second.width,
    height: Math.max(first.height, second.height),
    parts: [...first.parts, ...second.parts.map(({ group, item }) => ({ group, item: turnedItem(item, 0, shift) }))],
  };
}

/** The size of a block after quarter turns. */
export function turnedSize(block: Size, quarter: Quarter): Size {
  return quarter % 2 === 0 ? block : { width: block.height, height: block.width };
}

/** The block turned so that it fills the box of `turnedSize` whose top left is `at`. */
export function placed(block: Block, quarter: Quarter, at: Point): Block['parts'] {
  const far = turnedPoint({ x: block.width, y: block.height }, quarter);
  const by = { x: at.x - Math.min(0, far.x), y: at.y - Math.min(0, far.y) };
  return block.parts.map(({ group, item }) => ({ group, item: turnedItem(item, quarter, by) }));
}

export function blockBox(block: Block, quarter: Quarter, at: Point): Box {
  const size = turnedSize(block, quarter);
  return box(at.x, at.y, size.width, size.height);
}
