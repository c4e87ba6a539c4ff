import type { Item, PathItem, Pen, TextItem } from '../drawing/model.ts';
import { turnedItem } from '../drawing/turned.ts';
import { fraction } from '../fonts/fractions.ts';
import { metrics, textBox } from '../fonts/measure.ts';
import type { Fonts } from '../fonts/model.ts';
import { bottom, box } from '../geometry/box.ts';
import { polygon } from '../geometry/path.ts';
import { type Point, point } from '../geometry/point.ts';
import { mmFromPoints } from '../units/units.ts';
import { boxItem, capHeight, paragraph, SIZE, type Style, set, widthOf } from './type-scale.ts';

/**
 * How the sheets of the bench are set: black alone, since a grey is dithered by an office printer and lost under oily
 * fingers. The sizes are those of `type-scale.ts`; readings are seen at arm's length while a hand holds the guide.
 */
export const READING: Style = { size: mmFromPoints(28), weight: 'bold', colour: 0 };
export const BLANK: Style = { size: mmFromPoints(20), weight: 'bold', colour: 0 };
export const NAME: Style = { size: SIZE.title, weight: 'bold', colour: 0 };
export const HEAD: Style = { size: SIZE.intro, weight: 'bold', colour: 0 };
export const INTRO_IN_BLACK: Style = { size: SIZE.intro, weight: 'regular', colour: 0 };
export const TEXT: Style = { size: SIZE.body, weight: 'regular', colour: 0 };
export const BOLD: Style = { size: SIZE.body, weight: 'bold', colour: 0 };
export const FINE: Style = { size: SIZE.small, weight: 'regular', colour: 0 };

export const BENCH_PENS: Readonly<Record<string, Pen>> = {
  rule: { width: 0.12, colour: 0, dash: [], cap: 'butt' },
  head: { width: 0.5, colour: 0, dash: [], cap: 'butt' },
  tick: { width: 0.25, colour: 0, dash: [], cap: 'butt' },
  edge: { width: 0.35, colour: 0, dash: [], cap: 'butt' },
  cut: { width: 0.5, colour: 0, dash: [], cap: 'butt' },
  hidden: { width: 0.2, colour: 0, dash: [0.8, 0.8], cap: 'butt' },
  write: { width: 0.15, colour: 0, dash: [], cap: 'butt' },
};

/** Items with their top left at 0 0. */
export interface Part {
  readonly items: readonly Item[];
  readonly height: number;
}

export const moved = (items: readonly Item[], x: number, y: number): readonly Item[] =>
  items.map((item) => turnedItem(item, 0, { x, y }));

/** Parts below each other. */
export function stacked(parts: readonly Part[], gap: number): Part {
  const items: Item[] = [];
  let y = 0;
  parts.forEach((part, i) => {
    if (i > 0) y += gap;
    items.push(...moved(part.items, 0, y));
    y += part.height;
  });
  return { items, height: y };
}

/** How far a line reaches below its base line. */
export const depthOf = ({ weight, size }: Style, fonts: Fonts): number => metrics(weight, fonts).descender * size;

/** Lines of words; `base` is where the first of them stands. */
export interface TextPart extends Part {
  readonly base: number;
}

/**
 * Lines no wider than `width`, fractions set as fractions; from the tops of capitals to the descenders, or further where
 * a character of the first or the last line reaches further.
 */
export function textPart(text: string, width: number, style: Style, fonts: Fonts, indent = 0): TextPart {
  const cap = capHeight(style, fonts);
  const made = paragraph(fraction(text), indent, cap, width - indent, style, fonts);
  const inked = made.items.filter((item) => item.text.trim() !== '').map((item) => textBox(item, fonts));
  const above = Math.max(0, ...inked.map(({ y }) => -y));
  const height = Math.max(made.bottom + depthOf(style, fonts), ...inked.map(bottom));
  return { items: above === 0 ? made.items : moved(made.items, 0, above), height: height + above, base: cap + above };
}

/** Side by side at the given places, their first lines on one base line. */
export function level(parts: readonly (readonly [x: number, part: TextPart])[]): TextPart {
  const base = Math.max(...parts.map(([, part]) => part.base));
  return {
    items: parts.flatMap(([x, part]) => moved(part.items, x, base - part.base)),
    height: Math.max(...parts.map(([, part]) => part.height + base - part.base)),
    base,
  };
}

export const scaled = (style: Style, scale: number): Style => ({ ...style, size: style.size * scale });

/** An empty square to tick, its middle at the height of capitals of a line whose base line is at `y`. */
export function tickSquare(
  x: number,
  y: number,
  style: Style,
  fonts: Fonts,
): { readonly item: PathItem; readonly side: number } {
  const side = 1.15 * style.size;
  return { item: boxItem(box(x, y - (capHeight(style, fonts) + side) / 2, side, side), 1, 'tick'), side };
}

