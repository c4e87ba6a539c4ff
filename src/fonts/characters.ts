import { expression } from '../problems/expression.ts';
import type { NamedCharacter } from './model.ts';

/**
 * What of a text is drawn. Every part of fonts/ reads texts through here, so that measuring, embedding and outlines
 * agree: composed first (NFC: e + U+0301 is é), then without what has no shape of its own.
 */

/** Controls, format characters (zero width, direction, soft hyphen), line and paragraph separators, variation selectors. */
const shapeless = expression(String.raw`[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Default_Ignorable_Code_Point}]`);
/** ASCII without controls: drawn as it stands. */
export const PLAIN = /^[\x20-\x7e]*$/;

/** Code points in the order they are drawn. */
export function drawnCodePoints(text: string): number[] {
  const codePoints: number[] = [];
  if (PLAIN.test(text)) {
    for (let i = 0; i < text.length; i++) codePoints.push(text.charCodeAt(i));
    return codePoints;
  }
  for (const character of text.normalize('NFC')) {
    if (PLAIN.test(character) || !shapeless().test(character)) codePoints.push(character.codePointAt(0) as number);
  }
  return codePoints;
}

/** `U+00E9`; at least four digits, as the Unicode Standard writes it (appendix A). */
export function named(codePoint: number): NamedCharacter {
  const digits = codePoint.toString(16).toUpperCase().padStart(4, '0');
  return { codePoint, character: String.fromCodePoint(codePoint), name: `U+${digits}` };
}
