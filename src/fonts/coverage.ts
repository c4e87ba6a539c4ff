import { drawnCodePoints, named } from './characters.ts';
import { holds } from './faces.ts';
import type { FaceTable, Fonts, NamedCharacter } from './model.ts';
import { unshapableScript } from './shaping.ts';

/**
 * The characters that these fonts cannot show, each once, by code point. They are drawn as a box. What a font has but
 * a line of glyphs would show wrongly is left to `unshapable` (shaping.ts).
 */
export function missing(texts: Iterable<string>, { tables, rare }: Fonts): NamedCharacter[] {
  return without(texts, [...tables, ...rare]).map(named);
}

/** Code points that the tables lack but the whole fonts have, which hold what lies in the spans of `everything`; rising. */
export function rareCharacters(
  texts: Iterable<string>,
  tables: readonly FaceTable[],
  everything: readonly (readonly [number, number])[],
): number[] {
  return without(texts, tables).filter((codePoint) =>
    everything.some(([first, last]) => first <= codePoint && codePoint <= last),
  );
}

/** Drawn characters of shapable scripts that no table has, each once, rising. */
function without(texts: Iterable<string>, tables: readonly FaceTable[]): number[] {
  const found = new Set<number>();
  for (const text of texts) for (const codePoint of drawnCodePoints(text)) found.add(codePoint);
  return [...found]
    .filter((codePoint) => !holds(tables, codePoint) && unshapableScript(codePoint) === undefined)
    .sort((a, b) => a - b);
}
