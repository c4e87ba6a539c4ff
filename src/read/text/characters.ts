import type { Complain } from './complaints.ts';

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
