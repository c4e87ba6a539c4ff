import { isMap, isScalar, isSeq } from 'yaml';
import { beforeLineEnd, columnOf, comments, endOf, eol, leading, lineStart, type Ranged, splice } from './edit-text.ts';
import type { Found } from './find-node.ts';
import { isListOfMaps } from './insert.ts';
import { onOneLine, type Plain, readsAsItselfInLine, type Style } from './yaml-print.ts';

type FoundNode = Extract<Found, { readonly kind: 'node' }>;

/** Another value in the place of one; comments within the old one move below the new. */
export function replace(
  text: string,
  { node, inBrackets, keyEnd }: FoundNode,
  value: Plain,
  style: Style,
): string | undefined {
  const { range } = node as Ranged;
  if (range === undefined || range === null) return undefined;
  const [start] = range;
  const end = isScalar(node) ? beforeLineEnd(text, endOf(node)) : endOf(node);
  const block = (isSeq(node) || isMap(node)) && node.flow !== true;
  // What was lines below its key becomes one value behind it.
  const from = block && keyEnd !== undefined ? text.indexOf(':', keyEnd) + 1 : start;
  const kept = comments(text).filter(({ at }) => at >= from && at < end);
  if (!block && kept.length === 0) return splice(text, start, end, quotedAlike(node, value, style, inBrackets));
  const indent = ' '.repeat(columnOf(text, block ? start : lineStart(text, start) + leading(text, start)));
  const notes = kept.map((comment) => `${indent}${comment.text}`);
  if (block && isSeq(node) && isListOfMaps(value)) {
    const lines = value.map((item) => `${indent}- ${onOneLine(item, style)}`);
    // Comments before the first item, and one behind the last, stay where they stand.
    const inner = kept.filter(({ at }) => at > start).map((comment) => `${indent}${comment.text}`);
    return splice(text, start, end, [...lines, ...inner].join(eol(text)).slice(indent.length));
  }
  if (from === start) return splice(text, start, end, [onOneLine(value, style), ...notes].join(eol(text)));
  return splice(text, from, end, [` ${onOneLine(value, style)}`, ...notes].join(eol(text)));
}

/** A text in quotes stays in quotes of the same kind, one without stays without where it can. */
function quotedAlike(node: unknown, value: Plain, style: Style, inBrackets: boolean): string {
  if (!isScalar(node) || typeof value !== 'string') return onOneLine(value, style);
  if (node.type === 'PLAIN' && !inBrackets && style === 'yaml' && readsAsItselfInLine(value)) return value;
  if (node.type === 'QUOTE_DOUBLE') return JSON.stringify(value);
  const plain = /^[\p{L}\p{N}\p{P}\p{S} ]*$/u.test(value);
  return node.type === 'QUOTE_SINGLE' && plain ? `'${value.replaceAll("'", "''")}'` : onOneLine(value, style);
}
