import { isAlias, isMap, isScalar, isSeq, type Scalar, type YAMLMap, type YAMLSeq } from 'yaml';
import { word } from '../../problems/quoted.ts';
import { MAX_DEPTH, MAX_VALUES } from './bounds.ts';
import { type Complain, putEntry, TOO_MANY } from './complaints.ts';
import type { Entry, Node } from './node.ts';
import { COLOUR_HINT } from './yaml-scan.ts';

interface Extent {
  readonly node: Node;
  /** Values in it, aliases written out. */
  readonly size: number;
  /** Lists and maps in it, the longest chain. */
  readonly depth: number;
}

type Path = readonly (string | number)[];

const ALIAS_HINT = 'write the value out';
const VALUE_HINT = 'write one, or take the key out';

/** The tree of a document's contents; undefined where aliases make it too large. `text` is what was parsed. */
export function yamlTree(contents: unknown, text: string, complain: Complain): Node | undefined {
  return new Reader(text, complain).root(contents);
}

class Reader {
  readonly #text: string;
  readonly #complain: Complain;
  /** By name, the latest above; `undefined` while its own content is being read. */
  readonly #anchors = new Map<string, Extent | undefined>();
  #count = 0;
  #full = false;

  constructor(text: string, complain: Complain) {
    this.#text = text;
    this.#complain = complain;
  }

  root(contents: unknown): Node | undefined {
    const { node } = this.#read(contents, []);
    return this.#full ? undefined : node;
  }

  #refuse(code: string, at: number, path: Path, message: string, hint: string): Extent {
    this.#complain(code, at, message, hint, path);
    return { node: { kind: 'refused', at }, size: 1, depth: 0 };
  }

  #overflow(at: number, path: Path): Extent {
    if (this.#full) return { node: { kind: 'refused', at }, size: 1, depth: 0 };
    this.#full = true;
    return this.#refuse(TOO_MANY.code, at, path, TOO_MANY.message, TOO_MANY.hint);
  }

  #read(given: unknown, path: Path): Extent {
    const at = startOf(given) ?? 0;
    this.#count += 1;
    if (this.#full || this.#count > MAX_VALUES) return this.#overflow(at, path);
    if (isAlias(given)) return this.#alias(given.source, at, path);
    if (!isScalar(given) && !isMap(given) && !isSeq(given)) return this.#nothing(at, path);
    if (given.anchor === undefined) return this.#value(given, at, path);
    this.#anchors.set(given.anchor, undefined);
    const extent = this.#value(given, at, path);
    this.#anchors.set(given.anchor, extent);
    return extent;
  }

  #value(given: Scalar | YAMLMap | YAMLSeq, at: number, path: Path): Extent {
    if (given.tag !== undefined) {
      return this.#refuse('yaml-tag', at, path, 'a tag (!) stands before the value', 'take the tag out');
    }
    if (isScalar(given)) return this.#scalar(given, at, path);
    if (isMap(given)) return this.#map(given, at, path);
    const items = given.items.map((item, index) => this.#read(item, [...path, index]));
    return measured({ kind: 'list', at, items: items.map((item) => item.node) }, items);
  }

  #scalar({ value, source = '' }: Scalar, at: number, path: Path): Extent {
    if (typeof value === 'number' && !Number.isFinite(value)) {
      const message = /\d/.test(source) ? 'this number is too large' : 'this is not a number that a job can hold';
      return this.#refuse('number-not-finite', at, path, message, 'write a plain number');
    }
    if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') {
      return { node: { kind: 'scalar', at, value }, size: 1, depth: 0 };
    }
    return this.#nothing(at, path);
  }

  /** An empty place, or null. A colour without quotes is a comment to YAML. */
  #nothing(at: number, path: Path): Extent {
    const comment = /^:?[ \t]*#[0-9a-fA-F]{3,8}\b/.test(this.#text.slice(at, at + 40));
    const hint = comment ? `what follows a # is a comment: ${COLOUR_HINT}` : VALUE_HINT;
    return this.#refuse('value-missing', at, path, 'a value is missing (null is never a value)', hint);
  }

  #map(given: YAMLMap, at: number, path: Path): Extent {
    const entries = new Map<string, Entry>();
    const children: Extent[] = [];
    for (const { key, value } of given.items) {
      const keyAt = startOf(key) ?? at;
      const name = isScalar(key) && key.tag === undefined ? key.value : undefined;
      if (typeof name !== 'string') {
        const hint = 'put a key that looks like a number in quotes';
        this.#complain('key-not-text', keyAt, 'a key must be plain text', hint, path);
        continue;
      }
      const keyPath = [...path, name];
      if (name === '<<') {
        this.#complain('yaml-merge', keyAt, 'merge keys (<<) are not supported', 'write the keys out', keyPath);
        continue;
      }
      const child = value === null ? this.#nothing(keyAt, keyPath) : this.#read(value, keyPath);
      if (putEntry(entries, name, { keyAt, value: child.node }, keyPath, this.#complain)) children.push(child);
    }
    return measured({ kind: 'map', at, entries }, children);
  }

  #alias(name: string, at: number, path: Path): Extent {
    const shown = word(name);
    const target = this.#anchors.get(name);
    if (!this.#anchors.has(name)) {
      return this.#refuse('yaml-alias', at, path, `*${shown} names no value above`, ALIAS_HINT);
    }
    if (target === undefined) {
      return this.#refuse('yaml-alias', at, path, `*${shown} stands within itself`, ALIAS_HINT);
    }
    this.#count += target.size;
    return this.#count > MAX_VALUES || path.length + target.depth > MAX_DEPTH ? this.#overflow(at, path) : target;
  }
}

function measured(node: Node, children: readonly Extent[]): Extent {
  let [size, depth] = [1, 0];
  for (const child of children) {
    size += child.size;
    depth = Math.max(depth, child.depth);
  }
  return { node, size, depth: depth + 1 };
}

function startOf(given: unknown): number | undefined {
  return (given as { readonly range?: readonly number[] | null } | null)?.range?.[0];
}
