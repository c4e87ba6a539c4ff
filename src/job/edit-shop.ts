import { isMap, isScalar, isSeq, Lexer, type Pair, parseDocument, type YAMLMap, type YAMLSeq } from 'yaml';
import { error, fail, type Result, succeed } from '../problems/problem.ts';
import { word } from '../problems/quoted.ts';
import { showPath } from '../problems/show.ts';
import { asLines, isMapping, keyText, onOneLine, type Plain, type Style } from './yaml-print.ts';

/** `set` changes keys of the map at a path and leaves its other keys alone; `append` adds an item to the list there. */
export type Edit =
  | { readonly kind: 'set'; readonly path: readonly string[]; readonly values: { readonly [key: string]: Plain } }
  | { readonly kind: 'append'; readonly path: readonly string[]; readonly value: { readonly [key: string]: Plain } };

/**
 * The text of a shop's file with some values changed. Nothing but the values themselves is touched: every comment, the
 * order of keys, quotes, spaces and line ends stay as they were written. The text must be one that `readShop` takes.
 * What comes out is read again and compared before it is given back. Errors: `shop-not-editable`.
 */
export function editShop(text: string, file: string, edits: readonly Edit[]): Result<string> {
  const style: Style = /^\s*\{\s*(?:"|\})/.test(text) ? 'json' : 'yaml';
  let now = text;
  for (const edit of edits) {
    const wanted = applied(dataOf(now), edit);
    const next = edit.kind === 'set' ? setKeys(now, edit.path, edit.values, style) : append(now, edit, style);
    if (next === undefined || !alike(dataOf(next), wanted) || !keepsComments(now, next)) {
      const where = showPath(edit.path);
      const message = `${word(where)} is written in a way that cannot be changed without touching the rest`;
      const hint = 'write that part out, one key a line and without anchors, and try again; nothing was changed';
      return fail([{ ...error('shop-not-editable', edit.path, message, hint), file }]);
    }
    now = next;
  }
  return succeed(now);
}

const OPTIONS = { version: '1.2', schema: 'core', uniqueKeys: false } as const;

function dataOf(text: string): Plain {
  const document = parseDocument(text, OPTIONS);
  return document.errors.length > 0 ? '' : ((document.toJS() ?? {}) as Plain);
}

/** Of a key that is there. */
const dataAt = (text: string, path: readonly string[]): Plain =>
  path.reduce<Plain>((at, key) => (isMapping(at) ? (at[key] ?? '') : ''), dataOf(text));

function applied(value: Plain, edit: Edit): Plain {
  const change = (at: Plain | undefined, path: readonly string[]): Plain => {
    const [step, ...rest] = path;
    const map = at !== undefined && isMapping(at) ? at : {};
    if (step !== undefined) return { ...map, [step]: change(map[step], rest) };
    if (edit.kind === 'set') return { ...map, ...edit.values };
    return [...(Array.isArray(at) ? (at as Plain[]) : []), edit.value];
  };
  return change(value, edit.path);
}

/** An empty value, which YAML reads as null, is none. */
const isObject = (value: Plain | null): value is Plain & object => typeof value === 'object' && value !== null;

function alike(a: Plain, b: Plain): boolean {
  if (!isObject(a) || !isObject(b)) return a === b;
  const [left, right] = [Object.entries(a), Object.entries(b)];
  return (
    left.length === right.length &&
    Array.isArray(a) === Array.isArray(b) &&
    left.every(([key, value], i) => key === right[i]![0] && alike(value, right[i]![1]))
  );
}

/** All comments of the first text stand in the second, in the same order. */
function keepsComments(before: string, after: string): boolean {
  const left = comments(after)[Symbol.iterator]();
  return comments(before).every(({ text }) => {
    for (let next = left.next(); next.done !== true; next = left.next()) if (next.value.text === text) return true;
    return false;
  });
}

/** Marks that the lexer puts between the pieces, which are no part of the text; the last stands before a scalar, which may begin with #. */
const MARKS = ['\u0002', '\u0018', '\u001f'];
const SCALAR = '\u001f';

function comments(text: string): readonly { readonly at: number; readonly text: string }[] {
  const found: { at: number; text: string }[] = [];
  let [at, scalar] = [0, false];
  for (const piece of new Lexer().lex(text)) {
    if (!scalar && piece.startsWith('#')) found.push({ at, text: piece });
    scalar = piece === SCALAR;
    if (!MARKS.includes(piece)) at += piece.length;
  }
  return found;
}

interface Ranged {
  readonly range?: readonly [number, number, number] | null;
}

type Found =
  | { readonly kind: 'node'; readonly node: unknown }
  /** The map that lacks the key `path[depth]`. */
  | { readonly kind: 'missing'; readonly map: YAMLMap; readonly depth: number }
  | { readonly kind: 'empty' }
  | undefined;

function find(text: string, path: readonly string[]): Found {
  let node: unknown = parseDocument(text, OPTIONS).contents;
  if (node === null || (isScalar(node) && node.value === null)) return { kind: 'empty' };
  for (const [depth, key] of path.entries()) {
    if (!isMap(node)) return undefined;
    const pair = pairOf(node, key);
    if (pair === undefined) return { kind: 'missing', map: node, depth };
    node = pair.value;
  }
  return { kind: 'node', node };
}

const pairOf = (map: YAMLMap, key: string): Pair | undefined =>
  map.items.find((pair) => isScalar(pair.key) && pair.key.value === key);

function setKeys(
  text: string,
  path: readonly string[],
  values: { readonly [key: string]: Plain },
  style: Style,
): string | undefined {
  const found = find(text, path);
  if (found === undefined) return undefined;
  if (found.kind !== 'node') return insert(text, found, path, values, style);
  let now = text;
  for (const [key, value] of Object.entries(values)) {
    const here = find(now, [...path, key]);
    if (here === undefined || here.kind === 'empty') return undefined;
    if (here.kind === 'node' && alike(dataAt(now, [...path, key]), value)) continue;
    const next =
      here.kind === 'node' ? replace(now, here.node, value, style) : insert(now, here, [...path, key], value, style);
    if (next === undefined) return undefined;
    now = next;
  }
  return now;
}

function append(text: string, edit: Edit & { readonly kind: 'append' }, style: Style): string | undefined {
  const found = find(text, edit.path);
  if (found === undefined) return undefined;
  if (found.kind !== 'node') return insert(text, found, edit.path, [edit.value], style);
  const list = found.node;
  if (!isSeq(list)) return undefined;
  if (list.flow === true) return within(text, list, onOneLine(edit.value, style));
  const { range } = list as Ranged;
  const indent = columnOf(text, range![0]);
  return afterLine(text, endOf(list), itemLines(edit.value, ' '.repeat(indent)));
}

/** An empty list has nothing to stand below its key. */
const isListOfMaps = (value: Plain): value is readonly { readonly [key: string]: Plain }[] =>
  Array.isArray(value) && value.length > 0 && value.every(isMapping);

/** A list's item, on one line where it holds no lists of maps itself. */
function itemLines(value: { readonly [key: string]: Plain }, indent: string): readonly string[] {
  const nested = Object.values(value).some((part) => Array.isArray(part) && part.some(isMapping));
  if (!nested) return [`${indent}- ${onOneLine(value, 'yaml')}`];
  return asLines(value, `${indent}  `).map((line, i) =>
    i === 0 ? `${indent}- ${line.slice(indent.length + 2)}` : line,
  );
}

/** A new key, with whatever leads to it, at the end of the map that lacks it. */
function insert(
  text: string,
  found: Exclude<Found, undefined>,
  path: readonly string[],
  value: Plain,
  style: Style,
): string | undefined {
  if (found.kind === 'node') return undefined;
  const steps = path.slice(found.kind === 'missing' ? found.depth : 0);
  if (found.kind === 'missing' && found.map.flow === true) {
    const nested = steps.slice(1).reduceRight<Plain>((inner, key) => ({ [key]: inner }), value);
    return within(text, found.map, `${keyText(steps[0]!, style)}: ${onOneLine(nested, style)}`);
  }
  const first = found.kind === 'missing' ? (found.map.items[0]!.key as Ranged).range![0] : undefined;
  const indent = ' '.repeat(first === undefined ? 0 : columnOf(text, first));
  const lines = steps.slice(0, -1).map((key, i) => `${indent}${'  '.repeat(i)}${keyText(key, style)}:`);
  const deepest = `${indent}${'  '.repeat(steps.length - 1)}`;
  const name = `${deepest}${keyText(steps.at(-1)!, style)}:`;
  if (isListOfMaps(value)) {
    lines.push(name, ...value.flatMap((item) => itemLines(item, `${deepest}  `)));
  } else lines.push(`${name} ${onOneLine(value, style)}`);
  return afterLine(text, found.kind === 'missing' ? endOf(found.map) : text.length, lines);
}

/** Puts one more item before the closing bracket of a list or map in brackets. */
function within(text: string, collection: YAMLMap | YAMLSeq, item: string): string {
  const { range } = collection as Ranged;
  if (collection.items.length === 0) return splice(text, range![0] + 1, range![0] + 1, item);
  const last = endOf(collection, true);
  return splice(text, last, last, `, ${item}`);
}

/** Another value in the place of one; comments within the old one move below the new. */
function replace(text: string, node: unknown, value: Plain, style: Style): string | undefined {
  const { range } = node as Ranged;
  if (range === undefined || range === null) return undefined;
  const [start] = range;
  const end = endOf(node);
  const block = (isSeq(node) || isMap(node)) && node.flow !== true;
  const kept = comments(text).filter(({ at }) => at > start && at < end);
  if (!block && kept.length === 0) return splice(text, start, end, onOneLine(value, style));
  const indent = ' '.repeat(columnOf(text, block ? start : lineStart(text, start) + leading(text, start)));
  const notes = kept.map((comment) => `${indent}${comment.text}`);
  if (block && isSeq(node) && isListOfMaps(value)) {
    const lines = value.map((item) => `${indent}- ${onOneLine(item, style)}`);
    // A comment behind the last item stays where it stands.
    return splice(text, start, end, [...lines, ...notes].join(eol(text)).slice(indent.length));
  }
  // What was lines below its key becomes one value behind it.
  const from = block ? text.lastIndexOf(':', start) + 1 : start;
  const between = text.slice(from, start).trim();
  if (block && between !== '') return undefined;
  return splice(text, from, end, [`${block ? ' ' : ''}${onOneLine(value, style)}`, ...notes].join(eol(text)));
}

const splice = (text: string, from: number, to: number, put: string): string =>
  `${text.slice(0, from)}${put}${text.slice(to)}`;

const eol = (text: string): string => (text.includes('\r\n') ? '\r\n' : '\n');
/** A byte order mark takes no column. */
const lineStart = (text: string, at: number): number =>
  (at > 0 ? text.lastIndexOf('\n', at - 1) + 1 : 0) || (text.startsWith('\ufeff') ? 1 : 0);
const columnOf = (text: string, at: number): number => at - lineStart(text, at);
const leading = (text: string, at: number): number => /^[ ]*/.exec(text.slice(lineStart(text, at)))![0].length;

/** Where the last thing in a node ends, without what follows it. `inside`: of its last item instead. */
function endOf(node: unknown, inside = false): number {
  if ((isMap(node) || isSeq(node)) && (inside || node.flow !== true)) {
    const last = node.items.at(-1);
    if (last !== undefined) return isMap(node) ? endOf((last as Pair).value ?? (last as Pair).key) : endOf(last);
  }
  return (node as Ranged).range?.[1] ?? Number.NaN;
}

/** New lines below the one that holds `at`. */
function afterLine(text: string, at: number, lines: readonly string[]): string | undefined {
  if (Number.isNaN(at)) return undefined;
  const end = eol(text);
  const body = lines.map((line) => `${line}${end}`).join('');
  if (at > 0 && text[at - 1] === '\n') return splice(text, at, at, body);
  const next = text.indexOf('\n', at);
  if (next === -1) return `${text}${text === '' ? '' : end}${body}`;
  return splice(text, next + 1, next + 1, body);
}
