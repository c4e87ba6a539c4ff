import { drawnCodePoints, named } from './characters.ts';
import { isPrepared } from './faces.ts';
import type { NamedCharacter } from './model.ts';
import { everything } from './prepared/tables.ts';
import { unshapableScript } from './shaping.ts';

/**
 * The characters that no font at all can show, each once, by code point. They are drawn as a box. What a font has but
 * a line of glyphs would show wrongly is left to `unshapable` (shaping.ts).
 */
export function missing(texts: Iterable<string>): NamedCharacter[] {
  return unprepared(texts)
    .filter((codePoint) => !isKnown(codePoint))
    .map(named);
}

/** True where a text holds a character that only the full fonts have: `prepareRare` is worth its time. */
export function needsRare(texts: Iterable<string>): boolean {
  return rareCharacters(texts).length > 0;
}

/** Code points that only the full fonts have, rising. */
export function rareCharacters(texts: Iterable<string>): number[] {
  return unprepared(texts).filter(isKnown);
}

/** Drawn characters of shapable scripts that are not prepared, each once, rising. */
function unprepared(texts: Iterable<string>): number[] {
  const found = new Set<number>();
  for (const text of texts) for (const codePoint of drawnCodePoints(text)) found.add(codePoint);
  return [...found]
    .filter((codePoint) => !isPrepared(codePoint) && unshapableScript(codePoint) === undefined)
    .sort((a, b) => a - b);
}

function isKnown(codePoint: number): boolean {
  return everything.some(([first, last]) => first <= codePoint && codePoint <= last);
}
