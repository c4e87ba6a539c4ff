import type { Problem } from '../../problems/problem.ts';

/** A value where it stands in the text. Offsets count UTF-16 units from the start of the text. */
export type Node = ScalarNode | ListNode | MapNode | RefusedNode;

export interface ScalarNode {
  readonly kind: 'scalar';
  readonly at: number;
  readonly value: string | number | boolean;
}

export interface ListNode {
  readonly kind: 'list';
  readonly at: number;
  readonly items: readonly Node[];
}

/** Keys live in a Map: `__proto__` and its like are keys as any other. */
export interface MapNode {
  readonly kind: 'map';
  readonly at: number;
  readonly entries: ReadonlyMap<string, Entry>;
}

export interface Entry {
  readonly keyAt: number;
  readonly value: Node;
}

/** Something that is no value (null, a tag …): its problem was already told, and nobody tells another. */
export interface RefusedNode {
  readonly kind: 'refused';
  readonly at: number;
}

/** Stands for a refused node among plain values; no schema accepts it. */
const REFUSED: unique symbol = Symbol('refused');

/** Plain data without positions; maps become objects that have no prototype. */
export function plain(node: Node): unknown {
  switch (node.kind) {
    case 'scalar':
      return node.value;
    case 'list':
      return node.items.map(plain);
    case 'map': {
      const out: Record<string, unknown> = Object.create(null);
      for (const [key, entry] of node.entries) out[key] = plain(entry.value);
      return out;
    }
    case 'refused':
      return REFUSED;
  }
}

/** A file without content is a map without keys. */
export const emptyMap = (at: number): Node => ({ kind: 'map', at, entries: new Map() });

export interface Found {
  /** The node itself, or its nearest ancestor that is there. */
  readonly node: Node;
  /** The offset of the key that leads to `node`; undefined in a list and at the root. */
  readonly keyAt?: number;
  /** Whether the whole path is there. */
  readonly whole: boolean;
}

export function find(root: Node, path: Problem['path']): Found {
  let found: Found = { node: root, whole: true };
  for (const step of path) {
    const { node } = found;
    if (node.kind === 'map' && node.entries.has(String(step))) {
      const entry = node.entries.get(String(step))!;
      found = { node: entry.value, keyAt: entry.keyAt, whole: true };
    } else if (node.kind === 'list' && typeof step === 'number' && node.items[step] !== undefined) {
      found = { node: node.items[step], whole: true };
    } else {
      return { ...found, whole: false };
    }
  }
  return found;
}

/** A document that was read: its tree, and where its lines start. */
export interface Source {
  readonly root: Node;
  readonly file: string;
  readonly lines: LineStarts;
}

export type LineStarts = readonly number[];

export function lineStarts(text: string): LineStarts {
  const starts = [0];
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return starts;
}

/** Line and column from 1; columns count UTF-16 units, as editors do. */
export function position(lines: LineStarts, offset: number): { readonly line: number; readonly column: number } {
  let [low, high] = [0, lines.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (lines[middle]! <= offset) low = middle;
    else high = middle - 1;
  }
  return { line: low + 1, column: offset - lines[low]! + 1 };
}
