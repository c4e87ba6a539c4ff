import { expression } from '../problems/expression.ts';
import { drawnCodePoints, named } from './characters.ts';
import type { NamedCharacter } from './model.ts';

/**
 * Scripts that one glyph after another from left to right shows wrongly: they run from right to left, join, reorder
 * or stack (Unicode Standard, chapters 9 to 19). Their characters are never drawn wrong but shown as a box and named.
 */
const SCRIPTS: readonly string[] = [
  ...['Adlam', 'Arabic', 'Hanifi_Rohingya', 'Hebrew', 'Mandaic', 'Nko', 'Samaritan', 'Syriac', 'Thaana'],
  ...['Balinese', 'Bengali', 'Buginese', 'Chakma', 'Cham', 'Devanagari', 'Gujarati', 'Gurmukhi', 'Javanese', 'Kannada'],
  ...['Khmer', 'Lao', 'Lepcha', 'Limbu', 'Malayalam', 'Meetei_Mayek', 'Mongolian', 'Myanmar', 'Newa', 'Oriya'],
  ...['Phags_Pa', 'Rejang', 'Sinhala', 'Sundanese', 'Syloti_Nagri', 'Tai_Tham', 'Tai_Viet', 'Tamil', 'Telugu', 'Thai'],
  'Tibetan',
];
const anyScript = expression(`[${SCRIPTS.map((script) => `\\p{Script=${script}}`).join('')}]`);
/** A mark that no composed letter has taken in: where it sits over its letter is known to a shaper alone. */
const mark = expression(String.raw`\p{M}`);
/** Below it no script of the table has a character and no mark is left over (U+0300 is the first combining mark). */
const FIRST = 0x300;

const isOf = (script: string, character: string): boolean => new RegExp(`\\p{Script=${script}}`, 'u').test(character);

/** The script that keeps this character from being drawn, or undefined where it can be. */
export function unshapableScript(codePoint: number): string | undefined {
  if (codePoint < FIRST) return undefined;
  const character = String.fromCodePoint(codePoint);
  if (anyScript().test(character)) return SCRIPTS.find((script) => isOf(script, character))!.replaceAll('_', ' ');
  return mark().test(character) ? 'combining marks' : undefined;
}

export interface Unshapable {
  /** English name of the script as Unicode has it, or `combining marks`. */
  readonly script: string;
  /** Each once, by code point. */
  readonly characters: readonly NamedCharacter[];
}

/** What of the texts cannot be shown properly although a font may hold it, by script, in order of first use. */
export function unshapable(texts: Iterable<string>): Unshapable[] {
  const found = new Map<string, Set<number>>();
  for (const text of texts) {
    for (const codePoint of drawnCodePoints(text)) {
      const script = unshapableScript(codePoint);
      if (script === undefined) continue;
      const codePoints = found.get(script) ?? new Set();
      found.set(script, codePoints.add(codePoint));
    }
  }
  return [...found].map(([script, codePoints]) => ({
    script,
    characters: [...codePoints].sort((a, b) => a - b).map(named),
  }));
}
