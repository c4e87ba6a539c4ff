import { drawnCodePoints } from './characters.ts';
import type { FaceTable, RareFonts, Weight } from './model.ts';
import { tables } from './prepared/tables.ts';
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

const PREPARED_ORDER: Readonly<Record<Weight, readonly FaceTable[]>> = {
  regular: tables.filter((table) => table.weight === 'regular'),
  bold: tables.filter((table) => table.weight === 'bold'),
};

/** The family in this weight: its metrics are the text's, its glyph 0 stands for what is missing. */
export function familyTable(weight: Weight): FaceTable {
  return PREPARED_ORDER[weight][0] as FaceTable;
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

/** True where the prepared fonts can show it; both weights hold the same characters. */
export function isPrepared(codePoint: number): boolean {
  return tables.some((table) => glyphsOf(table).has(codePoint));
}

/** Where each drawn character of the text is found, from left to right. */
export function placesOf(text: string, weight: Weight, rare?: RareFonts): Place[] {
  return drawnCodePoints(text).map((codePoint) => placeOf(codePoint, weight, rare));
}

function placeOf(codePoint: number, weight: Weight, rare: RareFonts | undefined): Place {
  const family = familyTable(weight);
  const direct = glyphsOf(family).get(codePoint);
  if (direct !== undefined) return { table: family, glyph: direct };
  if (unshapableScript(codePoint) === undefined) {
    for (const table of searchOrder(weight, rare)) {
      const glyph = glyphsOf(table).get(codePoint);
      if (glyph !== undefined) return { table, glyph };
    }
  }
  return { table: family, glyph: 0 };
}

function searchOrder(weight: Weight, rare: RareFonts | undefined): readonly FaceTable[] {
  if (rare === undefined) return PREPARED_ORDER[weight];
  const found = rare.faces.map((face) => face.table);
  return [
    ...PREPARED_ORDER[weight],
    ...found.filter((table) => table.weight === weight),
    ...found.filter((table) => table.weight !== weight),
  ];
}
