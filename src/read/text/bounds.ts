/** A job is a page of text; longer input is refused before any reader works on it. */
export const MAX_BYTES = 256 * 1024;
/** Lists and maps within one another. */
export const MAX_DEPTH = 64;
/** Keys' values, list items, lists and maps, aliases written out; a shop of a thousand boards stays below. */
export const MAX_VALUES = 10_000;
/** What the YAML lexer cuts the text into: words, spaces, line ends, brackets. It bounds the parser's work, whatever the shape. */
export const MAX_PIECES = 40_000;
/** Told one by one; the rest is counted. */
export const MAX_PROBLEMS = 50;

/** Bytes of the text as UTF-8, counted no further than is needed to know that they are more than `most`. */
export function tooManyBytes(text: string, most: number): boolean {
  if (text.length > most) return true;
  if (text.length * 3 <= most) return false;
  return new TextEncoder().encode(text).length > most;
}
