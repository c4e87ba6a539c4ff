export type Weight = 'regular' | 'bold';

/** Vertical metrics in em, all positive: `descent` is measured down from the base line. */
export interface Metrics {
  readonly ascent: number;
  readonly descent: number;
  readonly capHeight: number;
  readonly xHeight: number;
}

/**
 * Names one font file that text is set in. A text may need several: the family's own (`regular`, `bold`), the
 * characters that are borrowed from a wider font (`regular-fallback`, `bold-fallback`), and those that only
 * `prepareRare` finds (they begin with `rare-`). `fontFor` of embed.ts gives the font of an id.
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
