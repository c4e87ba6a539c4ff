import { error, type Problem } from '../../problems/problem.ts';
import { word } from '../../problems/quoted.ts';
import { MAX_DEPTH, MAX_VALUES } from './bounds.ts';
import { type Entry, type LineStarts, position } from './node.ts';

/** Tells an error at an offset; the path says what it is about. */
export type Complain = (code: string, at: number, message: string, hint: string, path?: Problem['path']) => void;

/** Collects problems with their places. */
export function complaints(file: string, lines: LineStarts): { readonly complain: Complain; readonly told: Problem[] } {
  const told: Problem[] = [];
  const complain: Complain = (code, at, message, hint, path = []) => {
    told.push({ ...error(code, path, message, hint), file, ...position(lines, at) });
  };
  return { complain, told };
}

/**
 * Puts an entry into a map that is being read; false where it was told instead: a key that stands there already, or
 * `__proto__`, which schemas pass over and which is no key of any document.
 */
export function putEntry(
  entries: Map<string, Entry>,
  key: string,
  entry: Entry,
  path: Problem['path'],
  complain: Complain,
): boolean {
  if (key === '__proto__') {
    complain('key-unknown', entry.keyAt, `${key} is not a key of anything`, 'take it out', path);
    return false;
  }
  if (entries.has(key)) {
    complain('key-twice', entry.keyAt, `${word(key)} stands twice`, 'keep one of the two', path);
    return false;
  }
  entries.set(key, entry);
  return true;
}

export const TOO_MANY = {
  code: 'text-too-many-values',
  message: `the file holds more than ${MAX_VALUES} values, aliases written out, or nests too deep by aliases`,
  hint: 'is this the right file?',
};

export const TOO_DEEP = {
  code: 'text-too-deep',
  message: `lists and maps nest deeper than ${MAX_DEPTH}`,
  hint: 'no job or shop needs more than six levels',
};
