import { isMap, type Pair, type YAMLMap } from 'yaml';
import { beforeLineEnd, columnOf, comments, endOf, eol, lineStart, type Ranged, splice } from './edit-text.ts';
import { documentOf, type EditPath, find, pairOf } from './find-node.ts';

/** The text without a key; comments that stand in its lines stay. The text itself where the key is not there. */
export function clear(text: string, path: EditPath, key: string): string | undefined {
  const root = documentOf(text).contents;
  const found = path.length === 0 ? undefined : find(text, path);
  if (found !== undefined && found.kind !== 'node') return text;
  const map = path.length === 0 ? root : found?.node;
  if (!isMap(map)) return path.length === 0 && root === null ? text : undefined;
  const pair = pairOf(map, key);
  if (pair === undefined) return text;
  if (map.flow === true) return fromBrackets(text, map, pair);
  if (map.items.length > 1 || path.length === 0) return fromLines(text, map, pair);
  return emptied(text, path, pair);
}

const startOf = (pair: Pair): number => (pair.key as Ranged).range![0];

const lastOf = (text: string, pair: Pair): number => beforeLineEnd(text, endOf(pair.value ?? pair.key));

const commentsIn = (text: string, from: number, to: number) => comments(text).filter(({ at }) => at >= from && at < to);

function fromBrackets(text: string, map: YAMLMap, pair: Pair): string {
  const at = map.items.indexOf(pair);
  const [before, next] = [map.items[at - 1], map.items[at + 1]];
  const [start, end] = [startOf(pair), endOf(pair.value ?? pair.key)];
  const from = next === undefined && before !== undefined ? endOf(before.value ?? before.key) : start;
  const to = next === undefined ? end : startOf(next);
  if (commentsIn(text, from, to).length === 0) return splice(text, from, to, '');
  const comma = next === undefined ? text.indexOf(',', from) : text.indexOf(',', end);
  const less = splice(text, start, end, '');
  const moved = comma > start ? comma - (end - start) : comma;
  return comma === -1 ? less : splice(less, moved, moved + 1, '');
}

function fromLines(text: string, map: YAMLMap, pair: Pair): string {
  const [start, end] = [startOf(pair), lastOf(text, pair)];
  const line = lineStart(text, start);
  if (text.slice(line, start).trim() === '') {
    const next = text.indexOf('\n', end);
    const to = next === -1 ? text.length : next + 1;
    return splice(text, line, to, keptLines(text, line, to, columnOf(text, start)));
  }
  // The first key of an item stands behind its hyphen, which the next one then stands behind.
  const next = map.items[map.items.indexOf(pair) + 1];
  const to = next === undefined ? end : startOf(next);
  return splice(text, start, commentsIn(text, start, to).length === 0 ? to : end, '');
}

const keptLines = (text: string, from: number, to: number, column: number): string =>
  commentsIn(text, from, to)
    .map((comment) => `${' '.repeat(column)}${comment.text}${eol(text)}`)
    .join('');

/** A map in lines of which nothing is left: behind its key, or its hyphen, stands that it is empty. */
function emptied(text: string, path: EditPath, pair: Pair): string | undefined {
  const [start, end] = [startOf(pair), lastOf(text, pair)];
  const line = lineStart(text, start);
  if (text.slice(line, start).trim() !== '') return splice(text, start, end, '{}');
  const above = path.length === 1 ? documentOf(text).contents : nodeOf(text, path.slice(0, -1));
  const last = path.at(-1);
  const own = isMap(above) && typeof last === 'string' ? pairOf(above, last) : undefined;
  const colon = own === undefined ? -1 : text.indexOf(':', endOf(own.key));
  if (colon === -1) return undefined;
  const next = text.indexOf('\n', end);
  const to = next === -1 ? text.length : next + 1;
  const less = splice(text, line, to, keptLines(text, line, to, columnOf(text, start)));
  return splice(less, colon + 1, colon + 1, ' {}');
}

function nodeOf(text: string, path: EditPath): unknown {
  const found = find(text, path);
  return found?.kind === 'node' ? found.node : undefined;
}
