import Papa from 'papaparse';
import type { Source } from '../../outputs/solve-job.ts';
import { error, fail, type Problem, type Result, succeed } from '../../problems/problem.ts';
import { quoted } from '../../problems/quoted.ts';

/** A row as a spreadsheet counts it, the headings being row 1. */
export interface Row {
  readonly row: number;
  readonly cells: readonly string[];
}

export interface Cells {
  readonly headings: readonly string[];
  /** Without those in which nothing stands. */
  readonly rows: readonly Row[];
}

/** More than any day has; what is longer is not the file that was meant. */
const MOST_ROWS = 10_000;

/** The cells of a table with commas, with semicolons, or as a spreadsheet hands over what is copied out of it, with tabs. */
export function readCells({ text, file }: Source): Result<Cells> {
  const body = text.startsWith('\ufeff') ? text.slice(1) : text;
  const { data, errors } = Papa.parse<string[]>(body, { delimiter: delimiterOf(body) });
  const problems = errors.map(({ row = 0 }): Problem => {
    const message = 'a quote is opened and not closed, or something stands behind a closed one';
    return atRow(error('table-quotes', [], message, 'double a quote that is a sign of its own: ""'), file, row + 1);
  });
  if (problems.length > 0) return fail(problems);
  const rows = data
    .map((cells, i) => ({ row: i + 1, cells: cells.map((cell) => cell.trim()) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''));
  const [head, ...others] = rows;
  if (head === undefined || others.length === 0) {
    const message = 'the table has no rows below its headings';
    return fail([{ ...error('table-empty', [], message, 'write the headings first, then a row for each job'), file }]);
  }
  if (others.length > MOST_ROWS) {
    const message = `the table has ${others.length} rows, more than the ${MOST_ROWS} that are read`;
    return fail([{ ...error('table-long', [], message, 'is this the right file?'), file }]);
  }
  const long = others.flatMap(({ row, cells }) => tooLong(cells, head.cells, file, row));
  return long.length > 0 ? fail(long) : succeed({ headings: head.cells, rows: others });
}

/** A cell that no heading stands over would be lost. */
function tooLong(cells: readonly string[], headings: readonly string[], file: string, row: number): readonly Problem[] {
  const at = cells.findIndex((cell, i) => cell !== '' && i >= headings.length);
  if (at === -1) return [];
  const message = `${quoted(cells[at]!)} stands under no heading`;
  const hint = 'give it a heading, or put quotes round a value that holds a comma';
  return [{ ...atRow(error('table-row', [], message, hint), file, row), column: at + 1 }];
}

export const atRow = (problem: Problem, file: string, row: number): Problem => ({ ...problem, file, line: row });

/** What stands between the headings: what is copied from a spreadsheet has tabs, some languages' files semicolons. */
function delimiterOf(text: string): string {
  const first = (text.split(/\r?\n|\r/u, 1)[0] ?? '').replace(/"(?:[^"]|"")*"/gu, '');
  if (first.includes('\t')) return '\t';
  return first.split(';').length > first.split(',').length ? ';' : ',';
}

/** The text of a table with commas, which every spreadsheet opens. */
export const writeCells = (rows: readonly (readonly string[])[]): string =>
  `${Papa.unparse(
    rows.map((row) => [...row]),
    { newline: '\n' },
  )}\n`;
