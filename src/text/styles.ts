import type { Weight } from '../fonts/model.ts';

/**
 * The sizes that words are set in, on every sheet: em in mm, and what each is for. There are no others. Seven points are
 * read in the hand; what is read at arm's length, while a hand holds the guide, is clear or larger.
 */
export const SIZES = {
  /** 7 pt. */
  fine: { em: 2.5, uses: 'captions, cautions, names of joins, feet of sheets, words on crowded patterns' },
  /** 8.6 pt. */
  body: { em: 3.05, uses: 'running words of sheets that are full, tables, materials and prices' },
  /** 9.6 pt. */
  large: { em: 3.4, uses: 'running words where there is room, labels of gauges, words beside lines of a pattern' },
  /** 12.8 pt. */
  clear: { em: 4.5, uses: 'headings, lines below a title, words on a pattern, steps of a jig' },
  /** 17 pt. */
  sign: { em: 6, uses: 'names on the map of sheets, letters at marks, numbers and readings on a narrow border' },
  /** 21.3 pt. */
  name: { em: 7.5, uses: 'titles, sizes of blanks, stops, readings where a border is short' },
  /** 28.3 pt. */
  reading: { em: 10, uses: 'guide readings' },
  /** 42.5 pt. */
  number: { em: 15, uses: 'numbers of strokes, names of sheets' },
} as const satisfies Readonly<Record<string, { readonly em: number; readonly uses: string }>>;

export type SizeName = keyof typeof SIZES;
export type Em = (typeof SIZES)[SizeName]['em'];

/** From base line to base line, em: within headlines, labels and signs, and within running words. */
export const LEADINGS = { tight: 1.2, open: 1.36 } as const;
export type Leading = keyof typeof LEADINGS;

export interface Style {
  readonly size: Em;
  readonly weight: Weight;
  /** A grey, or a colour. */
  readonly colour: number | string;
  readonly leading: Leading;
}

const style = (size: SizeName, weight: Weight, colour = 0, leading: Leading = 'open'): Style => ({
  size: SIZES[size].em,
  weight,
  colour,
  leading,
});

/**
 * Sheets of the bench are black alone: a grey is dithered by an office printer and lost under oily fingers. A customer's
 * too where words are small; what explains is grey only from the size of running words up, and dark enough for such a printer.
 */
export const INK = 0;
const SOFT = 0.3;

export const FINE = style('fine', 'regular');
export const FINE_BOLD = style('fine', 'bold');
export const TEXT = style('body', 'regular');
export const BOLD = style('body', 'bold');
export const LARGE = style('large', 'regular');
export const LARGE_BOLD = style('large', 'bold');
export const CLEAR = style('clear', 'regular');
export const HEAD = style('clear', 'bold', 0, 'tight');
export const SIGN = style('sign', 'bold', 0, 'tight');
export const NAME = style('name', 'bold', 0, 'tight');
export const READING = style('reading', 'bold', 0, 'tight');
export const NUMBER = style('number', 'bold', 0, 'tight');

/** Of what a customer reads. */
export const TITLE = style('name', 'bold', INK, 'tight');
export const INTRO = style('clear', 'regular', SOFT);
export const BODY = style('body', 'regular', INK);
export const STRONG = style('body', 'bold', INK);
export const SOFTLY = style('body', 'regular', SOFT);
export const SMALL = style('fine', 'regular', INK);

const RISING: readonly Em[] = Object.values(SIZES).map(({ em }) => em);

/** The style itself, then in each smaller size, down to the finest. */
export function stepsDown(from: Style): readonly Style[] {
  return RISING.filter((size) => size <= from.size)
    .reverse()
    .map((size) => ({ ...from, size }));
}

/** Set solid rather than open. */
export const tight = (from: Style): Style => ({ ...from, leading: 'tight' });

/** One size smaller, where there is one. */
export const smaller = (from: Style): Style => stepsDown(from)[1] ?? from;
export const inBold = (from: Style): Style => ({ ...from, weight: 'bold' });
export const pitch = ({ size, leading }: Style): number => LEADINGS[leading] * size;
