import type { TableJob } from '../../day/table/jobs-from-table.ts';
import type { SourceFile } from '../input.ts';

/** Where a job is written, as its manifest says it, so that it can be found again. */
export type Origin = (
  | { readonly job: string }
  | { readonly table: string; readonly template: string; readonly row: number }
) & {
  /** Where it was asked for, and counted on. */
  readonly number?: string;
};

/** A job of the day, read but not solved. */
export interface DayJob {
  /** As whoever called knows it: a file, or a row of a table. */
  readonly shown: string;
  /** What it is solved as: of a row a file that is not there, beside the table. Pictures and the shop count from it. */
  readonly file: string;
  readonly text: string;
  readonly shop?: SourceFile;
  /** Of a table, where it is one. */
  readonly row?: TableJob;
  readonly origin: Origin;
  /** On this day: asked for and counted on. */
  readonly number?: string;
}
