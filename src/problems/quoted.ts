import { expression } from './expression.ts';

/** What a message shows of a text that the user wrote. */
const MOST = 40;

/** Characters that JSON leaves alone, but that a terminal obeys or a reader cannot see. */
const INVISIBLE = /[\u007f-\u00a0\u00ad\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff]/g;

const plainWord = expression(String.raw`^[\p{L}\p{N}_<-]+$`);

/** In double quotes, cut short, with control and invisible characters written out. */
export function quoted(text: string): string {
  const start = text.length > MOST ? `${text.slice(0, MOST)}…` : text;
  return JSON.stringify(start).replace(
    INVISIBLE,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}

/** As it is where it is one plain word, else in quotes. */
export function word(text: string): string {
  return text.length <= MOST && (/^[A-Za-z0-9_<-]+$/.test(text) || plainWord().test(text)) ? text : quoted(text);
}
