import type { Item, PathItem } from '../drawing/model.ts';
import type { Fonts } from '../fonts/model.ts';
import { box } from '../geometry/box.ts';
import { polygon } from '../geometry/path.ts';
import { type Point, point } from '../geometry/point.ts';
import { composed, itemsAt } from './block.ts';
import { boxItem } from './figures.ts';
import { capHeight, depthOf, set, widthOf } from './line.ts';
import { turnsIntoAnother, underline } from './numerals.ts';
import type { TextBlock } from './paragraph.ts';
import { inBold, type Style } from './styles.ts';

/** Signs that stand on a base line among words, as large as the words that they stand with. */

/** A square to tick, its middle at the height of capitals; crossed where it is done. */
export function tickBlock(style: Style, fonts: Fonts, done = false): TextBlock {
  const side = 1.15 * style.size;
  const edge = 0.12;
  const square = boxItem(box(edge, 0, side, side), 1, 'tick');
  const [a, b] = [0.18 * side, 0.82 * side];
  const cross: readonly Item[] = [
    { kind: 'line', pen: 'cross', from: point(edge + a, a), to: point(edge + b, b) },
    { kind: 'line', pen: 'cross', from: point(edge + a, b), to: point(edge + b, a) },
  ];
  const base = (side + capHeight(style, fonts)) / 2;
  return { items: done ? [square, ...cross] : [square], width: side + 0.4, height: side, base };
}

/** Of the disc that carries a number in a style. */
export const discRadius = (text: string, { size }: Style): number => (text.length > 2 ? 1 : 0.74) * size;

/** How far a number with a bar is raised in its disc, em. */
const RAISED = 0.09;

/** A white number on a black disc, as strokes are numbered. */
export function disc(text: string, centre: Point, style: Style, fonts: Fonts): readonly Item[] {
  const radius = discRadius(text, style);
  const [west, east] = [point(centre.x - radius, centre.y), point(centre.x + radius, centre.y)];
  const white: Style = { ...inBold(style), colour: 1 };
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
  // A little higher where a bar under the number tells which way up it is read.
  const lift = turnsIntoAnother(text) ? RAISED * style.size : 0;
  const number = set(text, centre.x, centre.y + capHeight(white, fonts) / 2 - lift, white, 'middle');
  return [round, number, ...underline(number, fonts)];
}

/** The same among words. */
export function discBlock(text: string, style: Style, fonts: Fonts): TextBlock {
  const radius = discRadius(text, style);
  const items = disc(text, point(radius, radius), style, fonts);
  return { items, width: 2 * radius, height: 2 * radius, base: radius + capHeight(style, fonts) / 2 };
}

/** Most of a circle with a head at its end: the way that a board is turned. */
export function turnBlock(clockwise: boolean, style: Style): TextBlock {
  const radius = 0.42 * style.size;
  const centre = point(radius, radius);
  const at = (degrees: number, r = radius): Point => {
    const radians = (degrees * Math.PI) / 180;
    return point(centre.x + (clockwise ? 1 : -1) * r * Math.cos(radians), centre.y + r * Math.sin(radians));
  };
  // From the lower outside over the top, to where a clock would have three.
  const [start, end] = [at(110), at(20)];
  const head = [at(-4, 1.75 * radius), at(-12, 0.4 * radius)];
  const items: readonly Item[] = [
    {
      kind: 'path',
      pen: 'tick',
      paths: [{ start, closed: false, segments: [{ kind: 'arc', to: at(350), centre, clockwise }] }],
    },
    { kind: 'path', fill: 0, paths: [polygon([end, ...head])] },
  ];
  return { items, width: 2 * radius + 0.5, height: 2 * radius, base: radius + 0.35 * style.size };
}

/** An arrow up, as high as the capitals that it stands with. */
export function upArrow(style: Style, fonts: Fonts): TextBlock {
  const high = capHeight(style, fonts);
  const [half, shaft] = [0.42 * high, 0.12 * high];
  const corners = [
    point(half, 0),
    point(2 * half, 0.55 * high),
    point(half + shaft, 0.55 * high),
    point(half + shaft, high),
    point(half - shaft, high),
    point(half - shaft, 0.55 * high),
    point(0, 0.55 * high),
  ];
  const arrow: Item = { kind: 'path', fill: 0, paths: [polygon(corners)] };
  return { items: [arrow], width: 2 * half, height: high, base: high };
}

/** A line to write on, its word before it, as wide as `width`. */
export function writeLine(word: string, width: number, style: Style, fonts: Fonts): TextBlock {
  const base = capHeight(style, fonts);
  const from = widthOf(word, style, fonts) + 1.5;
  const line: Item = { kind: 'line', pen: 'write', from: point(from, base + 0.6), to: point(width, base + 0.6) };
  return { items: [set(word, 0, base, style), line], width, height: base + depthOf(style, fonts), base };
}

/** More white, in gaps, between groups than inside them. */
const BETWEEN_GROUPS = 0.8;
/** Base line to base line of lines that hold signs, em. */
const PITCH = 1.5;

/** Words and signs in lines no wider than `width`; each list of them stays together where a line can hold it. */
export function runsBlock(
  groups: readonly (readonly TextBlock[])[],
  width: number,
  style: Style,
  fonts: Fonts,
): TextBlock {
  const placed: { readonly run: TextBlock; readonly x: number; readonly y: number }[] = [];
  const gap = 0.36 * style.size;
  const pitch = PITCH * style.size;
  let [x, line] = [0, 0];
  const wide = (runs: readonly TextBlock[]): number => runs.reduce((sum, { width: w }) => sum + w, 0);
  for (const group of groups) {
    if (x > 0 && x + wide(group) + gap * (group.length - 1) > width) [x, line] = [0, line + 1];
    for (const run of group) {
      if (x > 0 && x + run.width > width) [x, line] = [0, line + 1];
      placed.push({ run, x, y: (line + 1) * pitch - run.base });
      x += run.width + gap;
    }
    x += BETWEEN_GROUPS * gap;
  }
  return composed({ width, height: (line + 1) * pitch + depthOf(style, fonts), base: pitch }, (left, top) =>
    placed.flatMap(({ run, x: across, y: down }) => itemsAt(run, left + across, top + down)),
  );
}

/** A small strip of a colour among words, its edge in the pen `frame`; no square, which would be one to tick. */
export function colourChip(colour: string, style: Style, fonts: Fonts): TextBlock {
  const [width, height] = [1.9 * style.size, 0.85 * style.size];
  const edge = boxItem({ x: 0.08, y: 0.08, width: width - 0.16, height: height - 0.16 }, colour, 'frame');
  return { items: [edge], width, height, base: (height + capHeight(style, fonts)) / 2 };
}
