import type { BenchJob } from '../../bench/bench-job.ts';
import type { Wait } from '../../bench/work/lots.ts';
import type { Drawing } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import type { Margined } from '../../settle/settled.ts';
import { runList } from './run.ts';
import { ticket, ticketRecord } from './ticket.ts';

export interface TicketsOptions {
  readonly paper: Margined;
  /** Of the first job as it was given, instead of the jobs' own; those after it count on. */
  readonly number?: string;
  /** The list of the run alone, also of one job. */
  readonly run?: boolean;
  readonly fonts: Fonts;
}

export interface Tickets {
  readonly title: string;
  readonly sheets: readonly Drawing[];
  readonly records: readonly ReturnType<typeof ticketRecord>[];
}

/**
 * A ticket for each job in one file, by ticket number where all have one. Several jobs have a list of the run in front:
 * one order of work over all of them. `waits` names blanks that come out of fallouts, by the jobs as they were given.
 */
export function tickets(
  jobs: readonly BenchJob[],
  { paper, number, run = false, fonts }: TicketsOptions,
  waits: readonly Wait[] = [],
): Tickets {
  const order = byNumber(numbered(jobs, number));
  const sorted = order.map(({ job }) => job);
  const at = (index: number): number => order.findIndex((each) => each.index === index);
  const placed = waits.map(({ job, after, ...wait }) => ({
    ...wait,
    job: at(job),
    after: { ...after, job: at(after.job) },
  }));
  const each = run
    ? []
    : sorted.map((job, index) => ticket(job, { paper, of: { index, count: sorted.length }, fonts }));
  const front = run || sorted.length > 1 ? runList(sorted, placed, paper, fonts) : [];
  return { title: titleOf(sorted, run), sheets: [...front, ...each.flat()], records: sorted.map(ticketRecord) };
}

function titleOf(jobs: readonly BenchJob[], run: boolean): string {
  const [first] = jobs;
  if (jobs.length === 1) return `${first!.job.title}, ${run ? 'run list' : 'bench ticket'}`;
  return `${run ? 'Run list' : 'Bench tickets'} of ${jobs.length} jobs`;
}

/** As a shop counts, `A-9` before `A-10`; as they were given where one has no number, or two have the same. */
function byNumber(jobs: readonly BenchJob[]): readonly { readonly job: BenchJob; readonly index: number }[] {
  const all = jobs.map((job, index) => ({ job, index, key: countingKey(job.number ?? '') }));
  if (new Set(all.map(({ key }) => key)).size < all.length || jobs.some(({ number }) => number === undefined))
    return all;
  return all.sort((a, b) => (a.key < b.key ? -1 : 1));
}

/** Figures filled up to one length, so that texts compare as numbers do. */
const countingKey = (number: string): string => number.replace(/\d+/gu, (figures) => figures.padStart(12, '0'));

/** The number that is asked for counts on from job to job; without one each job has its own. */
export function numbered<T extends Pick<BenchJob, 'job'>>(
  jobs: readonly T[],
  first: string | undefined,
): readonly (T & Pick<BenchJob, 'number'>)[] {
  return jobs.map((work, i) => {
    const number = first === undefined ? work.job.number : countedOn(first, i);
    return number === undefined ? work : { ...work, number };
  });
}

/** `41` and `A-07` count on to `42` and `A-08`; what ends in no figure has the count behind it. */
export function countedOn(number: string, by: number): string {
  if (by === 0) return number;
  const end = /\d{1,9}$/u.exec(number)?.[0];
  if (end === undefined) return `${number} ${by + 1}`;
  return number.slice(0, -end.length) + `${Number(end) + by}`.padStart(end.length, '0');
}
