import type * as z from 'zod/mini';
import { defined } from '../../problems/defined.ts';
import { nearest } from '../../problems/nearest.ts';
import { error, type Problem } from '../../problems/problem.ts';
import { quoted, word } from '../../problems/quoted.ts';
import { showPath } from '../../problems/show.ts';
import { MAX_PROBLEMS } from './bounds.ts';
import { find, type Node, position, type Source } from './node.ts';

type Issue = z.core.$ZodIssue;
type Path = readonly (string | number)[];

/** The problems behind a schema's issues, each with its place in the text. */
export function problemsOf(issues: readonly Issue[], source: Source): Problem[] {
  return issues.flatMap((issue) => told(issue, [], source.root)).map((problem) => locate(problem, source));
}

function told(issue: Issue, above: Path, root: Node): readonly Problem[] {
  const path: Path = [...above, ...issue.path.map((step) => (typeof step === 'symbol' ? String(step) : step))];
  const { node, whole } = find(root, path);
  if (node.kind === 'refused') return [];
  switch (issue.code) {
    case 'unrecognized_keys':
      return unknownKeys(issue.keys, issue.message.split(' '), path);
    case 'invalid_union': {
      const branch = issue.errors.find((errors) => errors.length > 0 && errors.every((inner) => !wrongKind(inner)));
      return branch?.flatMap((inner) => told(inner, path, root)) ?? [wrong(issue.message, path, node, whole)];
    }
    case 'invalid_key':
      return issue.issues
        .flatMap((inner) => told({ ...inner, path: [] }, path, root))
        .map(({ path: at, message, hint }) => error('key-unusable', at, message, hint));
    case 'custom': {
      const { code, hint } = issue.params as { readonly code: string; readonly hint: string };
      return [error(code, path, issue.message, hint)];
    }
    default:
      return [wrong(issue.message, path, node, whole)];
  }
}

/** In a flood of them only those that are told are compared with the known ones. */
function unknownKeys(keys: readonly string[], known: readonly string[], path: Path): Problem[] {
  const list = `known here: ${known.join(', ')}`;
  return keys.map((key, index) => {
    const near = index < MAX_PROBLEMS ? nearest(key, known) : undefined;
    const hint = near === undefined ? list : `did you mean ${near}? ${list}`;
    return error('key-unknown', [...path, key], `${word(key)} is not a key of ${place(path)}`, hint);
  });
}

function wrong(expected: string, path: Path, node: Node, whole: boolean): Problem {
  if (!whole) return error('key-missing', path, `${path.at(-1)} is missing`, `give ${expected}`);
  const message = `expected ${expected}, found ${described(node)}`;
  return error('value-kind', path, message, kindHint(node, expected));
}

/** True where a branch of a union does not even take this kind of value. */
function wrongKind(issue: Issue): boolean {
  if (issue.path.length > 0) return false;
  if (issue.code === 'invalid_type') return true;
  if (issue.code !== 'invalid_union') return false;
  return issue.errors.every((errors) => errors.some((inner) => wrongKind(inner)));
}

const AT_KEY: readonly string[] = ['key-unknown', 'key-unusable'];

/** Line and column: of the key where it is unknown, else of the value; the nearest that is there above a missing one. */
export function locate(problem: Problem, source: Source): Problem {
  const { node, keyAt, whole } = find(source.root, problem.path);
  const at = AT_KEY.includes(problem.code) && whole ? (keyAt ?? node.at) : node.at;
  const { clash } = problem;
  return {
    ...problem,
    file: source.file,
    ...position(source.lines, at),
    ...(clash === undefined
      ? {}
      : { clash: clash.map((each) => ({ ...each, path: written(each.path, source.root) })) }),
  };
}

/** Keys that stand for others where those are not written: both sides, and what a frame of the shop brings along. */
const STANDS_FOR: ReadonlyMap<string | number, readonly string[]> = new Map([
  ['left', ['sides']],
  ['right', ['sides']],
  ['inside', ['ready']],
  ['nominal', ['ready']],
  ['clearance', ['ready', 'moulding']],
]);

/** Where a text holds what a path speaks of: the place itself, a key that stands for it, or the nearest above it. */
export function written(path: Path, root: Node): Path {
  for (let most = path.length; most > 0; most--) {
    const above = path.slice(0, most - 1);
    const last = path[most - 1]!;
    const ways = [last, ...(STANDS_FOR.get(last) ?? [])].map((key) => [...above, key]);
    const found = ways.find((way) => find(root, way).whole);
    if (found !== undefined) return found;
  }
  return [];
}

const place = (path: Path): string => (path.length === 0 ? 'the file' : showPath(path));

function described(node: Node): string {
  switch (node.kind) {
    case 'scalar':
      if (typeof node.value === 'string') return node.value === '' ? 'an empty text' : `the text ${quoted(node.value)}`;
      return typeof node.value === 'number' ? `the number ${node.value}` : String(node.value);
    case 'list':
      return 'a list';
    case 'map':
      return 'a map';
    case 'refused':
      return 'no value';
  }
}

function kindHint(node: Node, expected: string): string {
  if (node.kind === 'map' && expected.startsWith('a list')) return 'begin each item with a hyphen: - ';
  if (node.kind !== 'scalar') return '';
  const text = String(node.value).trim();
  const [, key, value] = /^([A-Za-z]\w*):(\S.*)$/.exec(text) ?? [];
  if (expected.startsWith('a map') && key !== undefined) return `put a space after the colon: ${key}: ${value}`;
  if (typeof node.value !== 'string') return /^(?:text|a name)/.test(expected) ? `put it in quotes: "${text}"` : '';
  if (expected === 'true or false' && /^(?:yes|on|y)$/i.test(text)) return 'write true';
  if (expected === 'true or false' && /^(?:no|off|n)$/i.test(text)) return 'write false';
  if (/number|angle|price/.test(expected) && /^\d+(?:\.\d+)?$/.test(text)) return `write it without quotes: ${text}`;
  return '';
}

/** By place, nothing twice; a flood is cut off and counted. */
export function ordered(problems: readonly Problem[]): readonly Problem[] {
  const seen = new Set<string>();
  const once = problems.filter(({ line, column, code, message }) => {
    const place = `${line}:${column} ${code} ${message}`;
    return !seen.has(place) && seen.add(place);
  });
  const sorted = once.sort((a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0));
  const last = sorted[MAX_PROBLEMS];
  if (last === undefined) return sorted;
  const { file, line, column } = last;
  const more = error('problems-more', [], `there are ${sorted.length - MAX_PROBLEMS} more problems from here on`, '');
  const place = { ...defined({ file, line }) };
  return [...sorted.slice(0, MAX_PROBLEMS), { ...more, ...place, ...defined({ column }) }];
}
