import { Composer, type Document, isAlias, isMap, isScalar, isSeq, Lexer, Parser } from 'yaml';
import { MAX_DEPTH, MAX_VALUES } from './bounds.ts';
import { NestingScan } from './nesting.ts';
import type { Complain, Entry, Node } from './node.ts';
import { wordsFor } from './yaml-words.ts';

/**
 * Reads YAML 1.2 (core schema) that was found short enough. What is no value in a job (null, tags, dates as dates,
 * merge keys …) is told and stands as a refused node. Undefined where the text cannot be read as YAML at all.
 */
export function readYaml(text: string, complain: Complain): Node | undefined {
  const pieces: string[] = [];
  const scan = new NestingScan();
  for (const piece of new Lexer().lex(text)) {
    const deep = scan.next(piece);
    if (deep !== undefined) {
      complain(
        'text-too-deep',
        deep,
        `lists and maps nest deeper than ${MAX_DEPTH}`,
        'a job needs no more than six levels',
      );
      return undefined;
    }
    pieces.push(piece);
  }
  const document = compose(pieces, text.length, complain);
  return document === undefined ? undefined : new Reader(complain).root(document);
}

function compose(pieces: readonly string[], length: number, complain: Complain): Document.Parsed | undefined {
  const parser = new Parser();
  const composer = new Composer({ version: '1.2', schema: 'core', uniqueKeys: false, keepSourceTokens: false });
  const documents: Document.Parsed[] = [];
  let directive: number | undefined;
  const tokens = function* () {
    for (const piece of pieces) yield* parser.next(piece);
    yield* parser.end();
  };
  const watched = function* () {
    for (const token of tokens()) {
      if (token.type === 'directive' && !/^%YAML[ \t]+1\.2[ \t]*$/.test(token.source)) directive ??= token.offset;
      yield token;
    }
  };
  for (const document of composer.compose(watched(), true, length)) documents.push(document);
  const [first, second] = documents;
  if (directive !== undefined) {
    complain('yaml-directive', directive, 'the file has a YAML directive', 'take the line that begins with % out');
    return undefined;
  }
  const errors = documents.flatMap((document) => document.errors);
  for (const problem of errors) {
    const words = wordsFor(problem.code, problem.message);
    complain(words.code, problem.pos[0], words.message, words.hint);
  }
  if (errors.length > 0) return undefined;
  if (second !== undefined) {
    complain('yaml-documents', second.range[0], 'the file holds several documents', 'keep one job to a file');
    return undefined;
  }
  return first;
}

interface Extent {
  readonly node: Node;
  /** Values in it, aliases written out. */
  readonly size: number;
  readonly depth: number;
}

type Path = readonly (string | number)[];

const ALIAS_HINT = 'write the value out';

class Reader {
  readonly #complain: Complain;
  /** Finished anchors by name; `undefined` while its own content is being read. */
  readonly #anchors = new Map<string, Extent | undefined>();
  #full = false;
  #count = 0;

  constructor(complain: Complain) {
    this.#complain = complain;
  }

  root(document: Document.Parsed): Node | undefined {
    if (document.contents === null || (isScalar(document.contents) && document.contents.value === null)) {
      this.#complain('text-empty', 0, 'the file is empty', 'a job needs at least openings and a size');
      return undefined;
    }
    const { node } = this.#read(document.contents, []);
    return this.#full ? undefined : node;
  }

