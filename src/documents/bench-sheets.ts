import type { Drawing } from '../drawing/model.ts';
import type { RareFonts } from '../fonts/model.ts';
import type { Size } from '../geometry/point.ts';
import { nearest } from '../problems/nearest.ts';
import { error, fail, type Result, succeed } from '../problems/problem.ts';
import { quoted } from '../problems/quoted.ts';
import type { LengthUnit } from '../units/units.ts';
import type { BenchJob } from './ticket-model.ts';
import { tickets } from './tickets.ts';

/** Labels on a sheet: how many, how far apart, mm. */
export interface SheetGrid {
  readonly rows: number;
  readonly columns: number;
  readonly gapX: number;
  readonly gapY: number;
  /** Of the paper outside the labels. */
  readonly marginX: number;
  readonly marginY: number;
}

export interface BenchSheetContext {
  readonly jobs: readonly BenchJob[];
  readonly paper: Size;
  readonly units: LengthUnit;
  readonly number?: string;
  readonly grid?: SheetGrid;
  readonly rare?: RareFonts;
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

export const BENCH_SHEETS: readonly BenchSheet[] = [TICKET];

export function findBenchSheet(kind: string): Result<BenchSheet> {
  const found = BENCH_SHEETS.find((each) => each.kind === kind);
  if (found !== undefined) return succeed(found);
  const known = BENCH_SHEETS.map((each) => each.kind);
  const near = nearest(kind, known);
  const hint = `${near === undefined ? '' : `did you mean ${near}? `}there are ${known.join(', ')}`;
  return fail([error('sheet-unknown', [], `there is no sheet ${quoted(kind)}`, hint)]);
}
