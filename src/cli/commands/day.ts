import { basename, extname } from 'node:path';
import type { Command } from 'commander';
import { MARKS, type Mark } from '../../day/list/day-list.ts';
import { dayLines, dayRows, type ListedJob } from '../../day/list/rows.ts';
import { readJob } from '../../job/read.ts';
import { defined } from '../../problems/defined.ts';
import { nearest } from '../../problems/nearest.ts';
import type { Problem } from '../../problems/problem.ts';
import { problemRecord } from '../../problems/show.ts';
import { isDay } from '../../read/fields/day.ts';
import { listIn, markIn, nameIn } from '../day/day-file.ts';
import { readDay } from '../day/read.ts';
import { fail, note, printJson, warn } from '../say.ts';
import { today } from '../today.ts';
import { UsageError } from '../usage.ts';

interface Flags {
  readonly in: string;
  readonly shop?: string;
  readonly undo?: boolean;
  readonly on?: string;
  readonly json?: boolean;
  readonly quiet?: boolean;
}

export function define(command: Command): void {
  command
    .argument('[mark]', `${MARKS.join(', ')}: what was done with the jobs that follow; nothing shows all`)
    .argument('[job...]', 'their numbers, or their files')
    .option('--in <dir>', 'the folder of the jobs, in which the list is kept', '.')
    .option('--on <day>', 'when it was done, for example 2031-03-12 (default: today)')
    .option('--undo', 'take the mark away')
    .option('--shop <file>', "the shop's file (default: shop.yaml beside the job or in a folder above it)")
    .option('--json', 'one JSON document on standard output')
    .option('--quiet', 'say nothing but errors')
    .addHelpText(
      'after',
      `
The list is day.yaml beside the jobs, a line for each: plain text, to be read, edited and merged. Nothing else is kept.
Where there is one, make notes in it what it has made.

Examples:
  matwright day --in monday
  matwright day cut 41 42 --in monday
`,
    )
    .action(day);
}

async function day(mark: string | undefined, named: readonly string[], flags: Flags): Promise<void> {
  const { jobs, problems } = await jobsIn(flags);
  if (mark !== undefined) {
    if (flags.on !== undefined && !isDay(flags.on))
      throw new UsageError(`--on ${flags.on}: write year-month-day, for example 2031-03-12`);
    const files = filesOf(markOf(mark), named, jobs, flags.in);
    const wrong = await markIn(flags.in, files, markOf(mark), flags.undo === true ? undefined : (flags.on ?? today()));
    if (wrong.length > 0) return fail(wrong, flags.json === true);
  }
  const kept = await listIn(flags.in);
  const told = [...kept.problems, ...problems];
  const rows = dayRows(jobs, kept.list);
  if (told.length > 0) process.exitCode = 2;
  if (flags.json === true)
    return printJson({ jobs: rows, ...defined({ problems: told.length === 0 ? undefined : told.map(problemRecord) }) });
  if (flags.quiet !== true) for (const line of dayLines(rows)) note(line);
  warn(told);
}

async function jobsIn(
  flags: Flags,
): Promise<{ readonly jobs: readonly ListedJob[]; readonly problems: readonly Problem[] }> {
  const { jobs, problems } = await readDay({ jobs: [flags.in], ...defined({ shop: flags.shop }) });
  const told: Problem[] = [...problems];
  const listed = jobs.flatMap(({ file, text, shop }): readonly ListedJob[] => {
    const given = shop === undefined ? {} : { shopText: shop.text, shopFile: shop.file };
    const read = readJob({ text, file, ...given });
    if (!read.ok) {
      told.push(...read.problems);
      return [];
    }
    const { title, number, customer, due } = read.value.job;
    return [{ file: nameIn(flags.in, file), title, ...defined({ number, customer, due }) }];
  });
  return { jobs: listed, problems: told };
}

function markOf(text: string): Mark {
  const mark = MARKS.find((each) => each === text);
  if (mark !== undefined) return mark;
  const near = nearest(text, MARKS);
  throw new UsageError(`${text}: ${near === undefined ? '' : `did you mean ${near}? `}a job is ${MARKS.join(', ')}`);
}

/** Jobs by their numbers; by their files, from the folder or from here, with or without the ending. */
function filesOf(mark: Mark, named: readonly string[], jobs: readonly ListedJob[], folder: string): readonly string[] {
  if (named.length === 0) throw new UsageError(`${mark}: say which jobs, by number or by file`);
  return named.map((name) => {
    const numbered = jobs.filter(({ number }) => number === name);
    const called = ({ file }: ListedJob) => [file, basename(file), basename(file, extname(file))];
    const found = jobs.filter((job) => called(job).includes(name) || job.file === nameIn(folder, name));
    const [only, ...more] = numbered.length > 0 ? numbered : found;
    if (only === undefined) throw new UsageError(`${name}: no job here has that number or that file`);
    if (more.length === 0) return only.file;
    throw new UsageError(`${name} is ${[only, ...more].map(({ file }) => file).join(' and ')}; name the file`);
  });
}
