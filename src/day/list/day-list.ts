import type { Source } from '../../outputs/solve-job.ts';
import { nearest } from '../../problems/nearest.ts';
import { error, fail, type Problem, type Result, succeed } from '../../problems/problem.ts';
import { quoted, word } from '../../problems/quoted.ts';
import { clearField, setField } from '../../read/edit/set-field.ts';
import { isDay } from '../../read/fields/day.ts';
import { locate } from '../../read/text/issues.ts';
import type { Node } from '../../read/text/node.ts';
import { readText } from '../../read/text/text.ts';

/** What becomes of a job, in this order. */
export const MARKS = ['made', 'cut', 'shelved'] as const;
export type Mark = (typeof MARKS)[number];

/** The day on which each was done, as ISO 8601 writes it. */
export type Marked = { readonly [M in Mark]?: string };

/** By the file of the job, from the list's own folder. */
export type DayList = ReadonlyMap<string, Marked>;

export const EMPTY_LIST = `# What became of the jobs here, by their files. "matwright day" reads and writes it, and so may you.\n`;

/** The list that a text holds. Errors: those of reading it, `day-list`, `day-unreadable`. */
export function readDayList({ text, file }: Source): Result<DayList> {
  const read = readText(text, file);
  if (!read.ok) return read;
  const { source, problems } = read.value;
  const told: Problem[] = [...problems];
  const list = new Map<string, Marked>();
  const wrong = (path: Problem['path'], code: string, message: string, hint: string): void => {
    told.push(locate(error(code, path, message, hint), source));
  };
  if (source.root.kind !== 'map') {
    wrong([], 'day-list', 'the list is to be a map of files', 'write a line for each: heron.yaml: {cut: 2031-03-12}');
    return fail(told);
  }
  for (const [name, { value }] of source.root.entries) list.set(name, marksOf(name, value, wrong));
  return told.length > 0 ? fail(told) : succeed(list);
}

type Wrong = (path: Problem['path'], code: string, message: string, hint: string) => void;

function marksOf(name: string, node: Node, wrong: Wrong): Marked {
  if (node.kind !== 'map') {
    wrong([name], 'day-list', `${word(name)} is to have a map of days`, 'write for example {made: 2031-03-12}');
    return {};
  }
  const marks: { [M in Mark]?: string } = {};
  for (const [key, { value }] of node.entries) {
    const mark = MARKS.find((each) => each === key);
    const day = value.kind === 'scalar' ? String(value.value) : '';
    if (mark === undefined) {
      const near = nearest(key, MARKS);
      const hint = `${near === undefined ? '' : `did you mean ${near}? `}there are ${MARKS.join(', ')}`;
      wrong([name, key], 'day-list', `a job is not ${word(key)}`, hint);
    } else if (isDay(day)) marks[mark] = day;
    else
      wrong([name, key], 'day-unreadable', `${quoted(day)} is no day`, 'write year-month-day, for example 2031-03-12');
  }
  return marks;
}

/**
 * The text of a list with a mark set for some jobs, or taken away where no day is given; all else stays as it was written. Jobs
 * that it does not have yet get a line each in the order of their names, so that lists of several people can be merged line by line.
 */
export function markDayList(
  text: string,
  files: readonly string[],
  mark: Mark,
  day: string | undefined,
): Result<string> {
  let now = text;
  for (const file of [...files].sort()) {
    const made = day === undefined ? clearField(now, [file, mark]) : withMark(now, file, mark, day);
    if (!made.ok) return made;
    now = made.value;
  }
  return succeed(now);
}

function withMark(text: string, file: string, mark: Mark, day: string): Result<string> {
  const list = readDayList({ text, file: 'day.yaml' });
  if (list.ok && list.value.has(file)) return setField(text, [file, mark], day);
  return setField(text, [file], { [mark]: day });
}
