import type { Item, TextItem } from '../drawing/model.ts';
import { type Quarter, turnedItem } from '../drawing/turned.ts';
import { metrics, textBox, textWidth } from '../fonts/measure.ts';
import type { Fonts, Weight } from '../fonts/model.ts';
import { type Box, box, union } from '../geometry/box.ts';
import type { Point, Size } from '../geometry/point.ts';

/** Items that move as one; top left at 0 0, mm. */
export interface Block extends Size {
  readonly items: readonly Item[];
  /** The name of the group that each item belongs to, in a drawing that has several. */
  readonly groups?: readonly string[];
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

export interface Line extends Words {
  readonly group: string;
}

/** From base line to base line of words among lines, em. */
const TIGHT = 1.22;

/** Lines below each other, flush left, no larger than their ink: for words that find their place among lines. */
export function labelBlock(lines: readonly Line[], fonts: Fonts): Block {
  let y = 0;
  const items = lines.map((line) => {
    y += TIGHT * line.size;
    return words(line, { x: 0, y });
  });
  // Some characters reach above the capitals or below the descenders: what counts is what is inked.
  const ink = union(items.map((item) => textBox(item, fonts)));
  return {
    width: ink.width,
    height: ink.height,
    items: shifted(items, { x: -ink.x, y: -ink.y }),
    groups: lines.map(({ group }) => group),
  };
}

/** How the parts of a row lie to one another. */
type Level = 'top' | 'middle';

/** Two blocks side by side. */
export function beside(a: Block, b: Block, gap: number, level: Level = 'top'): Block {
  const height = Math.max(a.height, b.height);
  const down = (block: Block): number => (level === 'top' ? 0 : (height - block.height) / 2);
  return joined({ width: a.width + gap + b.width, height }, [
    [a, { x: 0, y: down(a) }],
    [b, { x: a.width + gap, y: down(b) }],
  ]);
}

/** Two blocks below each other, flush left. */
export function below(a: Block, b: Block, gap: number): Block {
  return joined({ width: Math.max(a.width, b.width), height: a.height + gap + b.height }, [
    [a, { x: 0, y: 0 }],
    [b, { x: 0, y: a.height + gap }],
  ]);
}

function joined(size: Size, parts: readonly (readonly [block: Block, at: Point])[]): Block {
  const items = parts.flatMap(([block, at]) => shifted(block.items, at));
  const groups = parts.flatMap(([{ groups: own }]) => own ?? []);
  return { ...size, items, ...(groups.length === items.length && groups.length > 0 ? { groups } : {}) };
}

export function shifted(items: readonly Item[], by: Point): readonly Item[] {
  return by.x === 0 && by.y === 0 ? items : items.map((item) => turnedItem(item, 0, by));
}

/** The size of a block after quarter turns. */
export function turnedSize({ width, height }: Size, quarter: Quarter): Size {
  return quarter % 2 === 0 ? { width, height } : { width: height, height: width };
}

/** Turned by quarters clockwise, its top left then at `at`. */
export function turnedBlock(block: Block, quarter: Quarter, at: Point = { x: 0, y: 0 }): Block {
  const { width, height } = block;
  const by: Readonly<Record<Quarter, Point>> = {
    0: at,
    1: { x: at.x + height, y: at.y },
    2: { x: at.x + width, y: at.y + height },
    3: { x: at.x, y: at.y + width },
  };
  return {
    ...block,
    ...turnedSize(block, quarter),
    items: block.items.map((item) => turnedItem(item, quarter, by[quarter])),
  };
}

export const boxAt = ({ width, height }: Size, at: Point): Box => box(at.x, at.y, width, height);
