import { isMap, isSeq, Lexer, type Pair, type YAMLMap, type YAMLSeq } from 'yaml';

/** Where things stand in a YAML text, and how parts of it are put in and taken out without touching the rest. */

/** Marks that the lexer puts between the pieces, which are no part of the text; the last stands before a scalar, which may begin with #. */
const MARKS = ['\u0002', '\u0018', '\u001f'];
const SCALAR = '\u001f';

export interface Comment {
  readonly at: number;
  readonly text: string;
}

/** The last text that was asked about: what an edit made is what the next one begins with. */
let last: { readonly text: string; readonly found: readonly Comment[] } | undefined;

export function comments(text: string): readonly Comment[] {
  if (last?.text !== text) last = { text, found: commentsOf(text) };
  return last.found;
}

function commentsOf(text: string): readonly Comment[] {
  const found: Comment[] = [];
  let [at, scalar] = [0, false];
  for (const piece of new Lexer().lex(text)) {
    if (!scalar && piece.startsWith('#')) found.push({ at, text: piece });
    scalar = piece === SCALAR;
    if (!MARKS.includes(piece)) at += piece.length;
  }
  return found;
}

export interface Ranged {
  readonly range?: readonly [number, number, number] | null;
}

/** Puts one more item before the closing bracket of a list or map in brackets. */
export function within(text: string, collection: YAMLMap | YAMLSeq, item: string): string {
  const { range } = collection as Ranged;
  if (collection.items.length === 0) return splice(text, range![0] + 1, range![0] + 1, item);
  const last = endOf(collection, true);
  return splice(text, last, last, `, ${item}`);
}

/** `# S3, cut up 2026-03-02: one corner bruised` */
export const remarked = (comment: string, remark: string): string => `# ${remark}: ${comment.replace(/^#+\s*/u, '')}`;

/**
 * A list that has more items without the one at `at`; comments in its lines stay, on lines of their own, with a remark of what they
 * spoke of where there is one; so do those right above it, but for the first item, above which a list has its heading.
 * Undefined where the item does not have its lines for itself.
 */
export function withoutItem(text: string, list: YAMLSeq, at: number, remark?: string): string | undefined {
  const item = list.items[at] as Ranged | undefined;
  if (item?.range === undefined || item.range === null) return undefined;
  const [start] = item.range;
  if (list.flow === true) {
    const before = list.items[at - 1];
    const next = list.items[at + 1] as Ranged | undefined;
    return before === undefined
      ? splice(text, start, next?.range?.[0] ?? endOf(item), '')
      : splice(text, endOf(before), endOf(item), '');
  }
  const line = lineStart(text, start);
  const dash = line + columnOf(text, list.range![0]);
  if (text[dash] !== '-' || text.slice(line, dash).trim() !== '') return undefined;
  const from = at === 0 || remark === undefined ? line : aboveIt(text, line);
  const end = text.indexOf('\n', endOf(item));
  const to = end === -1 ? text.length : end + 1;
  const indent = text.slice(line, dash);
  const kept = comments(text).filter((comment) => comment.at >= from && comment.at < to);
  const said = kept.map((comment) => (remark === undefined ? comment.text : remarked(comment.text, remark)));
  return splice(text, from, to, said.map((comment) => `${indent}${comment}${eol(text)}`).join(''));
}

/** Where lines begin that hold a comment alone and stand right above a line. */
function aboveIt(text: string, line: number): number {
  let from = line;
  while (from > 0) {
    const before = lineStart(text, from - 1);
    if (!/^[ ]*#/u.test(text.slice(before, from))) break;
    from = before;
  }
  return from;
}

export const splice = (text: string, from: number, to: number, put: string): string =>
  `${text.slice(0, from)}${put}${text.slice(to)}`;

export const eol = (text: string): string => (text.includes('\r\n') ? '\r\n' : '\n');
/** A byte order mark takes no column. */
export const lineStart = (text: string, at: number): number =>
  (at > 0 ? text.lastIndexOf('\n', at - 1) + 1 : 0) || (text.startsWith('\ufeff') ? 1 : 0);
export const columnOf = (text: string, at: number): number => at - lineStart(text, at);
export const leading = (text: string, at: number): number => /^[ ]*/.exec(text.slice(lineStart(text, at)))![0].length;

/** Where the last thing in a node ends, without what follows it. `inside`: of its last item instead. */
export function endOf(node: unknown, inside = false): number {
  if ((isMap(node) || isSeq(node)) && (inside || node.flow !== true)) {
    const last = node.items.at(-1);
    if (last !== undefined) return isMap(node) ? endOf((last as Pair).value ?? (last as Pair).key) : endOf(last);
  }
  return (node as Ranged).range?.[1] ?? Number.NaN;
}

/** A text in lines of its own is read as ending after its last line end, which is no part of it. */
export function beforeLineEnd(text: string, at: number): number {
  if (text[at - 1] !== '\n') return at;
  return text[at - 2] === '\r' ? at - 2 : at - 1;
}

/** New lines below the one that holds `at`. */
export function afterLine(text: string, at: number, lines: readonly string[]): string | undefined {
  if (Number.isNaN(at)) return undefined;
  const end = eol(text);
  const body = lines.map((line) => `${line}${end}`).join('');
  if (at > 0 && text[at - 1] === '\n') return splice(text, at, at, body);
  const next = text.indexOf('\n', at);
  if (next === -1) return `${text}${text === '' ? '' : end}${body}`;
  return splice(text, next + 1, next + 1, body);
}
