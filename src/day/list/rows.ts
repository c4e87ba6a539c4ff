import { defined } from '../../problems/defined.ts';
import { type DayList, MARKS, type Marked } from './day-list.ts';

/** A job as a list of the day shows it. */
export interface ListedJob {
  /** From the list's own folder. */
  readonly file: string;
  readonly title: string;
  readonly number?: string;
  readonly customer?: string;
  readonly due?: string;
}

export interface DayRow extends ListedJob, Marked {
  /** The job itself is not there any more. */
  readonly gone?: true;
}

/** Every job with what became of it: the first that is due first, then by number, then by file. What the list knows besides comes last. */
export function dayRows(jobs: readonly ListedJob[], list: DayList): readonly DayRow[] {
  const rows = jobs.map((job): DayRow => ({ ...job, ...marksOf(list.get(job.file)) }));
  const known = new Set(jobs.map(({ file }) => file));
  const gone = [...list].flatMap(([file, marks]): readonly DayRow[] =>
    known.has(file) ? [] : [{ file, title: file, ...marks, gone: true }],
  );
  return [...rows.sort(inOrder), ...gone];
}

const marksOf = (marks: Marked = {}): Marked =>
  defined(Object.fromEntries(MARKS.map((mark) => [mark, marks[mark]])) as Marked);

/** A job without a day can wait; numbers by what they count. */
function inOrder(a: DayRow, b: DayRow): number {
  const [x, y] = [a.due ?? '9999', b.due ?? '9999'];
  if (x !== y) return x < y ? -1 : 1;
  const [n, m] = [Number(a.number), Number(b.number)];
  if (Number.isFinite(n) && Number.isFinite(m) && n !== m) return n - m;
  const [left, right] = [`${a.number ?? ''} ${a.file}`, `${b.number ?? ''} ${b.file}`];
  return left < right ? -1 : left > right ? 1 : 0;
}

const HEADINGS = ['number', 'title', 'customer', 'due', ...MARKS] as const;

/** The rows as lines of words, a column each. */
export function dayLines(rows: readonly DayRow[]): readonly string[] {
  const cells = rows.map((row) =>
    HEADINGS.map((key) => (key === 'title' && row.gone ? `${row.title} (gone)` : (row[key] ?? ''))),
  );
  const table = [[...HEADINGS], ...cells];
  const widths = HEADINGS.map((_, at) => Math.max(...table.map((row) => [...row[at]!].length)));
  return table.map((row) =>
    row
      .map((cell, at) => cell + ' '.repeat(widths[at]! - [...cell].length))
      .join('  ')
      .trimEnd(),
  );
}
