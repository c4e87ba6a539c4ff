export type Weight = 'regular' | 'bold';

/** Vertical metrics in em, all positive: what lies below the base line is measured down. */
export interface Metrics {
  /** Of a line: room for accented capitals. With `descent` the pitch of lines set solid. */
  readonly ascent: number;
  readonly descent: number;
  readonly capHeight: number;
  readonly xHeight: number;
  /** How far g, j, p, q and y hang below the base line at most. */
  readonly descender: number;
}

/**
 * Names one font file that text is set in. A text may need several: the family's own (`regular`, `bold`), the
 * characters that are borrowed from a wider font (`regular-fallback`, `bold-fallback`), and those that only the whole
 * fonts have (they begin with `rare-`). `fontFor` of embed.ts gives the font of an id.
 */
export type FontId = string;

/** A stretch of text in one font. Runs follow each other along the base line, each starting where the last ended. */
export interface Run {
  readonly font: FontId;
  /** Glyph ids of the embedded file, in drawing order; written big-endian in two bytes under Identity-H. */
  readonly glyphs: readonly number[];
  /** Width of the run, em. Exactly the sum of the glyphs' `widths` / 1000. */
  readonly advance: number;
}

/** All that a Type0 / CIDFontType2 / Identity-H font of a PDF needs (ISO 32000-1, 9.7 and 9.8). Lengths are em / 1000. */
export interface EmbeddedFont {
  readonly id: FontId;
  /** With the tag of a subset: `ABCDEF+Name`. */
  readonly postScriptName: string;
  /** Left, bottom, right, top; y up. */
  readonly bbox: readonly [number, number, number, number];
  readonly ascent: number;
  /** Negative, as FontDescriptor wants it. */
  readonly descent: number;
  readonly capHeight: number;
  readonly xHeight: number;
  readonly italicAngle: number;
  readonly stemV: number;
  /** FontDescriptor's flags (ISO 32000-1, table 123). */
  readonly flags: number;
  /** FontFile2, in the zlib format that FlateDecode wants. */
  readonly fontFile: Uint8Array;
  /** Bytes of the font file before it was deflated (`Length1`). */
  readonly fontFileLength: number;
  /** ToUnicode CMap, in the zlib format too. */
  readonly toUnicode: Uint8Array;
  /** Advance by glyph id, em / 1000, not rounded; `/CIDToGIDMap` is `/Identity`. */
  readonly widths: readonly number[];
}

/** A character of a text that is worth a word. */
export interface NamedCharacter {
  readonly codePoint: number;
  readonly character: string;
  /** `U+1F600`. */
  readonly name: string;
}

/** What measuring needs of one font file. Lengths are font units; lists run by glyph id of the embedded file. */
export interface FaceTable {
  readonly id: FontId;
  readonly weight: Weight;
  readonly unitsPerEm: number;
  readonly metrics: Metrics;
  /** Glyph i + 1 shows code point i, so that each has a glyph of its own; glyph 0 is the box for what is missing. */
  readonly codePoints: readonly number[];
  /** Longer than `codePoints` by glyph 0 and, at the end, the parts that composed glyphs share. */
  readonly advances: readonly number[];
  /** Highest and lowest ink, y up; 0 where there is none. */
  readonly tops: readonly number[];
  readonly bottoms: readonly number[];
}

/**
 * Outlines by glyph, font units, y up: steps `m dx dy`, `l dx dy` and `q cx cy dx dy`, every pair relative to the point
 * where the last step ended (at first 0 0), also across contours. Each m begins a closed contour whose closing line is left out.
 */
export type FaceOutlines = readonly string[];

/** Between the outlines of one font where they are stored as one text, to be split when first drawn. */
export const BETWEEN_OUTLINES = '|';

/** One font file cut down to some characters, with everything that the parts of fonts/ ask of it. */
export interface Face {
  readonly table: FaceTable;
  readonly embedded: EmbeddedFont;
  readonly outlines: FaceOutlines;
}

/**
 * What texts are set with: plain data that `loadFonts` gathers once for what is to be set, handed to everything that
 * measures, embeds or draws letters. The same value must go to all of them, so that they agree.
 */
export interface Fonts {
  /** To measure with: the family first, then the wider font. */
  readonly tables: readonly FaceTable[];
  /** Of the characters that only the whole fonts have, where some of the texts have any. */
  readonly rare: readonly FaceTable[];
  /** Of each font in one text, where letters are to be drawn as paths or cut. */
  readonly outlines?: Readonly<Record<FontId, string>>;
  /** Where a file is to carry its fonts. */
  readonly files?: readonly EmbeddedFont[];
}

/** An EmbeddedFont as it is stored: its bytes in base64. */
export interface EmbeddedFile extends Omit<EmbeddedFont, 'fontFile' | 'toUnicode'> {
  readonly fontFile: string;
  readonly toUnicode: string;
}

/** A whole font as it is stored: deflated, in base64. */
export interface FullFont {
  readonly name: { readonly id: FontId; readonly weight: Weight; readonly name: string };
  readonly file: string;
}
