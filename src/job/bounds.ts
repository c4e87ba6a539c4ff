import type { Complain } from './node.ts';

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

/** The text as the readers want it: without a byte order mark, every line ending one line feed or CR LF. */
export function normalised(text: string): string {
  const body = text.startsWith('\ufeff') ? text.slice(1) : text;
  return body.replace(/\r(?!\n)/g, '\n');
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what it looks for.
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\ufffd\ufeff\ufffe\uffff]/;

/** Tells of the first character that no job holds. */
export function checkCharacters(text: string, complain: Complain): void {
  const at = text.search(FORBIDDEN);
  if (at === -1) return;
  const code = text.charCodeAt(at);
  const name = `U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
  if (code === 0) {
    complain('text-not-text', at, 'the file holds a NUL: it is no UTF-8 text', 'save it as plain text in UTF-8');
  } else if (code === 0xfffd) {
    complain('text-not-utf-8', at, 'the file holds bytes that are not UTF-8', 'save it as plain text in UTF-8');
  } else {
    complain('text-control', at, `the file holds the invisible character ${name}`, 'take it out');
  }
}
