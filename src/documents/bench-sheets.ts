import type { Drawing } from '../drawing/model.ts';
import type { Fonts } from '../fonts/model.ts';
import type { Size } from '../geometry/point.ts';
import { nearest } from '../problems/nearest.ts';
import { error, fail, type Result, succeed } from '../problems/problem.ts';
import { quoted } from '../problems/quoted.ts';
import type { LengthUnit } from '../units/units.ts';
import { blankList, listedBlanks } from './lists/blank-list.ts';
import { intakeSheets } from './lists/intake.ts';
import { intakeFields } from './lists/intake-fields.ts';
import { labelSheets, labelsOf, type SheetGrid, USUAL_GRID } from './lists/labels.ts';
import type { BenchJob } from './ticket/model.ts';
import { numbered, tickets } from './ticket/tickets.ts';

export interface BenchSheetContext {
  readonly jobs: readonly BenchJob[];
  readonly paper: Size;
  readonly units: LengthUnit;
  readonly number?: string;
  /** For labels; what it does not say is as usual. */
  readonly grid?: Partial<SheetGrid>;
  readonly fonts: Fonts;
}

export interface BenchSheetsMade {
  readonly title: string;
  readonly sheets: readonly Drawing[];
  /** What they say, as plain data. */
  readonly record: unknown;
}

/** A row of the table of sheets for the bench; the file is `KIND.pdf`. */
export interface BenchSheet {
  readonly kind: string;
  /** What the file is about. */
  readonly subject: string;
  readonly make: (context: BenchSheetContext) => Result<BenchSheetsMade>;
}

const TICKET: BenchSheet = {
  kind: 'ticket',
  subject: 'Bench ticket',
  make({ jobs, ...options }) {
    const { title, sheets, records } = tickets(jobs, options);
    return succeed({ title, sheets, record: records });
  },
};

const BLANKS: BenchSheet = {
  kind: 'blanks',
  subject: 'List of blanks',
  make({ jobs, number, ...options }) {
    const named = numbered(jobs, number);
    return succeed({ title: 'Blanks', sheets: blankList(named, options), record: listedBlanks(named) });
  },
};

const LABELS: BenchSheet = {
  kind: 'labels',
  subject: 'Labels for blanks and backs',
  make({ jobs, number, paper, units, grid, fonts }) {
    const named = numbered(jobs, number);
    const sheets = labelSheets(named, paper, { ...USUAL_GRID, ...grid }, units, fonts);
    return sheets.ok ? succeed({ title: 'Labels', sheets: sheets.value, record: labelsOf(named) }) : sheets;
  },
};

const INTAKE: BenchSheet = {
  kind: 'intake',
  subject: 'Intake form',
  make({ jobs, number, units, ...options }) {
    const [work] = numbered(jobs, number);
    const title = work === undefined ? 'Intake' : `${work.job.title}, intake`;
    return succeed({ title, sheets: intakeSheets(work, units, options), record: intakeFields(work, units) });
  },
};

const BENCH_SHEETS: readonly BenchSheet[] = [TICKET, BLANKS, LABELS, INTAKE];

export function findBenchSheet(kind: string): Result<BenchSheet> {
  const found = BENCH_SHEETS.find((each) => each.kind === kind);
  if (found !== undefined) return succeed(found);
  const known = BENCH_SHEETS.map((each) => each.kind);
  const near = nearest(kind, known);
  const hint = `${near === undefined ? '' : `did you mean ${near}? `}there are ${known.join(', ')}`;
  return fail([error('sheet-unknown', [], `there is no sheet ${quoted(kind)}`, hint)]);
}
