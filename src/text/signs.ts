import type { Item, PathItem } from '../drawing/model.ts';
import type { Fonts } from '../fonts/model.ts';
import { box } from '../geometry/box.ts';
import { polygon } from '../geometry/path.ts';
import { type Point, point } from '../geometry/point.ts';
import { boxItem } from './figures.ts';
import { capHeight, set, widthOf } from './line.ts';
import { inBold, type Style } from './styles.ts';

/** Signs that stand among words, as large as the words that they stand with. */

/** The side of the square that is ticked beside a line. */
export const squareSide = ({ size }: Style): number => 1.15 * size;

/** An empty square to tick, its middle at the height of capitals of a line whose base line is at `y`; crossed where it is done. */
export function tickSquare(x: number, y: number, style: Style, fonts: Fonts, done = false): readonly Item[] {
  const side = squareSide(style);
  const top = y - (capHeight(style, fonts) + side) / 2;
  const square = boxItem(box(x, top, side, side), 1, 'tick');
  if (!done) return [square];
  const [a, b] = [0.18 * side, 0.82 * side];
  return [
    square,
    { kind: 'line', pen: 'cross', from: point(x + a, top + a), to: point(x + b, top + b) },
    { kind: 'line', pen: 'cross', from: point(x + a, top + b), to: point(x + b, top + a) },
  ];
}

/** Of the disc that carries a number in a style. */
export const discRadius = ({ size }: Style): number => 0.74 * size;

/** A white number on a black disc, as strokes are numbered; words of `style` on a disc that they fit. */
export function disc(text: string, centre: Point, style: Style, fonts: Fonts): readonly Item[] {
  const radius = discRadius(style);
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
  return [round, set(text, centre.x, centre.y + capHeight(white, fonts) / 2, white, 'middle')];
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
  return [
    set(word, x, y, style),
    { kind: 'line', pen: 'write', from: point(from, y + 0.6), to: point(x + width, y + 0.6) },
  ];
}
