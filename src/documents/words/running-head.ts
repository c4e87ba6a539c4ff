import type { Item } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import type { Box } from '../../geometry/box.ts';
import type { Job } from '../../job/job.ts';
import { defined } from '../../problems/defined.ts';
import { showDay } from '../../read/fields/day.ts';
import { moved } from '../../text/block.ts';
import { fittedLine, level } from '../../text/paragraph.ts';
import { BOLD } from '../../text/styles.ts';

/** A job as far as its sheets are told apart. */
export interface HeadedJob {
  readonly job: Pick<Job, 'title' | 'due'>;
  /** As the shop counts its jobs. */
  readonly number?: string;
}

/** What tells a sheet from those of other jobs. */
export interface SheetHead {
  /** Of the one job, or of several in their order. */
  readonly number?: string;
  readonly due?: string;
}

/** The number of a job and the day that it is due; of several jobs all numbers and the first day. */
export function sheetHead(jobs: readonly HeadedJob[]): SheetHead {
  const numbers = jobs.flatMap(({ number }) => number ?? []);
  const [first] = jobs.flatMap(({ job: { due } }) => due ?? []).sort();
  return defined({
    number: numbers.length === 0 ? undefined : numbers.join(', '),
    due: first === undefined ? undefined : `${jobs.length === 1 ? '' : 'first '}due ${showDay(first)}`,
  });
}

/** Room that the head takes at the top of what is printed. */
export const HEAD_ROOM = 5;

/** At the two ends of the line: what clips sheets together covers its middle. */
export function runningHead(jobs: readonly HeadedJob[], { x, y, width }: Box, fonts: Fonts): readonly Item[] {
  const { number, due: day } = sheetHead(jobs);
  if (number === undefined && day === undefined) return [];
  const name = [number, ...(jobs.length === 1 ? [jobs[0]!.job.title] : [])].filter((text) => text !== undefined);
  const due = fittedLine(day ?? '', width / 2, BOLD, fonts);
  const line = level([
    [0, fittedLine(name.join('  '), width - due.width - 6, BOLD, fonts)],
    [width - due.width, due],
  ]);
  return moved(line.items, x, y);
}
