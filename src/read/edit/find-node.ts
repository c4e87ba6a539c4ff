import { type Document, isMap, isScalar, isSeq, type Pair, parseDocument, type YAMLMap } from 'yaml';
import { defined } from '../../problems/defined.ts';
import { comments, endOf, remarked } from './edit-text.ts';
import { isMapping, type Plain } from './yaml-print.ts';

/** Keys, and places in lists from 0. */
export type EditPath = readonly (string | number)[];

const OPTIONS = { version: '1.2', schema: 'core', uniqueKeys: false } as const;

/** The last text that was asked about: whoever edits one asks several times. Nobody changes a document. */
let last: { readonly text: string; readonly document: Document.Parsed; readonly data?: Plain } | undefined;

export function documentOf(text: string): Document.Parsed {
  if (last?.text !== text) last = { text, document: parseDocument(text, OPTIONS) };
  return last.document;
}

export function dataOf(text: string): Plain {
  const document = documentOf(text);
  if (last?.data !== undefined && last.document === document) return last.data;
  const data = document.errors.length > 0 ? '' : ((document.toJS() ?? {}) as Plain);
  last = { text, document, data };
  return data;
}

/** Of a key that is there. */
export const dataAt = (text: string, path: EditPath): Plain =>
  path.reduce<Plain>((at, key) => {
    if (typeof key === 'number') return Array.isArray(at) ? (at[key] ?? '') : '';
    return isMapping(at) ? (at[key] ?? '') : '';
  }, dataOf(text));

/** An empty value, which YAML reads as null, is none. */
const isObject = (value: Plain | null): value is Plain & object => typeof value === 'object' && value !== null;

export function alike(a: Plain, b: Plain): boolean {
  if (!isObject(a) || !isObject(b)) return a === b;
  const [left, right] = [Object.entries(a), Object.entries(b)];
  return (
    left.length === right.length &&
    Array.isArray(a) === Array.isArray(b) &&
    left.every(([key, value], i) => key === right[i]![0] && alike(value, right[i]![1]))
  );
}

/** All comments of the first text stand in the second, in the same order; behind a remark too, where there is one. */
export function keepsComments(before: string, after: string, remark?: string): boolean {
  const isKept = (text: string, now: string): boolean =>
    now === text || (remark !== undefined && now === remarked(text, remark));
  // What was before is known from the edit before.
  const all = comments(before);
  const left = comments(after)[Symbol.iterator]();
  return all.every(({ text }) => {
    for (let next = left.next(); next.done !== true; next = left.next()) if (isKept(text, next.value.text)) return true;
    return false;
  });
}

export type Found =
  /** `inBrackets`: within a list or map in brackets, where more signs mean something. `keyEnd`: of the key before it. */
  | { readonly kind: 'node'; readonly node: unknown; readonly inBrackets: boolean; readonly keyEnd?: number }
  /** The map that lacks the key `path[depth]`. */
  | { readonly kind: 'missing'; readonly map: YAMLMap; readonly depth: number }
  | { readonly kind: 'empty' }
  | undefined;

export function find(text: string, path: EditPath): Found {
  let node: unknown = documentOf(text).contents;
  if (node === null || (isScalar(node) && node.value === null)) return { kind: 'empty' };
  let inBrackets = false;
  let keyEnd: number | undefined;
  for (const [depth, key] of path.entries()) {
    if ((isMap(node) || isSeq(node)) && node.flow === true) inBrackets = true;
    if (typeof key === 'number') {
      if (!isSeq(node) || key >= node.items.length) return undefined;
      node = node.items[key];
      keyEnd = undefined;
      continue;
    }
    if (!isMap(node)) return undefined;
    const pair = pairOf(node, key);
    if (pair === undefined) return { kind: 'missing', map: node, depth };
    node = pair.value;
    keyEnd = endOf(pair.key);
  }
  return { kind: 'node', node, inBrackets, ...defined({ keyEnd }) };
}

export const pairOf = (map: YAMLMap, key: string): Pair | undefined =>
  map.items.find((pair) => isScalar(pair.key) && pair.key.value === key);
