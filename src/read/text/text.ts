import { fail, type Problem, type Result, succeed } from '../../problems/problem.ts';
import { MAX_BYTES, tooManyBytes } from './bounds.ts';
import { checkCharacters, normalised } from './characters.ts';
import { complaints } from './complaints.ts';
import { jsonSlip } from './json-slips.ts';
import { lineStarts, type Source } from './node.ts';
import { readYaml } from './yaml.ts';

/** What was read, and the problems of single values in it: the rest can still be checked. */
export interface Text {
  readonly source: Source;
  readonly problems: readonly Problem[];
  /** Of what may be another thing than was meant. */
  readonly warnings: readonly Problem[];
}

/** By the file's ending; a text of an unknown ending is JSON where it begins with a brace. */
function isJson(file: string, text: string): boolean {
  if (/\.json$/i.test(file)) return true;
  return !/\.ya?ml$/i.test(file) && /^\s*\{/.test(text);
}

/** Bounds first, then the reader; JSON is YAML too, but strictly taken. Fails where there is no document to check. */
export function readText(given: string, file: string): Result<Text> {
  const kilobytes = MAX_BYTES / 1024;
  if (tooManyBytes(given, MAX_BYTES)) {
    const { complain, told } = complaints(file, [0]);
    complain('text-too-long', 0, `the file is larger than ${kilobytes} KiB`, 'is this the right file?');
    return fail(told);
  }
  const text = normalised(given);
  const lines = lineStarts(text);
  const { complain, told } = complaints(file, lines);
  checkCharacters(text, complain);
  if (told.length > 0) return fail(told);
  const slip = isJson(file, text) ? jsonSlip(text) : undefined;
  if (slip !== undefined) complain(slip.code, slip.at, slip.message, slip.hint);
  const doubts = complaints(file, lines);
  const root = slip === undefined ? readYaml(text, complain, doubts.complain) : undefined;
  if (root === undefined) return fail(told);
  const warnings = doubts.told.map((problem): Problem => ({ ...problem, severity: 'warning' }));
  return succeed({ source: { root, file, lines }, problems: told, warnings });
}
