import { setFlagsFromString } from 'node:v8';
import type { Command } from 'commander';
import { MOST_PAGES } from '../../day/papers/paper.ts';
import { MOST_SHEETS } from '../../outputs/everything.ts';
import type { OptionName } from '../../outputs/option-table.ts';
import { defined } from '../../problems/defined.ts';
import { collected } from '../day/collect.ts';
import { ALONE } from '../day/crew.ts';
import { foldersLeft, tellFolders } from '../day/earlier-jobs.ts';
import { foldersOf } from '../day/folders.ts';
import type { How } from '../day/how.ts';
import { INTERRUPTED, interrupt } from '../day/interrupt.ts';
import { commandsOf } from '../day/list.ts';
import { type Day, makeDay } from '../day/make-day.ts';
import { type MakeFlags, MOST_THREADS, makeOptions, wholeNumber } from '../day/make-options.ts';
import { noteMade } from '../day/note-made.ts';
import { type ReadDay, readDay } from '../day/read.ts';
import { sayDay, sayDayJson } from '../day/say-day.ts';
import { crewFor } from '../day/threads.ts';
import { watchDay } from '../day/watch.ts';
import { atOnce, held } from '../day/writer.ts';
import { tellLeft } from '../output/earlier.ts';
import { type Given, optionsFrom, outputOptions, type Shared } from '../output/options.ts';
import { progress } from '../progress.ts';
import { fail, note, remark, warn } from '../say.ts';
import { UsageError } from '../usage.ts';

/** What is asked of all outputs of a job at once. */
const OPTIONS: readonly OptionName[] = ['paper', 'printer', 'extent', 'number', 'date', 'format', 'png', 'dpi'];

export function define(command: Command): void {
  const described = command.argument('[job...]', 'job files, folders of them, or patterns such as "monday/*.yaml"');
  makeOptions(outputOptions(described, OPTIONS, ['pdf', 'svg', 'png', 'tiles']))
    .addHelpText(
      'after',
      `
Each job has a folder of its own, in --out or beside the job, with what its make: list names, or the shop's (else pattern,
proof, ticket and a file for each of the shop's machines), and manifest.json: every file, and where each page's part of
the drawing lies. In --out lies what is for all of them: patterns.pdf, tickets.pdf with the list of the run, stock.pdf,
labels.pdf, and index.html, which shows the day. Only what has changed is made again. A job that is wrong stops no other;
it is told at the end, with exit code 2.

Examples:
  matwright make examples/heron/job.yaml
  matwright make monday --out monday-out --number 41
  matwright make --table prints.csv --template double.yaml --out show
  matwright make monday --out monday-out --watch

On several machines, or with a queue of your own:
  matwright make monday --out day --list | tr '\\n' '\\0' | xargs -0 -n 1 -P 4 sh -c
  matwright make --collect day
`,
    )
    .action(make);
}

type Flags = Given & Shared & MakeFlags;

async function make(given: readonly string[], flags: Flags, command: Command): Promise<void> {
  const quiet = flags.json === true || flags.quiet === true;
  const { number, ...options } = optionsFrom(OPTIONS, flags);
  const { shop, table, template, collect } = flags;
  if (collect !== undefined && given.length > 0)
    throw new UsageError('--collect takes the jobs that it finds; name none');
  const row = flags.row === undefined ? undefined : wholeNumber('row', flags.row, 1, 1_000_000);
  const read = (): Promise<ReadDay> => readDay({ jobs: given, ...defined({ table, template, row, shop, number }) });
  const found = collect === undefined ? undefined : await collected(collect, shop);
  const day = found === undefined ? await read() : { jobs: found.jobs, problems: [] };
  const folders = found?.folders ?? foldersFor(day, flags);
  if (flags.list === true) return listed(day, folders, flags);
  const threads = flags.threads === undefined ? undefined : wholeNumber('threads', flags.threads, 1, MOST_THREADS);
  const crew = flags.watch === true ? ALONE : crewFor(day.jobs.length, threads);
  // What one large job leaves behind is swept before the heap is four times as large as what is in use: 5 % of its time, a sixth of its memory.
  if (crew === ALONE) setFlagsFromString('--heap-growing-percent=100');
  let stop: () => void = () => undefined;
  const ended = new Promise<void>((resolve) => {
    stop = resolve;
  });
  const { stopped, release } = interrupt(() => {
    stop();
    void crew.close();
  });
  const prune = flags.prune === true;
  const writer = flags.allOrNone === true ? held(prune) : atOnce(prune);
  const out = collect ?? (flags.into === undefined ? flags.out : undefined);
  const how: How = {
    ...defined({ out }),
    options,
    version: command.parent?.version() ?? '',
    sheets: wholeNumber('max-sheets', flags.maxSheets, MOST_SHEETS, MOST_PAGES),
    force: flags.force === true,
    verify: flags.verify === true,
    crew,
    progress: progress(quiet),
    stopped,
    writer,
  };
  try {
    const made = await makeDay(day.jobs, folders, day.problems, how).catch((problem: unknown) => {
      // Whoever was at the papers of the day was sent away with the others.
      if (stopped()) return undefined;
      throw problem;
    });
    if (stopped() || made === undefined) return sayStopped(made?.states.length, day.jobs.length);
    await tell(made, how, folders, flags);
    if (flags.watch !== true) return;
    const { out: _, ...jobsAlone } = how;
    await watchDay(day, {
      read,
      foldersOf: (now) => foldersFor(now, flags),
      how: (all, over) => ({ ...(all ? how : jobsAlone), force: false, stopped: over, writer: atOnce(prune) }),
      also: [table, template].filter((file) => file !== undefined),
      ended,
    });
  } finally {
    release();
    await crew.close();
  }
}

function foldersFor({ jobs }: ReadDay, { into, out }: Flags): readonly string[] {
  if (into === undefined) return foldersOf(jobs, out);
  if (jobs.length <= 1) return jobs.map(() => into);
  throw new UsageError(`--into is the folder of one job, and there are ${jobs.length}; give --out`);
}

function listed({ jobs, problems }: ReadDay, folders: readonly string[], flags: Flags): void {
  for (const line of commandsOf(jobs, folders, OPTIONS, flags)) note(line);
  if (problems.length > 0) fail(problems, false);
}

async function tell(day: Day, { writer, out }: How, folders: readonly string[], flags: Flags): Promise<void> {
  const json = flags.json === true;
  const wrong = day.problems.filter(({ severity }) => severity === 'error');
  if (wrong.length > 0 && flags.allOrNone === true) return fail(wrong, json);
  await writer.release();
  if (wrong.length > 0) process.exitCode = wrong.some(({ code }) => code === 'job-failed') ? 1 : 2;
  const quiet = json || flags.quiet === true;
  await noteMade(day.states);
  if (json) sayDayJson(day, writer.left);
  else if (quiet) warn(wrong);
  else sayDay(day, out);
  if (!quiet) tellLeft(writer.left);
  if (out !== undefined && day.papers.length > 0) tellFolders(foldersLeft(out, folders), flags.prune === true, quiet);
}

function sayStopped(done: number | undefined, of: number): void {
  const jobs = done === undefined ? 'files that stand are whole' : `${done} of ${of} jobs are as they should be`;
  remark(`stopped; ${jobs}, and the same call makes the rest`);
  process.exitCode = INTERRUPTED;
}
