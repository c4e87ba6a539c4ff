import type { Command } from 'commander';
import { MOST_PAGES } from '../../day/papers/paper.ts';
import { MOST_SHEETS } from '../../outputs/everything.ts';
import type { OptionName } from '../../outputs/option-table.ts';
import { defined } from '../../problems/defined.ts';
import { foldersLeft, tellFolders } from '../day/earlier-jobs.ts';
import { foldersOf } from '../day/folders.ts';
import type { How } from '../day/how.ts';
import { INTERRUPTED, interrupt } from '../day/interrupt.ts';
import { makeDay } from '../day/make-day.ts';
import { type MakeFlags, MOST_THREADS, makeOptions, wholeNumber } from '../day/make-options.ts';
import { readDay } from '../day/read.ts';
import { sayDay, sayDayJson } from '../day/say-day.ts';
import { crewFor } from '../day/threads.ts';
import { atOnce, held } from '../day/writer.ts';
import { tellLeft } from '../earlier.ts';
import { type Given, optionsFrom, outputOptions, type Shared } from '../output-options.ts';
import { progress } from '../progress.ts';
import { fail, remark, warn } from '../say.ts';

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
`,
    )
    .action(make);
}

async function make(given: readonly string[], flags: Given & Shared & MakeFlags, command: Command): Promise<void> {
  const json = flags.json === true;
  const quiet = json || flags.quiet === true;
  const { number, ...options } = optionsFrom(OPTIONS, flags);
  const { out, shop, table, template } = flags;
  const asked = { jobs: given, ...defined({ table, template, shop, number }) };
  const { jobs, problems: unread } = await readDay(asked);
  const folders = foldersOf(jobs, out);
  const prune = flags.prune === true;
  const writer = flags.allOrNone === true ? held(prune) : atOnce(prune);
  const threads = flags.threads === undefined ? undefined : wholeNumber('threads', flags.threads, 1, MOST_THREADS);
  const crew = crewFor(jobs.length, threads);
  const { stopped, release } = interrupt(() => void crew.close());
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
  const day = await makeDay(jobs, folders, unread, how).finally(async () => {
    release();
    await crew.close();
  });
  if (stopped()) return sayStopped(day.states.length, jobs.length);
  const wrong = day.problems.filter(({ severity }) => severity === 'error');
  if (wrong.length > 0 && flags.allOrNone === true) return fail(wrong, json);
  await writer.release();
  if (wrong.length > 0) process.exitCode = wrong.some(({ code }) => code === 'job-failed') ? 1 : 2;
  if (json) sayDayJson(day, writer.left);
  else if (flags.quiet === true) warn(wrong);
  else sayDay(day, out);
  if (!quiet) tellLeft(writer.left);
  if (out !== undefined && day.papers.length > 0) tellFolders(foldersLeft(out, folders), prune, quiet);
}

function sayStopped(done: number, of: number): void {
  remark(`stopped; ${done} of ${of} jobs are as they should be, and the same call makes the rest`);
  process.exitCode = INTERRUPTED;
}
