import { drawnCodePoints } from './characters.ts';
import type { FaceTable, Fonts, Weight } from './model.ts';
import { unshapableScript } from './shaping.ts';

/**
 * Which font and glyph shows a character. Of the fonts that hold it the first in this order: the family in its
 * weight, the wider font in its weight, rare glyphs in that weight, then the same of the other weight.
 * Kerning is left out, so that a text's width is the sum of its glyphs' and every writer sets it alike.
 */
export interface Place {
  readonly table: FaceTable;
  readonly glyph: number;
}

/** The family in this weight: its metrics are the text's, its glyph 0 stands for what is missing. */
export function familyTable(weight: Weight, { tables }: Fonts): FaceTable {
  return tables.find((table) => table.weight === weight) as FaceTable;
}

const GLYPHS = new WeakMap<FaceTable, ReadonlyMap<number, number>>();

/** Glyph by code point; made once a table, as texts are measured by the thousand. */
function glyphsOf(table: FaceTable): ReadonlyMap<number, number> {
  const known = GLYPHS.get(table);
  if (known !== undefined) return known;
  const made = new Map(table.codePoints.map((codePoint, i) => [codePoint, i + 1]));
  GLYPHS.set(table, made);
  return made;
}

/** True where one of the tables can show it. */
export function holds(tables: readonly FaceTable[], codePoint: number): boolean {
  return tables.some((table) => glyphsOf(table).has(codePoint));
}

/** Where each drawn character of the text is found, from left to right. */
export function placesOf(text: string, weight: Weight, fonts: Fonts): Place[] {
  const family = familyTable(weight, fonts);
  const own = glyphsOf(family);
  return drawnCodePoints(text).map((codePoint) => {
    const glyph = own.get(codePoint);
    return glyph === undefined ? elsewhere(codePoint, family, weight, fonts) : { table: family, glyph };
  });
}

/** Of a character that the family lacks. */
function elsewhere(codePoint: number, family: FaceTable, weight: Weight, fonts: Fonts): Place {
  if (unshapableScript(codePoint) === undefined) {
    for (const table of searchOrder(weight, fonts)) {
      const glyph = glyphsOf(table).get(codePoint);
      if (glyph !== undefined) return { table, glyph };
    }
  }
  return { table: family, glyph: 0 };
}

/** Both weights of the prepared fonts hold the same characters, so that the other weight is left to the rare ones. */
const searchOrder = (weight: Weight, { tables, rare }: Fonts): readonly FaceTable[] => [
  ...tables.filter((table) => table.weight === weight),
  ...rare.filter((table) => table.weight === weight),
  ...rare.filter((table) => table.weight !== weight),
];
