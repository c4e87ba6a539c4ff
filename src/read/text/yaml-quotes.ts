import type { Words } from './yaml-words.ts';

/** The escapes of YAML 1.2 (§5.7, from memory). */
const ESCAPE = /\\(?:[0abefnrtvN_LP "/\\\t\r\n]|x[0-9a-fA-F]{2}|u[0-9a-fA-F]{4}|U00(?:0[0-9a-fA-F]|10)[0-9a-fA-F]{4})/y;

/** What is wrong with a text in quotes that begins at `offset`. */
export function wrongQuotes(piece: string, offset: number): (Words & { readonly at: number }) | undefined {
  const mark = piece[0]!;
  let closed = false;
  if (mark === "'") {
    closed = piece.length > 1 && (piece.split("'").length - 1) % 2 === 0;
  } else {
    let at = piece.indexOf('\\');
    while (at !== -1) {
      ESCAPE.lastIndex = at;
      if (!ESCAPE.test(piece)) {
        const hint = 'write two backslashes for one, or use single quotes';
        return { at: offset + at, code: 'yaml-escape', message: 'this backslash begins no known escape', hint };
      }
      closed = ESCAPE.lastIndex < piece.length;
      at = piece.indexOf('\\', ESCAPE.lastIndex);
    }
    closed = piece.length > 1 && piece.endsWith('"') && (closed || !piece.includes('\\'));
  }
  if (closed) return undefined;
  const hint = `close it with ${mark}; a text with an inch mark stands in single quotes: '5/8"'`;
  return { at: offset, code: 'yaml-quotes', message: `this ${mark} opens a text that is never closed`, hint };
}
