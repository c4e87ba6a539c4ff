import type { Box } from '../geometry/box.ts';
import { type Point, point } from '../geometry/point.ts';
import { PLAIN } from './characters.ts';
import { familyTable, type Place, placesOf } from './faces.ts';
import type { FaceTable, Fonts, Metrics, Weight } from './model.ts';

/** Lengths come out in the unit that `size`, the em, goes in: mm on a drawing. */

export const textWidth = (text: string, weight: Weight, size: number, fonts: Fonts): number =>
  extentOf(text, weight, fonts).width * size;

/** How wide a text is, and how far up and down it reaches from its base line; em. */
interface Extent {
  readonly width: number;
  readonly top: number;
  readonly bottom: number;
}

/** Words are tried in several sizes, lines and places: each is measured once. */
const EXTENTS = new WeakMap<Fonts, Record<Weight, Map<string, Extent>>>();
const MOST_KNOWN = 4000;

function extentOf(text: string, weight: Weight, fonts: Fonts): Extent {
  let all = EXTENTS.get(fonts);
  if (all === undefined) {
    all = { regular: new Map(), bold: new Map() };
    EXTENTS.set(fonts, all);
  }
  const known = all[weight];
  let extent = known.get(text);
  if (extent === undefined) {
    extent = PLAIN.test(text) ? plainExtent(text, plainGlyphs(weight, fonts)) : extentOfPlaces(text, weight, fonts);
    if (known.size >= MOST_KNOWN) known.clear();
    known.set(text, extent);
  }
  return extent;
}

/** Of printable ASCII: most texts are nothing else. */
function plainExtent(text: string, { advances, tops, bottoms }: PlainGlyphs): Extent {
  let width = 0;
  let top = Number.NEGATIVE_INFINITY;
  let bottom = Number.POSITIVE_INFINITY;
  for (let i = 0; i < text.length; i++) {
    const at = text.charCodeAt(i) - FIRST;
    width += advances[at]!;
    if (tops[at]! > top) top = tops[at]!;
    if (bottoms[at]! < bottom) bottom = bottoms[at]!;
  }
  return { width, top, bottom };
}

function extentOfPlaces(text: string, weight: Weight, fonts: Fonts): Extent {
  const places = placesOf(text, weight, fonts);
  return {
    width: places.reduce((sum, place) => sum + advanceOf(place), 0),
    top: Math.max(...places.map(topOf)),
    bottom: Math.min(...places.map(bottomOf)),
  };
}

const advanceOf = ({ table, glyph }: Place): number => table.advances[glyph]! / table.unitsPerEm;

const FIRST = 0x20;
const LAST = 0x7e;

/** Advances, and how far up and down each glyph reaches, from the space on; em. */
interface PlainGlyphs {
  readonly advances: readonly number[];
  readonly tops: readonly number[];
  readonly bottoms: readonly number[];
}

/** By the tables that they are from, which are the same in all fonts that are loaded. */
const PLAIN_GLYPHS = new WeakMap<readonly FaceTable[], Record<Weight, PlainGlyphs>>();

function plainGlyphs(weight: Weight, fonts: Fonts): PlainGlyphs {
  const known = PLAIN_GLYPHS.get(fonts.tables);
  if (known !== undefined) return known[weight];
  const made = { regular: plainGlyphsOf('regular', fonts), bold: plainGlyphsOf('bold', fonts) };
  PLAIN_GLYPHS.set(fonts.tables, made);
  return made[weight];
}

function plainGlyphsOf(weight: Weight, fonts: Fonts): PlainGlyphs {
  const ascii = String.fromCharCode(...Array.from({ length: LAST - FIRST + 1 }, (_, i) => FIRST + i));
  const places = placesOf(ascii, weight, fonts);
  return { advances: places.map(advanceOf), tops: places.map(topOf), bottoms: places.map(bottomOf) };
}

