import { isMap, isScalar, isSeq, type Pair, parseDocument, type YAMLMap } from 'yaml';
import { error, fail, type Result, succeed } from '../problems/problem.ts';
import { word } from '../problems/quoted.ts';
import { showPath } from '../problems/show.ts';
import {
  afterLine,
  columnOf,
  comments,
  endOf,
  eol,
  leading,
  lineStart,
  type Ranged,
  splice,
  within,
  withoutItem,
} from '../read/edit/edit-text.ts';
import { asLines, isMapping, keyText, onOneLine, type Plain, type Style } from '../read/edit/yaml-print.ts';

/** Keys, and places in lists from 0. */
type EditPath = readonly (string | number)[];

/**
 * `set` changes keys of the map at a path and leaves its other keys alone; `append` adds an item to the list there;
 * `remove` takes the item at a place of a list out.
 */
export type Edit =
  | { readonly kind: 'set'; readonly path: EditPath; readonly values: { readonly [key: string]: Plain } }
  | { readonly kind: 'append'; readonly path: EditPath; readonly value: { readonly [key: string]: Plain } }
  | { readonly kind: 'remove'; readonly path: EditPath; readonly at: number };

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
    const next = changed(now, edit, style);
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

function changed(text: string, edit: Edit, style: Style): string | undefined {
  switch (edit.kind) {
    case 'set':
      return setKeys(text, edit.path, edit.values, style);
    case 'append':
      return append(text, edit, style);
    case 'remove':
      return remove(text, edit);
    default: {
      const never: never = edit;
      return never;
    }
  }
}

const OPTIONS = { version: '1.2', schema: 'core', uniqueKeys: false } as const;

function dataOf(text: string): Plain {
  const document = parseDocument(text, OPTIONS);
  return document.errors.length > 0 ? '' : ((document.toJS() ?? {}) as Plain);
}

/** Of a key that is there. */
const dataAt = (text: string, path: EditPath): Plain =>
  path.reduce<Plain>((at, key) => {
    if (typeof key === 'number') return Array.isArray(at) ? (at[key] ?? '') : '';
    return isMapping(at) ? (at[key] ?? '') : '';
  }, dataOf(text));

function applied(value: Plain, edit: Edit): Plain {
  const change = (at: Plain | undefined, path: EditPath): Plain => {
    const [step, ...rest] = path;
    const list = Array.isArray(at) ? (at as readonly Plain[]) : [];
    if (typeof step === 'number') return list.map((item, i) => (i === step ? change(item, rest) : item));
    const map = at !== undefined && isMapping(at) ? at : {};
    if (step !== undefined) return { ...map, [step]: change(map[step], rest) };
    switch (edit.kind) {
      case 'set':
        return { ...map, ...edit.values };
      case 'append':
        return [...list, edit.value];
      case 'remove':
        return list.filter((_, i) => i !== edit.at);
      default: {
        const never: never = edit;
        return never;
      }
    }
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

type Found =
  | { readonly kind: 'node'; readonly node: unknown }
  /** The map that lacks the key `path[depth]`. */
  | { readonly kind: 'missing'; readonly map: YAMLMap; readonly depth: number }
  | { readonly kind: 'empty' }
  | undefined;

function find(text: string, path: EditPath): Found {
  let node: unknown = parseDocument(text, OPTIONS).contents;
  if (node === null || (isScalar(node) && node.value === null)) return { kind: 'empty' };
  for (const [depth, key] of path.entries()) {
    if (typeof key === 'number') {
      if (!isSeq(node) || key >= node.items.length) return undefined;
      node = node.items[key];
      continue;
    }
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
  path: EditPath,
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

function remove(text: string, { path, at }: Edit & { readonly kind: 'remove' }): string | undefined {
  const found = find(text, path);
  if (found?.kind !== 'node' || !isSeq(found.node)) return undefined;
  const less = withoutItem(text, found.node, at);
  if (less === undefined || found.node.items.length > 1 || found.node.flow === true) return less;
  // A list of lines that has none left is written behind its key.
  const above = find(text, path.slice(0, -1));
  const map = path.length > 1 && above?.kind === 'node' ? above.node : parseDocument(text, OPTIONS).contents;
  const pair = isMap(map) ? pairOf(map, String(path.at(-1))) : undefined;
  const key = pair === undefined ? -1 : text.indexOf(':', endOf(pair.key));
  return key === -1 ? undefined : splice(less, key + 1, key + 1, ' []');
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
  path: EditPath,
  value: Plain,
  style: Style,
): string | undefined {
  if (found.kind === 'node') return undefined;
  // What is missing are keys: a place in a list that is not there is never found.
  const steps = path.slice(found.kind === 'missing' ? found.depth : 0).map(String);
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
