import { word } from '../../problems/quoted.ts';
import { MAX_DEPTH } from './bounds.ts';
import type { Words } from './yaml-words.ts';

/** What is wrong with a text that should be JSON (RFC 8259), and where. */
export interface Slip extends Words {
  readonly at: number;
}

const SPACE = /[ \t\r\n]*/y;
const TEXT = /"[^"\\\r\n]*(?:\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})[^"\\\r\n]*)*"/y;
const PLAIN = /(?:true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?)(?![\w./])/y;
const NAME = /[A-Za-z_$][\w$]*/y;

const CLOSE = { '{': '}', '[': ']' } as const;

/** A bracket that is open. */
interface Open {
  readonly at: number;
  readonly bracket: '{' | '[';
}

/**
 * The first slip of a text that is no JSON; undefined where it is. JSON is YAML as well, so that only what YAML takes
 * besides has to be found: the reader is one for both.
 */
export function jsonSlip(text: string): Slip | undefined {
  if (text.trim() === '' || isJson(text)) return undefined;
  return new Slips(text).first();
}

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

class Slips {
  readonly #text: string;
  readonly #open: Open[] = [];
  #at = 0;

  constructor(text: string) {
    this.#text = text;
  }

  first(): Slip | undefined {
    for (;;) {
      const slip = this.#item();
      if (slip !== undefined || this.#open.length > MAX_DEPTH) return slip;
      const after = this.#afterItem();
      if (after !== 'more') return after;
    }
  }

  /** A key with its colon where one belongs, then a value; of a list or a map the first that stands in it. */
  #item(): Slip | undefined {
    // Deeper than that the reader says so.
    while (this.#open.length <= MAX_DEPTH) {
      const wrong =
        this.#comment() ?? (this.#open.at(-1)?.bracket === '{' ? (this.#key() ?? this.#comment()) : undefined);
      if (wrong !== undefined) return wrong;
      const bracket = this.#text[this.#at];
      if (bracket !== '{' && bracket !== '[')
        return this.#take(TEXT) || this.#take(PLAIN) ? undefined : this.#noValue();
      this.#open.push({ at: this.#at, bracket });
      this.#at += 1;
      const within = this.#comment();
      if (within !== undefined || this.#text[this.#at] === CLOSE[bracket]) return within;
    }
    return undefined;
  }

  #key(): Slip | undefined {
    const at = this.#at;
    if (!this.#take(TEXT)) {
      if (this.#text[at] === undefined) return neverClosed(this.#open.at(-1)!);
      if (this.#text[at] === '"') return this.#noText(at);
      return { at, code: 'json-quotes', message: 'a JSON key stands in double quotes', hint: 'write "key": value' };
    }
    const comment = this.#comment();
    if (comment !== undefined) return comment;
    if (this.#text[this.#at] !== ':') {
      const message = 'a colon is missing after the key';
      return { at: this.#at, code: 'json-colon', message, hint: 'write "key": value' };
    }
    this.#at += 1;
    return undefined;
  }

  /** Closes what ends here; `more` where another item follows. */
  #afterItem(): Slip | 'more' | undefined {
    for (;;) {
      const comment = this.#comment();
      if (comment !== undefined) return comment;
      const open = this.#open.at(-1);
      const next = this.#text[this.#at];
      if (open === undefined) {
        const message = 'something follows the end of the JSON';
        return next === undefined ? undefined : { at: this.#at, code: 'json-after', message, hint: 'take it out' };
      }
      const close = CLOSE[open.bracket];
      if (next === undefined) return neverClosed(open);
      if (next === close) {
        this.#open.pop();
        this.#at += 1;
        continue;
      }
      return next === ',' ? this.#afterComma(close) : commaMissing(this.#at, close);
    }
  }

  #afterComma(close: string): Slip | 'more' {
    const at = this.#at;
    this.#at += 1;
    const comment = this.#comment();
    if (comment !== undefined) return comment;
    if (this.#text[this.#at] !== close) return 'more';
    return { at, code: 'json-comma', message: `JSON has no comma before ${close}`, hint: 'take it out' };
  }

  #noValue(): Slip {
    const at = this.#at;
    const next = this.#text[at] ?? '';
    if (next === '"') return this.#noText(at);
    if (next === '' && this.#open.length > 0) return neverClosed(this.#open.at(-1)!);
    if (next === "'") {
      return { at, code: 'json-quotes', message: 'JSON has double quotes only', hint: 'write " instead of \'' };
    }
    if (/^-?\d/.test(this.#text.slice(at, at + 2))) {
      const hint = 'put a length such as 1/4 or 16 mm in double quotes';
      return { at, code: 'json-value', message: 'this is not a JSON number', hint };
    }
    const name = this.#take(NAME) ? this.#text.slice(at, this.#at) : undefined;
    if (name === undefined) {
      const hint = 'JSON values are numbers, "texts", true, false, [lists] and {maps}';
      return { at, code: 'json-value', message: 'a value is missing here', hint };
    }
    if (name === 'NaN' || name === 'Infinity') {
      const message = `${name} is not a number that a job can hold`;
      return { at, code: 'number-not-finite', message, hint: 'write a plain number' };
    }
    return { at, code: 'json-value', message: `${word(name)} is no JSON value`, hint: 'put text in double quotes' };
  }

  /** Of a text that cannot be read: an escape that JSON does not know, or no end on its line. */
  #noText(at: number): Slip {
    const good = new RegExp(TEXT.source.slice(0, -1), 'y');
    good.lastIndex = at;
    const end = at + (good.exec(this.#text)?.[0].length ?? 0);
    if (this.#text[end] === '\\') {
      const hint = 'write two backslashes for one';
      return { at: end, code: 'json-escape', message: 'a backslash begins an unknown escape', hint };
    }
    const message = 'this text has no closing quote on its line';
    return { at, code: 'json-quotes', message, hint: 'close it with "' };
  }

  /** Passes over spaces. */
  #comment(): Slip | undefined {
    this.#take(SPACE);
    if (!/^(?:\/[/*]|#)/.test(this.#text.slice(this.#at, this.#at + 2))) return undefined;
    const hint = 'take the comment out, or write the job as YAML';
    return { at: this.#at, code: 'json-comment', message: 'JSON has no comments', hint };
  }

  #take(pattern: RegExp): boolean {
    pattern.lastIndex = this.#at;
    if (!pattern.test(this.#text)) return false;
    this.#at = pattern.lastIndex;
    return true;
  }
}

const neverClosed = ({ at, bracket }: Open): Slip => ({
  at,
  code: 'json-brackets',
  message: 'this bracket is never closed',
  hint: `put ${CLOSE[bracket]} at its end`,
});

const commaMissing = (at: number, close: string): Slip => ({
  at,
  code: 'json-comma',
  message: `a comma or ${close} is missing here`,
  hint: 'put one before this',
});
