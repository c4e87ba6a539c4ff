import { dirname, join } from 'node:path';
import { countedOn } from '../../documents/ticket/tickets.ts';
import { defined } from '../../problems/defined.ts';
import { error, type Problem } from '../../problems/problem.ts';
import { findShop, readSource, type SourceFile } from '../input.ts';
import { UsageError } from '../usage.ts';
import type { DayJob } from './day-job.ts';
import { findJobs } from './find.ts';

export interface Asked {
  readonly jobs: readonly string[];
  readonly table?: string;
  readonly template?: string;
  /** Of the table, this one alone. */
  readonly row?: number;
  readonly shop?: string;
  /** Of the first job. */
  readonly number?: string;
}

export interface ReadDay {
  readonly jobs: readonly DayJob[];
  readonly problems: readonly Problem[];
}

/** The texts of a day's jobs: files, then the rows of a table. One that cannot be read does not stop the others. */
export async function readDay({ jobs: given, table, template, row, shop, number }: Asked): Promise<ReadDay> {
  if ((table === undefined) !== (template === undefined))
    throw new UsageError('--table and --template go together: rows of the one are put into the other');
  if (given.length === 0 && table === undefined) throw new UsageError('name jobs, or a table of them with --table');
  const files = given.length === 0 ? [] : await findJobs(given);
  const problems: Problem[] = [];
  const shops = new Map<string, Promise<SourceFile | undefined>>();
  // One for all jobs of a folder, read once.
  const shopOf = (file: string): Promise<SourceFile | undefined> => {
    const known = shops.get(dirname(file)) ?? findShop(file, shop);
    shops.set(dirname(file), known);
    return known;
  };
  const found: (Omit<DayJob, 'number'> | undefined)[] = [];
  const alone = files.length === 1 && table === undefined;
  for (const file of files) {
    try {
      const { text, file: named } = await readSource(file, 'job');
      found.push({
        shown: file,
        file: named,
        text,
        origin: { job: file },
        ...defined({ shop: await shopOf(file) }),
      });
    } catch (problem) {
      if (alone || !(problem instanceof UsageError)) throw problem;
      // It keeps its place, so that the others keep their numbers.
      found.push(undefined);
      problems.push({ ...error('job-unreadable', [], withoutName(problem.message, file)), file });
    }
  }
  if (table !== undefined && template !== undefined) {
    const rows = await readRows(table, template, shop);
    found.push(...rows.jobs.filter((job) => row === undefined || job.row?.row === row));
    problems.push(...rows.problems.filter(({ line }) => row === undefined || line === row));
  }
  const jobs = found.flatMap((job, i) =>
    job === undefined ? [] : [{ ...job, ...defined({ number: numberAt(number, i) }) }],
  );
  return { jobs, problems };
}

const numberAt = (first: string | undefined, index: number): string | undefined =>
  first === undefined ? undefined : countedOn(first, index);

const withoutName = (message: string, file: string): string =>
  message.startsWith(`${file}: `) ? message.slice(file.length + 2) : message;

async function readRows(table: string, template: string, shopFile: string | undefined): Promise<ReadDay> {
  const { jobsFromTable } = await import('../../day/table/jobs-from-table.ts');
  const [rows, over] = [await readSource(table, 'job'), await readSource(template, 'job')];
  const made = jobsFromTable(rows, over);
  if (!made.ok) return { jobs: [], problems: made.problems };
  const known = defined({ shop: await findShop(table, shopFile) });
  const jobs = made.value.jobs.map(
    (row): DayJob => ({
      shown: `${table}:${row.row}`,
      file: join(dirname(table), `${row.name}.yaml`),
      text: row.text,
      row,
      origin: { table, template, row: row.row },
      ...known,
    }),
  );
  return { jobs, problems: made.value.problems };
}
