import { sharedSettings } from '../../bench/settings.ts';
import type { Drawing } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import type { Margined } from '../../settle/settled.ts';
import { boardKey } from '../../shop/board.ts';
import type { BenchJob } from './model.ts';
import { runList } from './run.ts';
import { ticket, ticketRecord } from './ticket.ts';

export interface TicketsOptions {
  readonly paper: Margined;
  /** Of the first job as it was given, instead of the jobs' own; those after it count on. */
  readonly number?: string;
  readonly fonts: Fonts;
}

export interface Tickets {
  readonly title: string;
  readonly sheets: readonly Drawing[];
  readonly records: readonly ReturnType<typeof ticketRecord>[];
}

/**
 * A ticket for each job in one file: jobs of one board after each other, and of those the smallest guide setting first, so
 * that boards are fetched and stops are set as seldom as can be. Several jobs have a list of the run in front.
 */
export function tickets(jobs: readonly BenchJob[], { paper, number, fonts }: TicketsOptions): Tickets {
  const sorted = sortedForBench(numbered(jobs, number));
  const each = sorted.map((job, index) => ticket(job, { paper, of: { index, count: sorted.length }, fonts }));
  const front =
    sorted.length > 1 ? runList(sorted, sharedSettings(sorted.map(({ strokes }) => strokes)), paper, fonts) : [];
  const title =
    sorted.length === 1 ? `${sorted[0]!.job.title}, bench ticket` : `Bench tickets of ${sorted.length} jobs`;
  return { title, sheets: [...front, ...each.flat()], records: sorted.map(ticketRecord) };
}

/** By the boards from the top mat down, then by the smallest setting of the guide; what is alike stays as it was given. */
function sortedForBench<T extends Pick<BenchJob, 'mat' | 'strokes'>>(jobs: readonly T[]): readonly T[] {
  const boards = ({ mat }: T): string => mat.layers.map(({ board }) => boardKey(board)).join('\n');
  const setting = ({ strokes }: T): number =>
    Math.min(Number.POSITIVE_INFINITY, ...strokes.filter((s) => !s.beyondGuide).map((s) => s.guide));
  return jobs
    .map((job) => ({ job, boards: boards(job), setting: setting(job) }))
    .sort((a, b) => (a.boards < b.boards ? -1 : a.boards > b.boards ? 1 : a.setting - b.setting || 0))
    .map(({ job }) => job);
}

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