  #refused(at: number): Extent {
    return { node: { kind: 'refused', at }, size: 1, depth: 0 };
  }

  #refuse(code: string, at: number, path: Path, message: string, hint: string): Extent {
    this.#complain(code, at, message, hint, path);
    return this.#refused(at);
  }

  #read(given: unknown, path: Path): Extent {
    const range = (given as { range?: readonly [number, number, number] | null } | null)?.range;
    const at = range?.[0] ?? 0;
    if (this.#full) return this.#refused(at);
    this.#count += 1;
    if (isAlias(given)) return this.#alias(given.source, at, path);
    if (!isScalar(given) && !isMap(given) && !isSeq(given))
      return this.#refuse('value-missing', at, path, 'a value is missing', VALUE_HINT);
    if (given.anchor !== undefined) this.#anchors.set(given.anchor, undefined);
    const extent = this.#value(given, at, path);
    if (given.anchor !== undefined) this.#anchors.set(given.anchor, extent);
    return extent;
  }

  #value(given: unknown, at: number, path: Path): Extent {
    if ((isScalar(given) || isMap(given) || isSeq(given)) && given.tag !== undefined) {
      return this.#refuse(
        'yaml-tag',
        at,
        path,
        `a tag (${short(given.tag)}) stands before the value`,
        'take the tag out',
      );
    }
    if (isScalar(given)) return this.#scalar(given.value, at, path);
    if (isSeq(given)) {
      const items = given.items.map((item, index) => this.#read(item, [...path, index]));
      return this.#measured({ kind: 'list', at, items: items.map((item) => item.node) }, items);
    }
    if (isMap(given)) return this.#map(given.items, at, path);
    return this.#refused(at);
  }

  #scalar(value: unknown, at: number, path: Path): Extent {
    if (value === null || value === undefined) {
      return this.#refuse('value-missing', at, path, 'a value is missing (null is never a value)', VALUE_HINT);
    }
    if (typeof value === 'number' && !Number.isFinite(value)) {
      return this.#refuse(
        'number-not-finite',
        at,
        path,
        `${value} is not a number that a job can hold`,
        'write a plain number',
      );
    }
    if (typeof value !== 'string' && typeof value !== 'number' && typeof value !== 'boolean') {
      return this.#refuse('value-missing', at, path, 'this is not a value that a job can hold', VALUE_HINT);
    }
    return { node: { kind: 'scalar', at, value }, size: 1, depth: 0 };
  }

  #map(pairs: readonly { key: unknown; value: unknown }[], at: number, path: Path): Extent {
    const entries = new Map<string, Entry>();
    const children: Extent[] = [];
    for (const pair of pairs) {
      const keyAt = (pair.key as { range?: readonly [number, number, number] } | null)?.range?.[0] ?? at;
      const key = isScalar(pair.key) && pair.key.tag === undefined ? pair.key.value : undefined;
      if (typeof key !== 'string') {
        this.#complain(
          'key-not-text',
          keyAt,
          'a key must be plain text',
          'put a key that looks like a number in quotes',
          path,
        );
        continue;
      }
      if (key === '<<') {
        this.#complain('yaml-merge', keyAt, 'merge keys (<<) are not supported', 'write the keys out', [...path, key]);
        continue;
      }
      if (entries.has(key)) {
        this.#complain('key-twice', keyAt, `${short(key)} stands twice`, 'keep one of the two', [...path, key]);
        continue;
      }
      const child =
        pair.value === null ? this.#scalar(null, keyAt, [...path, key]) : this.#read(pair.value, [...path, key]);
      entries.set(key, { keyAt, value: child.node });
      children.push(child);
    }
    return this.#measured({ kind: 'map', at, entries }, children);
  }

  #alias(name: string, at: number, path: Path): Extent {
    if (!this.#anchors.has(name))
      return this.#refuse('yaml-alias', at, path, `*${short(name)} names no value above`, ALIAS_HINT);
    const target = this.#anchors.get(name);
    if (target === undefined)
      return this.#refuse('yaml-alias', at, path, `*${short(name)} stands within itself`, ALIAS_HINT);
    this.#count += target.size;
    if (this.#count > MAX_VALUES || path.length + target.depth > MAX_DEPTH) {
      return this.#overflow(at, path, `aliases make more than ${MAX_VALUES} values or nest deeper than ${MAX_DEPTH}`);
    }
    return target;
  }

  #measured(node: Node, children: readonly Extent[]): Extent {
    let [size, depth] = [1, 0];
    for (const child of children) {
      size += child.size;
      depth = Math.max(depth, child.depth);
    }
    if (this.#count > MAX_VALUES) return this.#overflow(node.at, [], `the file holds more than ${MAX_VALUES} values`);
    return { node, size, depth: depth + 1 };
  }

  #overflow(at: number, path: Path, message: string): Extent {
    if (this.#full) return this.#refused(at);
    this.#full = true;
    return this.#refuse('text-too-many-values', at, path, message, 'split it into several files');
  }
}

const VALUE_HINT = 'write one, or take the key out';

const short = (text: string): string => (text.length > 40 ? `${text.slice(0, 40)}…` : text);
