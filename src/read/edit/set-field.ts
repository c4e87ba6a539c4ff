import { isAlias, isNode, isSeq } from 'yaml';
import { error, fail, type Result, succeed } from '../../problems/problem.ts';
import { word } from '../../problems/quoted.ts';
import { showPath } from '../../problems/show.ts';
import { readText } from '../text/text.ts';
import { type Edit, edited } from './edit.ts';
import { type EditPath, find } from './find-node.ts';
import { isMapping, type Plain } from './yaml-print.ts';

/**
 * The text of a job, or of a shop, with one field set to another value; comments, order, quotes and all else stay byte for
 * byte. Keys that lead to it are made where they are missing; an item is set where there is one, or put behind the last.
 * Errors: those of reading a text, `field-not-editable`.
 */
export function setField(text: string, path: EditPath, value: Plain): Result<string> {
  if (!isPath(path)) return refused([], 'a field is named by keys and places in lists, one at least');
  if (!isPlain(value)) return refused(path, 'a field holds a text, a number, true, false, or lists and maps of them');
  const [above, last] = [path.slice(0, -1), path.at(-1)!];
  if (typeof last === 'string') return changed(text, path, { kind: 'set', path: above, values: { [last]: value } });
  if (isMapping(value) && isBehindLast(text, above, last))
    return changed(text, path, { kind: 'append', path: above, value });
  return changed(text, path, { kind: 'item', path: above, at: last, value });
}

/** The text without a field: a key with its value, or an item of a list. It is the same text where there is none. */
export function clearField(text: string, path: EditPath): Result<string> {
  if (!isPath(path)) return refused([], 'a field is named by keys and places in lists, one at least');
  const [above, last] = [path.slice(0, -1), path.at(-1)!];
  if (typeof last === 'string') return changed(text, path, { kind: 'clear', path: above, key: last });
  return changed(text, path, { kind: 'remove', path: above, at: last });
}

function changed(text: string, path: EditPath, edit: Edit): Result<string> {
  const read = readText(text, 'job.yaml');
  if (!read.ok) return read;
  const shared = sharedAt(text, path);
  if (shared !== undefined) {
    const message = `${word(showPath(shared))} is shared with another place by an anchor, so it cannot be changed alone`;
    return refused(path, message, 'write it out in both places');
  }
  const made = edited(text, [edit]);
  if ('text' in made) return succeed(made.text);
  const message = `${word(showPath(path))} is written in a way that cannot be changed without touching the rest`;
  return refused(path, message, 'write that part out, one key a line, and try again');
}

/** Whether a list has so many items that one more would stand at this place. */
function isBehindLast(text: string, path: EditPath, at: number): boolean {
  const list = path.length === 0 ? undefined : find(text, path);
  return list?.kind === 'node' && isSeq(list.node) && list.node.items.length === at;
}

const refused = (path: EditPath, message: string, hint = ''): Result<never> =>
  fail([error('field-not-editable', path, message, hint)]);

/** The place on the way to a field, or itself, whose value stands elsewhere too. */
function sharedAt(text: string, path: EditPath): EditPath | undefined {
  for (let most = 1; most <= path.length; most++) {
    const found = find(text, path.slice(0, most));
    if (found?.kind !== 'node') return undefined;
    const { node } = found;
    if (isAlias(node) || (isNode(node) && 'anchor' in node && node.anchor !== undefined)) return path.slice(0, most);
  }
  return undefined;
}

const isPath = (path: EditPath): boolean =>
  Array.isArray(path) &&
  path.length > 0 &&
  path.every((step) => typeof step === 'string' || (Number.isInteger(step) && step >= 0));

function isPlain(value: Plain): boolean {
  switch (typeof value) {
    case 'string':
    case 'boolean':
      return true;
    case 'number':
      return Number.isFinite(value);
    case 'object':
      if (Array.isArray(value)) return value.every(isPlain);
      return value !== null && isMapping(value) && Object.values(value).every(isPlain);
    default:
      return false;
  }
}
