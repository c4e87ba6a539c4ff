import type * as z from 'zod/mini';
import { nearest } from '../problems/nearest.ts';
import { error, type Problem } from '../problems/problem.ts';
import { showPath } from '../problems/show.ts';
import { MAX_PROBLEMS } from './bounds.ts';
import { find, type Node, position, type Source, shortened } from './node.ts';

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
      const branch = issue.errors.find(
        (errors) => errors.length > 0 && errors.every((inner) => !wrongKind(inner, node)),
      );
      return branch?.flatMap((inner) => told(inner, path, root)) ?? [wrong(issue.message, path, node, whole)];
    }
    case 'invalid_key':
      return issue.issues.flatMap((inner) => told({ ...inner, path: [] }, path, root));
    case 'invalid_value': {
      if (!whole || node.kind !== 'scalar' || typeof node.value !== 'string') {
        return [wrong(issue.message, path, node, whole)];
      }
      const near = nearest(node.value, issue.values.map(String));
      const message = `${shortened(node.value)} is not known here: write ${issue.message}`;
      return [error('value-unknown', path, message, near === undefined ? '' : `did you mean ${near}?`)];
    }
    case 'too_small':
    case 'too_big': {
      if (node.kind !== 'scalar') return [wrong(issue.message, path, node, whole)];
      const limit = issue.code === 'too_small' ? `at least ${issue.minimum}` : `at most ${issue.maximum}`;
      return [error('number-range', path, `${node.value} is out of range: it must be ${limit}`)];
    }
    case 'custom': {
      const { code, hint } = issue.params as { readonly code: string; readonly hint: string };
      return [error(code, path, issue.message, hint)];
    }
    default:
      return [wrong(issue.message, path, node, whole)];
  }
}

function unknownKeys(keys: readonly string[], known: readonly string[], path: Path): Problem[] {
  return keys.slice(0, MAX_PROBLEMS).map((key) => {
    const near = nearest(key, known);
    const list = `known here: ${known.join(', ')}`;
    const hint = near === undefined ? list : `did you mean ${near}? ${list}`;
    return error('key-unknown', [...path, key], `${shortened(key)} is not a key of ${place(path)}`, hint);
  });
}

function wrong(expected: string, path: Path, node: Node, whole: boolean): Problem {
  if (!whole) return error('key-missing', path, `${path.at(-1)} is missing`, `give ${expected}`);
  const message = `expected ${expected}, found ${described(node)}`;
  return error('value-kind', path, message, kindHint(node, expected));
}

/** True where a branch of a union does not even take this kind of value. */
function wrongKind(issue: Issue, node: Node): boolean {
  if (issue.path.length > 0) return false;
  if (issue.code === 'invalid_type') return true;
  if (issue.code === 'invalid_value') return node.kind !== 'scalar' || typeof node.value !== 'string';
  if (issue.code !== 'invalid_union') return false;
  return issue.errors.every((errors) => errors.some((inner) => wrongKind(inner, node)));
}

/** Line and column: of the key where it is unknown, else of the value; the nearest that is there above a missing one. */
export function locate(problem: Problem, source: Source): Problem {
  const { node, keyAt, whole } = find(source.root, problem.path);
  const at = problem.code === 'key-unknown' && whole ? (keyAt ?? node.at) : node.at;
  return { ...problem, file: source.file, ...position(source.lines, at) };
}

const place = (path: Path): string => (path.length === 0 ? 'the file' : showPath(path));

function described(node: Node): string {
  switch (node.kind) {
    case 'scalar':
      if (typeof node.value === 'string')
        return node.value === '' ? 'an empty text' : `the text ${JSON.stringify(shortened(node.value))}`;
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
  if (typeof node.value !== 'string') return /^(?:text|a name)/.test(expected) ? `put it in quotes: "${text}"` : '';
  if (expected === 'true or false' && /^(?:yes|on|y)$/i.test(text)) return 'write true';
  if (expected === 'true or false' && /^(?:no|off|n)$/i.test(text)) return 'write false';
  if (/number|angle|price/.test(expected) && /^\d+(?:\.\d+)?$/.test(text)) return `write it without quotes: ${text}`;
  return '';
}
