import { fail, type Problem, type Result, succeed } from '../problems/problem.ts';
import { checkCharacters, MAX_BYTES, normalised, tooManyBytes } from './bounds.ts';
import { readJson } from './json.ts';
import { complaints, lineStarts, type Source } from './node.ts';
import { readYaml } from './yaml.ts';

/** What was read, and the problems of single values in it: the rest can still be checked. */
export interface Text {
  readonly source: Source;
  readonly problems: readonly Problem[];
}

/** By the file's ending; a text of an unknown ending is JSON where it begins with a brace. */
function isJson(file: string, text: string): boolean {
  if (/\.json$/i.test(file)) return true;
  return !/\.ya?ml$/i.test(file) && /^\s*\{/.test(text);
}

/** Bounds first, then the reader of the text's format. Fails where there is no document to check. */
export function readText(given: string, file: string): Result<Text> {
  const kilobytes = MAX_BYTES / 1024;
  if (tooManyBytes(given, MAX_BYTES)) {
    const { add, all } = complaints(file, [0]);
    add(
      'text-too-long',
      0,
      `the file is larger than ${kilobytes} KiB`,
      'a job is a page of text: is this the right file?',
    );
    return fail(all);
  }
  const text = normalised(given);
  const lines = lineStarts(text);
  const { add, all } = complaints(file, lines);
  checkCharacters(text, add);
  if (all.length > 0) return fail(all);
  const root = isJson(file, text) ? readJson(text, add) : readYaml(text, add);
  return root === undefined ? fail(all) : succeed({ source: { root, file, lines }, problems: all });
}
