import { error, type Problem } from '../problems/problem.ts';
import { type Reading, readCount, readLine } from '../read/fields/fields.ts';
import type { SettleOptions } from './settled.ts';

/** The day may be said in words, but it stands in one line of a heading. */
const LONGEST_DATE = 60;

/** Words that were asked for are bounded as those of a job are. Errors: `text-missing`, `text-line`, `text-line-long`. */
export function wrongWords({ date, number }: SettleOptions): readonly Problem[] {
  return [...wrong('date', date, (text) => readLine(text, LONGEST_DATE)), ...wrong('number', number, readCount)];
}

function wrong(
  name: 'date' | 'number',
  text: string | undefined,
  read: (text: string) => Reading<string>,
): readonly Problem[] {
  const found = text === undefined ? undefined : read(text);
  if (found === undefined || found.ok) return [];
  const hint = found.code === 'text-missing' ? 'write it, or leave it out' : found.hint;
  return [error(found.code, [name], `the ${name} that was asked for: ${found.message}`, hint)];
}
