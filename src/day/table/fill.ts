import type { Source } from '../../outputs/solve-job.ts';
import { fail, type Problem, type Result, succeed } from '../../problems/problem.ts';
import { clearField, setField } from '../../read/edit/set-field.ts';
import { onOneLine, type Plain } from '../../read/edit/yaml-print.ts';
import { atRow, type Row } from './cells.ts';
import type { Column } from './columns.ts';

/** A hyphen alone: the template's value goes. */
export const WITHOUT = '-';

/** What a cell does to the template. */
type Doing = 'keeps' | 'sets' | 'clears';

const doingOf = (cell: string): Doing => (cell === '' ? 'keeps' : cell === WITHOUT ? 'clears' : 'sets');

/** No template holds it; letters and digits alone are written without quotes wherever a text may be. */
const MARK = 'matwrightcell';
const MARKS = new RegExp(`(["']?)${MARK}(\\d+)x\\1`, 'gu');

/**
 * Gives the text of a row. Rows that fill the same cells are the same text with other values: it is made once, by the
 * edits that keep all else as it was written, with a mark in the place of each value.
 */
export function rowWriter(template: Source, columns: readonly Column[]): (row: Row, file: string) => Result<string> {
  const marked = new Map<string, Result<string>>();
  return ({ row, cells }, file) => {
    const doing = columns.map(({ at }) => doingOf(cells[at] ?? ''));
    const key = doing.join(' ');
    const text = marked.get(key) ?? withMarks(template.text, columns, doing);
    marked.set(key, text);
    if (!text.ok)
      return fail(text.problems.map((problem) => ({ ...atRow(problem, file, row), ...cellOf(problem, columns) })));
    return succeed(
      text.value.replace(MARKS, (_, quote: string, at: string) => {
        const value = cellValue(cells[columns[Number(at)]!.at] ?? '');
        return quote === '"' && typeof value === 'string' ? JSON.stringify(value) : onOneLine(value, 'yaml');
      }),
    );
  };
}

function withMarks(template: string, columns: readonly Column[], doing: readonly Doing[]): Result<string> {
  let text = template;
  for (const [i, { path }] of columns.entries()) {
    if (doing[i] === 'keeps') continue;
    const made = doing[i] === 'sets' ? setField(text, path, `${MARK}${i}x`) : clearField(text, path);
    if (!made.ok) return fail(made.problems.map((problem) => ({ ...problem, path })));
    text = made.value;
  }
  return succeed(text);
}

const cellOf = ({ path }: Problem, columns: readonly Column[]) => {
  const column = columns.find((each) => each.path === path);
  return column === undefined ? {} : { column: column.at + 1 };
};

/** Digits are a number unless they begin with a nought that counts, as numbers of jobs may. */
function cellValue(cell: string): Plain {
  if (/^-?(?:0|[1-9]\d*)(?:\.\d+)?$/u.test(cell)) return Number(cell);
  return cell === 'true' ? true : cell === 'false' ? false : cell;
}
