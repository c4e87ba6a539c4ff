import { word } from '../../problems/quoted.ts';
import { MAX_DEPTH, MAX_VALUES } from './bounds.ts';
import { type Complain, putEntry, TOO_DEEP, TOO_MANY } from './complaints.ts';
import { type Entry, emptyMap, type Node } from './node.ts';

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const WORD = /[A-Za-z_$][\w$]*/y;
const SPACE = /[ \t\r\n]*/y;
const HEX = /^[0-9a-fA-F]{4}$/;
const ESCAPES: Readonly<Record<string, string>> = {
  '"': '"',
  '\\': '\\',
  '/': '/',
  b: '\b',
  f: '\f',
  n: '\n',
  r: '\r',
  t: '\t',
};

/** Thrown within this file alone, when the rest of the text cannot be made sense of. */
class Stop extends Error {}

/** Reads JSON (RFC 8259) into the same tree as YAML; undefined where the text is no JSON. */
export function readJson(text: string, complain: Complain): Node | undefined {
  const reader = new Reader(text, complain);
  try {
    return reader.whole();
  } catch (caught) {
    if (caught instanceof Stop) return undefined;
    throw caught;
  }
}

type Path = readonly (string | number)[];

class Reader {
  readonly #text: string;
  readonly #complain: Complain;
  #at = 0;
  #values = 0;

  constructor(text: string, complain: Complain) {
    this.#text = text;
    this.#complain = complain;
  }

  whole(): Node {
    this.#space();
    if (this.#at === this.#text.length) return emptyMap(0);
    const node = this.#value([]);
    this.#space();
    if (this.#at < this.#text.length)
      this.#stop('json-after', this.#at, 'something follows the end of the JSON', 'take it out');
    return node;
  }

  #stop(code: string, at: number, message: string, hint: string): never {
    this.#complain(code, at, message, hint);
    throw new Stop();
  }

  #space(): void {
    SPACE.lastIndex = this.#at;
    SPACE.exec(this.#text);
    this.#at = SPACE.lastIndex;
    if (this.#text.startsWith('//', this.#at) || this.#text.startsWith('/*', this.#at)) {
      this.#stop('json-comment', this.#at, 'JSON has no comments', 'take the comment out, or write the job as YAML');
    }
  }

  #value(path: Path): Node {
    const at = this.#at;
    this.#values += 1;
    if (this.#values > MAX_VALUES) this.#stop(TOO_MANY.code, at, TOO_MANY.message, TOO_MANY.hint);
    const first = this.#text[at];
    if (path.length >= MAX_DEPTH && (first === '{' || first === '[')) {
      this.#stop(TOO_DEEP.code, at, TOO_DEEP.message, TOO_DEEP.hint);
    }
    if (first === '{') return this.#map(path);
    if (first === '[') return this.#list(path);
    if (first === '"') return { kind: 'scalar', at, value: this.#string() };
    if (first === "'") this.#stop('json-quotes', at, 'JSON has double quotes only', 'write " instead of \'');
    NUMBER.lastIndex = at;
    const number = NUMBER.exec(this.#text);
    if (number !== null) {
      this.#at = NUMBER.lastIndex;
      const value = Number(number[0]);
      if (Number.isFinite(value) && !/[\w./]/.test(this.#text[this.#at] ?? ' ')) return { kind: 'scalar', at, value };
      if (Number.isFinite(value)) {
        this.#stop('json-value', at, 'this is not a JSON number', 'put a length such as 1/4 or 16 mm in double quotes');
      }
      this.#complain('number-not-finite', at, 'this number is too large', 'write a plain number', path);
      return { kind: 'refused', at };
    }
    return this.#word(at, path);
  }

  #word(at: number, path: Path): Node {
    WORD.lastIndex = at;
    const found = WORD.exec(this.#text)?.[0];
    if (found !== undefined) this.#at = WORD.lastIndex;
    switch (found) {
      case 'true':
      case 'false':
        return { kind: 'scalar', at, value: found === 'true' };
      case 'null':
        this.#complain(
          'value-missing',
          at,
          'a value is missing (null is never a value)',
          'write one, or take the key out',
          path,
        );
        return { kind: 'refused', at };
      case 'NaN':
      case 'Infinity':
        return this.#stop(
          'number-not-finite',
          at,
          `${found} is not a number that a job can hold`,
          'write a plain number',
        );
      case undefined:
        return this.#stop(
          'json-value',
          at,
          'a value is missing here',
          'JSON values are numbers, "texts", true, false, [lists] and {maps}',
        );
      default:
        return this.#stop('json-value', at, `${word(found)} is no JSON value`, 'put text in double quotes');
    }
  }

  #list(path: Path): Node {
    const at = this.#at;
    const items: Node[] = [];
    this.#at += 1;
    this.#space();
    while (this.#text[this.#at] !== ']') {
      items.push(this.#value([...path, items.length]));
      this.#between(']', at);
    }
    this.#at += 1;
    return { kind: 'list', at, items };
  }

  #map(path: Path): Node {
    const at = this.#at;
    const entries = new Map<string, Entry>();
    this.#at += 1;
    this.#space();
    while (this.#text[this.#at] !== '}') {
      const keyAt = this.#at;
      if (this.#text[keyAt] !== '"') {
        if (keyAt >= this.#text.length) this.#unclosed('}', at);
        this.#stop('json-quotes', keyAt, 'a JSON key stands in double quotes', 'write "key": value');
      }
      const key = this.#string();
      this.#space();
      if (this.#text[this.#at] !== ':')
        this.#stop('json-colon', this.#at, 'a colon is missing after the key', 'write "key": value');
      this.#at += 1;
      this.#space();
      const value = this.#value([...path, key]);
      putEntry(entries, key, { keyAt, value }, [...path, key], this.#complain);
      this.#between('}', at);
    }
    this.#at += 1;
    return { kind: 'map', at, entries };
  }

  /** After an item: a comma and then another one, or the end. */
  #between(close: string, openedAt: number): void {
    this.#space();
    const next = this.#text[this.#at];
    if (next === close) return;
    if (next === undefined) this.#unclosed(close, openedAt);
    if (next !== ',') this.#stop('json-comma', this.#at, `a comma or ${close} is missing here`, 'put one before this');
    const comma = this.#at;
    this.#at += 1;
    this.#space();
    if (this.#text[this.#at] === close)
      this.#stop('json-comma', comma, `JSON has no comma before ${close}`, 'take it out');
  }

  #unclosed(close: string, openedAt: number): never {
    return this.#stop('json-brackets', openedAt, 'this bracket is never closed', `put ${close} at its end`);
  }

  #string(): string {
    const start = this.#at;
    let out = '';
    let at = start + 1;
    for (;;) {
      const character = this.#text[at];
      if (character === undefined || character === '\n' || character === '\r') {
        this.#stop('json-quotes', start, 'this text has no closing quote on its line', 'close it with "');
      }
      if (character === '"') break;
      if (character !== '\\') {
        out += character;
        at += 1;
        continue;
      }
      const next = this.#text[at + 1] ?? '';
      const hex = this.#text.slice(at + 2, at + 6);
      if (next === 'u' && HEX.test(hex)) {
        out += String.fromCharCode(Number.parseInt(hex, 16));
        at += 6;
      } else if (Object.hasOwn(ESCAPES, next)) {
        out += ESCAPES[next];
        at += 2;
      } else {
        this.#stop('json-escape', at, 'a backslash begins an unknown escape', 'write two backslashes for one');
      }
    }
    this.#at = at + 1;
    return out;
  }
}