const topOf = ({ table, glyph }: Place): number => table.tops[glyph]! / table.unitsPerEm;
const bottomOf = ({ table, glyph }: Place): number => table.bottoms[glyph]! / table.unitsPerEm;

/** In em. */
export function metrics(weight: Weight, fonts: Fonts): Metrics {
  return familyTable(weight, fonts).metrics;
}

/** As a TextItem of a Drawing has them. */
export interface SetText {
  readonly text: string;
  readonly at: Point;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly size: number;
  readonly weight: Weight;
  readonly turn: number;
}

/**
 * The axis-parallel box around a line of text: from end to end of its advance, from the height of capitals to the
 * depth of descenders, and further where its own characters reach further (accented capitals), turned about `at`.
 */
export function textBox(item: SetText, fonts: Fonts): Box {
  const { capHeight, descender } = metrics(item.weight, fonts);
  const extent = extentOf(item.text, item.weight, fonts);
  const { width } = extent;
  const top = Math.max(capHeight, extent.top);
  const bottom = Math.min(-descender, extent.bottom);
  const left = -width * STARTS[item.anchor];
  const along = direction(item.turn);
  const corner = (x: number, y: number): Point => ({
    x: item.at.x + (x * along.x - y * along.y) * item.size,
    y: item.at.y + (x * along.y + y * along.x) * item.size,
  });
  const a = corner(left, -top);
  const b = corner(left + width, -top);
  const c = corner(left + width, -bottom);
  const d = corner(left, -bottom);
  const x = Math.min(a.x, b.x, c.x, d.x);
  const y = Math.min(a.y, b.y, c.y, d.y);
  return { x, y, width: Math.max(a.x, b.x, c.x, d.x) - x, height: Math.max(a.y, b.y, c.y, d.y) - y };
}

/** From where to where the box of a line reaches that stands upright on a base line at `y`. */
export function inkOf(text: string, weight: Weight, size: number, y: number, fonts: Fonts): Pick<Box, 'y' | 'height'> {
  const { capHeight, descender } = metrics(weight, fonts);
  const extent = extentOf(text, weight, fonts);
  const top = y - Math.max(capHeight, extent.top) * size;
  return { y: top, height: y - Math.min(-descender, extent.bottom) * size - top };
}

/** Unit vector of a base line turned clockwise; quarter turns are exact. */
function direction(degrees: number): Point {
  const quarters = degrees / 90;
  if (Number.isInteger(quarters)) return QUARTERS[((quarters % 4) + 4) % 4]!;
  const radians = (degrees * Math.PI) / 180;
  return { x: Math.cos(radians), y: Math.sin(radians) };
}

const QUARTERS: readonly Point[] = [point(1, 0), point(0, 1), point(-1, 0), point(0, -1)];

/** How much of a line's width lies before `at`. */
const STARTS: Readonly<Record<SetText['anchor'], number>> = { start: 0, middle: 0.5, end: 1 };

/** The largest em up to `size` at which the text is no wider than `width`, but never below `smallest`. */
export function fitSize(
  text: string,
  weight: Weight,
  size: number,
  width: number,
  smallest: number,
  fonts: Fonts,
): number {
  const wide = textWidth(text, weight, 1, fonts);
  return wide * size <= width ? size : Math.max(smallest, width / wide);
}

/** The text itself where it is no wider than `width`, else as much of its beginning as leaves room for an ellipsis. */
export function ellipsized(text: string, weight: Weight, size: number, width: number, fonts: Fonts): string {
  const wide = (part: string) => textWidth(part, weight, size, fonts);
  if (wide(text) <= width) return text;
  const characters = [...text.normalize('NFC')];
  const room = width - wide('…');
  let used = 0;
  let count = 0;
  for (const character of characters) {
    used += wide(character);
    if (used > room) break;
    count++;
  }
  return `${characters.slice(0, count).join('').trimEnd()}…`;
}
