import type { Command } from 'commander';
import { MOST_SHEETS } from '../../outputs/everything.ts';
import { UsageError } from '../usage.ts';

/** What `make` is asked besides what goes to the outputs. */
export interface MakeFlags {
  readonly table?: string;
  readonly template?: string;
  readonly allOrNone?: boolean;
  readonly maxSheets?: string;
  readonly force?: boolean;
  readonly verify?: boolean;
  readonly threads?: string;
  readonly row?: string;
  readonly into?: string;
  readonly list?: boolean;
  readonly collect?: string;
  readonly watch?: boolean;
}

export const makeOptions = (command: Command): Command =>
  command
    .option('--table <file>', 'jobs as rows of a table, CSV or copied from a spreadsheet; columns are places in a job')
    .option('--template <job>', 'the job that the rows of --table are put into')
    .option('--row <count>', 'of --table this row alone, as a spreadsheet counts')
    .option('--into <dir>', 'the folder of one job, and nothing for all together')
    .option('--all-or-none', 'write nothing where one job is wrong')
    .option('--max-sheets <count>', `pages that one job may take (default: ${MOST_SHEETS})`)
    .option('--threads <count>', 'jobs that are made at once (default: as many as there are processors)')
    .option('--force', 'make again also what has not changed')
    .option('--verify', 'compare what lies there byte by byte, whatever its size and time say')
    .option('--watch', 'make a job again as soon as it is saved, until Ctrl-C')
    .option('--list', 'print a command for each job, which depends on no other, instead of making it')
    .option('--collect <dir>', 'what is for all together, from the jobs’ folders that the commands of --list left');

/** More are of no use to anybody. */
export const MOST_THREADS = 64;

export function wholeNumber(option: string, text: string | undefined, usual: number, most: number): number {
  if (text === undefined) return usual;
  const value = /^\d{1,6}$/u.test(text) ? Number(text) : 0;
  if (value < 1 || value > most) throw new UsageError(`--${option} ${text}: give a whole number from 1 to ${most}`);
  return value;
}
