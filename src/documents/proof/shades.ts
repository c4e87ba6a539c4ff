import { type Point, point } from '../../geometry/point.ts';

const parts = (colour: string): readonly number[] =>
  [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));

/** `#rrggbb` between two of the kind: 0 is the first. */
export function mixed(from: string, to: string, share: number): string {
  const [a, b] = [parts(from), parts(to)];
  const made = a.map((value, i) => Math.round(value + (b[i]! - value) * share));
  return `#${made.map((value) => Math.min(255, Math.max(0, value)).toString(16).padStart(2, '0')).join('')}`;
}

export const darker = (colour: string, share: number): string => mixed(colour, '#000000', share);
const lighter = (colour: string, share: number): string => mixed(colour, '#ffffff', share);

/**
 * The light falls from above left, steeper than half way, so that the four sides of a slope differ and its mitres show.
 * Unit vector from the light to the piece, in the plane of the sheet.
 */
const LIGHT = point(0.5, Math.sqrt(0.75));

/** -1 for a slope that turns away from the light to 1 for one that faces it; `outwards` points away from the opening. */
const facing = (outwards: Point): number => outwards.x * LIGHT.x + outwards.y * LIGHT.y;

/** A slope of that colour: never far from it, bright where it faces the light. */
export function slope(colour: string, outwards: Point): string {
  const light = facing(outwards);
  return light >= 0 ? mixed(darker(colour, 0.12), lighter(colour, 0.35), light) : darker(colour, 0.12 - 0.26 * light);
}

/** So near to one another that no edge is seen between them on paper (by eye, on an office printer). */
export const isAlike = (a: string, b: string): boolean => {
  const [first, second] = [parts(a), parts(b)];
  return Math.max(...first.map((value, i) => Math.abs(value - second[i]!))) < 20;
};

/** The words for a core; others are taken for white. */
const WHITE = '#fdfcf9';
const CORES: ReadonlyMap<string, string> = new Map([
  ['white', WHITE],
  ['black', '#1c1b1a'],
  ['cream', '#f3ead2'],
  ['grey', '#9a9894'],
  ['gray', '#9a9894'],
  ['brown', '#6a4a32'],
]);

/** `#rrggbb` of a core: a colour, a word for one, or `solid`, which is the board's own. */
export function coreColour(core: string, board: string): string {
  const word = core.trim().toLowerCase();
  if (/^#[0-9a-f]{6}$/.test(word)) return word;
  if (word === 'solid' || word === 'through') return board;
  return CORES.get(word) ?? WHITE;
}
