import { existsSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { type DayList, EMPTY_LIST, type Mark, markDayList, readDayList } from '../../day/list/day-list.ts';
import type { Problem } from '../../problems/problem.ts';
import { readSource } from '../input.ts';
import { againIfChanged, replaceText } from '../output/replace.ts';

const DAY_FILE = 'day.yaml';

/** A job's name in the list of a folder. */
export const nameIn = (folder: string, file: string): string => relative(folder, file).replaceAll('\\', '/');

export interface KeptList {
  readonly list: DayList;
  readonly problems: readonly Problem[];
}

export async function listIn(folder: string): Promise<KeptList> {
  const file = join(folder, DAY_FILE);
  if (!existsSync(file)) return { list: new Map(), problems: [] };
  const read = readDayList(await readSource(file, "day's list"));
  return read.ok ? { list: read.value, problems: [] } : { list: new Map(), problems: read.problems };
}

/** Sets or takes away a mark; the file is made where there is none. Done anew where somebody else has written it meanwhile. */
export function markIn(
  folder: string,
  names: readonly string[],
  mark: Mark,
  day: string | undefined,
): Promise<readonly Problem[]> {
  const file = join(folder, DAY_FILE);
  return againIfChanged(async () => {
    const before = existsSync(file) ? (await readSource(file, "day's list")).text : undefined;
    const text = before ?? EMPTY_LIST;
    const read = readDayList({ text, file });
    if (!read.ok) return read.problems;
    const made = markDayList(text, names, mark, day);
    if (!made.ok) return made.problems;
    if (made.value !== text) await replaceText(file, before, made.value);
    return [];
  });
}

/** The nearest folder above some jobs that keeps a list; none where nobody has begun one. */
export function keptAbove(file: string): string | undefined {
  for (let folder = dirname(resolve(file)); ; folder = dirname(folder)) {
    if (existsSync(join(folder, DAY_FILE))) return folder;
    if (dirname(folder) === folder) return undefined;
  }
}