/** The cross in a square that `tickSquare` drew at the same place. */
export function crossIn(x: number, y: number, style: Style, fonts: Fonts): readonly Item[] {
  const { side } = tickSquare(x, y, style, fonts);
  const top = y - (capHeight(style, fonts) + side) / 2;
  const [a, b] = [0.18 * side, 0.82 * side];
  return [
    { kind: 'line', pen: 'cut', from: point(x + a, top + a), to: point(x + b, top + b) },
    { kind: 'line', pen: 'cut', from: point(x + a, top + b), to: point(x + b, top + a) },
  ];
}

/** A thing to do, with its square to tick. */
export function action(text: string, width: number, style: Style, fonts: Fonts): Part {
  const { side } = tickSquare(0, 0, style, fonts);
  const part = textPart(text, width, style, fonts, side + 0.62 * style.size);
  // The square is a little taller than the capitals.
  const above = Math.max(0, (side - capHeight(style, fonts)) / 2 - (part.base - capHeight(style, fonts)));
  const { item } = tickSquare(0.12, part.base, style, fonts);
  return { items: moved([item, ...part.items], 0, above), height: part.height + above };
}

/** A word and what is said of it, in two columns. */
export function pair(name: string, value: string, stop: number, width: number, style: Style, fonts: Fonts): Part {
  const left = textPart(name, stop - style.size * 0.6, { ...style, weight: 'bold' }, fonts);
  const right = textPart(value, width, style, fonts, stop);
  return level([
    [0, left],
    [0, right],
  ]);
}

/** A white number on a black disc, as strokes are numbered. */
export function disc(text: string, centre: Point, radius: number, fonts: Fonts): readonly Item[] {
  const [west, east] = [point(centre.x - radius, centre.y), point(centre.x + radius, centre.y)];
  const style: Style = { size: (text.length > 2 ? 1.02 : 1.35) * radius, weight: 'bold', colour: 1 };
  const round: PathItem = {
    kind: 'path',
    fill: 0,
    paths: [
      {
        start: west,
        closed: true,
        segments: [
          { kind: 'arc', to: east, centre, clockwise: true },
          { kind: 'arc', to: west, centre, clockwise: true },
        ],
      },
    ],
  };
  return [round, set(text, centre.x, centre.y + capHeight(style, fonts) / 2, style, 'middle')];
}

/** Most of a circle with a head at its end: the way that a board is turned. */
export function roundArrow(centre: Point, radius: number, clockwise: boolean): readonly Item[] {
  const at = (degrees: number, r = radius): Point => {
    const radians = (degrees * Math.PI) / 180;
    return point(centre.x + (clockwise ? 1 : -1) * r * Math.cos(radians), centre.y + r * Math.sin(radians));
  };
  // From the lower outside over the top, to where a clock would have three.
  const [start, end] = [at(110), at(20)];
  const head = [at(48), at(-4, 1.75 * radius), at(-12, 0.4 * radius)];
  return [
    {
      kind: 'path',
      pen: 'tick',
      paths: [{ start, closed: false, segments: [{ kind: 'arc', to: at(350), centre, clockwise }] }],
    },
    { kind: 'path', fill: 0, paths: [polygon([end, ...head.slice(1)])] },
  ];
}

/** What stands on one base line: how wide it is, and its items with the base line at `y`. */
export interface Chunk {
  readonly width: number;
  readonly items: (x: number, y: number) => readonly Item[];
}

export const wordChunk = (text: string, style: Style, fonts: Fonts): Chunk => ({
  width: widthOf(text, style, fonts),
  items: (x, y) => [set(text, x, y, style)],
});

/** More white, in gaps, between groups than inside them. */
const BETWEEN_GROUPS = 0.8;

/** Chunks in lines no wider than `width`; each list of chunks stays together where a line can hold it. */
export function chunkLines(groups: readonly (readonly Chunk[])[], width: number, gap: number, pitch: number): Part {
  const items: Item[] = [];
  let [x, line] = [0, 0];
  const wide = (chunks: readonly Chunk[]): number => chunks.reduce((sum, { width: w }) => sum + w, 0);
  for (const group of groups) {
    if (x > 0 && x + wide(group) + gap * (group.length - 1) > width) [x, line] = [0, line + 1];
    for (const chunk of group) {
      if (x > 0 && x + chunk.width > width) [x, line] = [0, line + 1];
      items.push(...chunk.items(x, (line + 1) * pitch));
      x += chunk.width + gap;
    }
    x += BETWEEN_GROUPS * gap;
  }
  return { items, height: (line + 1) * pitch };
}

/** A line to write on, its word before it. */
export function writeLine(
  word: string,
  x: number,
  y: number,
  width: number,
  style: Style,
  fonts: Fonts,
): readonly Item[] {
  const from = x + widthOf(word, style, fonts) + 1.5;
  const text: TextItem = set(word, x, y, style);
  return [text, { kind: 'line', pen: 'write', from: point(from, y + 0.6), to: point(x + width, y + 0.6) }];
}
