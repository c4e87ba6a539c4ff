import { fileStem } from '../../job/file-stem.ts';
import type { Source } from '../../outputs/solve-job.ts';
import { error, fail, type Problem, type Result, succeed } from '../../problems/problem.ts';
import { quoted } from '../../problems/quoted.ts';
import { readText } from '../../read/text/text.ts';
import { atRow, type Row, readCells } from './cells.ts';
import { type Column, type Columns, columnsOf } from './columns.ts';
import { rowWriter } from './fill.ts';

/** A row of a table as a job of its own. */
export interface TableJob {
  /** As its folder is called: what stands under `file`, else made of its title. No two of a table are alike. */
  readonly name: string;
  readonly row: number;
  /** The template with what the row says. */
  readonly text: string;
  readonly columns: readonly Column[];
  /** Of the table. */
  readonly file: string;
}

export interface TableJobs {
  readonly jobs: readonly TableJob[];
  /** Of rows that are left out. */
  readonly problems: readonly Problem[];
}

/**
 * A job for each row of a table, each the text of a template with other values in some places. An empty cell leaves what
 * the template says; a hyphen alone takes it out. Fails where table, headings or template cannot be used; what is wrong
 * with a single row leaves out that row. Whoever solves a job puts its problems back with `atCells`.
 */
export function jobsFromTable(table: Source, template: Source): Result<TableJobs> {
  const read = readText(template.text, template.file);
  const cells = readCells(table);
  const unread = read.ok ? read.value.problems : read.problems;
  if (!read.ok || !cells.ok || unread.length > 0) return fail([...unread, ...(cells.ok ? [] : cells.problems)]);
  const found = columnsOf(cells.value.headings, read.value.source.root, table.file);
  if (!found.ok) return found;
  const columns = found.value;
  const textOf = rowWriter(template, columns.fields);
  const jobs: TableJob[] = [];
  const problems: Problem[] = [];
  const names = new Map<string, number>();
  for (const row of cells.value.rows) {
    const made = textOf(row, table.file);
    if (!made.ok) {
      problems.push(...made.problems);
      continue;
    }
    const wished = columns.names === undefined ? '' : (row.cells[columns.names] ?? '');
    const name = nameOf(row, wished, columns, names);
    const before = names.get(name.toLowerCase());
    if (before !== undefined) problems.push(sameName(name, before, row.row, columns, table.file));
    else {
      names.set(name.toLowerCase(), row.row);
      jobs.push({ name, row: row.row, text: made.value, columns: columns.fields, file: table.file });
    }
  }
  return succeed({ jobs, problems });
}

/** A name that was asked for is taken as it is; one that is made of a title gives way to those before it. */
function nameOf({ row, cells }: Row, wished: string, { fields }: Columns, taken: ReadonlyMap<string, number>): string {
  if (wished !== '') return wished;
  const told = (key: string): string => cells[fields.find(({ path }) => path[0] === key)?.at ?? -1] ?? '';
  const title = told('title') === '' ? told('number') : told('title');
  if (title === '') return `row-${row}`;
  const stem = fileStem(title);
  return taken.has(stem) ? `${stem}-${row}` : stem;
}

function sameName(name: string, before: number, row: number, { names = 0 }: Columns, file: string): Problem {
  const message = `row ${before} is called ${quoted(name)} too`;
  const hint = 'give each row another name under file';
  return { ...atRow(error('table-name-twice', ['file'], message, hint), file, row), column: names + 1 };
}
