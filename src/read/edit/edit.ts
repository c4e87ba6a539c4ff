import { isMap, isSeq } from 'yaml';
import { clear } from './clear.ts';
import { afterLine, columnOf, endOf, type Ranged, splice, within, withoutItem } from './edit-text.ts';
import { alike, dataAt, dataOf, documentOf, type EditPath, find, keepsComments, pairOf } from './find-node.ts';
import { insert, itemLines } from './insert.ts';
import { replace } from './replace.ts';
import { isMapping, onOneLine, type Plain, type Style } from './yaml-print.ts';

/**
 * `set` changes keys of the map at a path and leaves its other keys alone; `append` adds an item to the list there;
 * `remove` takes the item at a place of a list out, `clear` a key of the map; `item` puts another in a list's place. With a
 * `remark` comments that spoke of a removed item say so, since they would seem to speak of the next one.
 */
export type Edit =
  | { readonly kind: 'set'; readonly path: EditPath; readonly values: { readonly [key: string]: Plain } }
  | { readonly kind: 'append'; readonly path: EditPath; readonly value: { readonly [key: string]: Plain } }
  | { readonly kind: 'remove'; readonly path: EditPath; readonly at: number; readonly remark?: string }
  | { readonly kind: 'clear'; readonly path: EditPath; readonly key: string }
  | { readonly kind: 'item'; readonly path: EditPath; readonly at: number; readonly value: Plain };

/**
 * A text with some values changed, or the first edit that it is written too much together for. Nothing but the values
 * themselves is touched: every comment, the order of keys, quotes, spaces and line ends stay as they were written. What
 * comes out is read again and compared before it is given back.
 */
export function edited(text: string, edits: readonly Edit[]): { readonly text: string } | { readonly refused: Edit } {
  const style: Style = /^\s*\{\s*(?:"|\})/.test(text) ? 'json' : 'yaml';
  let now = text;
  for (const edit of edits) {
    const wanted = applied(dataOf(now), edit);
    const next = changed(now, edit, style);
    if (
      next === undefined ||
      !alike(dataOf(next), wanted) ||
      !keepsComments(now, next, edit.kind === 'remove' ? edit.remark : undefined)
    )
      return { refused: edit };
    now = next;
  }
  return { text: now };
}

function changed(text: string, edit: Edit, style: Style): string | undefined {
  switch (edit.kind) {
    case 'set':
      return setKeys(text, edit.path, edit.values, style);
    case 'append':
      return append(text, edit, style);
    case 'remove':
      return remove(text, edit);
    case 'clear':
      return clear(text, edit.path, edit.key);
    case 'item': {
      const found = find(text, [...edit.path, edit.at]);
      return found?.kind === 'node' ? replace(text, found, edit.value, style) : undefined;
    }
    default: {
      const never: never = edit;
      return never;
    }
  }
}

function applied(value: Plain, edit: Edit): Plain {
  const change = (at: Plain | undefined, path: EditPath): Plain => {
    const [step, ...rest] = path;
    const list = Array.isArray(at) ? (at as readonly Plain[]) : [];
    if (typeof step === 'number') return list.map((item, i) => (i === step ? change(item, rest) : item));
    const map = at !== undefined && isMapping(at) ? at : {};
    // Nothing is cleared from a map that is not there.
    if (edit.kind === 'clear' && step !== undefined && map[step] === undefined) return map;
    if (step !== undefined) return { ...map, [step]: change(map[step], rest) };
    switch (edit.kind) {
      case 'set':
        return { ...map, ...edit.values };
      case 'append':
        return [...list, edit.value];
      case 'remove':
        return list.filter((_, i) => i !== edit.at);
      case 'clear':
        return Object.fromEntries(Object.entries(map).filter(([key]) => key !== edit.key));
      case 'item':
        return list.map((item, i) => (i === edit.at ? edit.value : item));
      default: {
        const never: never = edit;
        return never;
      }
    }
  };
  return change(value, edit.path);
}

function setKeys(
  text: string,
  path: EditPath,
  values: { readonly [key: string]: Plain },
  style: Style,
): string | undefined {
  const found = find(text, path);
  if (found === undefined) return undefined;
  // In a text without content its first key makes the map.
  if (found.kind !== 'node' && path.length > 0) return insert(text, found, path, values, style);
  let now = text;
  for (const [key, value] of Object.entries(values)) {
    const here = find(now, [...path, key]);
    if (here === undefined || (here.kind === 'empty' && path.length > 0)) return undefined;
    if (here.kind === 'node' && alike(dataAt(now, [...path, key]), value)) continue;
    const next =
      here.kind === 'node' ? replace(now, here, value, style) : insert(now, here, [...path, key], value, style);
    if (next === undefined) return undefined;
    now = next;
  }
  return now;
}

function append(text: string, edit: Edit & { readonly kind: 'append' }, style: Style): string | undefined {
  const found = find(text, edit.path);
  if (found === undefined) return undefined;
  if (found.kind !== 'node') return insert(text, found, edit.path, [edit.value], style);
  const list = found.node;
  if (!isSeq(list)) return undefined;
  if (list.flow === true) return within(text, list, onOneLine(edit.value, style));
  const { range } = list as Ranged;
  const indent = columnOf(text, range![0]);
  return afterLine(text, endOf(list), itemLines(edit.value, ' '.repeat(indent)));
}

function remove(text: string, { path, at, remark }: Edit & { readonly kind: 'remove' }): string | undefined {
  const found = find(text, path);
  if (found?.kind !== 'node' || !isSeq(found.node)) return undefined;
  const less = withoutItem(text, found.node, at, remark);
  if (less === undefined || found.node.items.length > 1 || found.node.flow === true) return less;
  // A list of lines that has none left is written behind its key.
  const above = find(text, path.slice(0, -1));
  const map = path.length > 1 && above?.kind === 'node' ? above.node : documentOf(text).contents;
  const pair = isMap(map) ? pairOf(map, String(path.at(-1))) : undefined;
  const key = pair === undefined ? -1 : text.indexOf(':', endOf(pair.key));
  return key === -1 ? undefined : splice(less, key + 1, key + 1, ' []');
}
