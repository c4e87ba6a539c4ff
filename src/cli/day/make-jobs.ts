import { basename } from 'node:path';
import { atCells } from '../../day/table/at-cells.ts';
import { MANIFEST } from '../../outputs/job-manifest.ts';
import { defined } from '../../problems/defined.ts';
import { error, type Problem } from '../../problems/problem.ts';
import { remember } from '../files/this-run.ts';
import { reason } from '../files/why.ts';
import { UsageError } from '../usage.ts';
import { eachOf } from './crew.ts';
import type { DayJob } from './day-job.ts';
import { OF_A_JOB } from './earlier-jobs.ts';
import type { How } from './how.ts';
import { type JobState, keyOf, originFrom, stateOf, unchanged } from './state.ts';
import type { JobText, StoredManifest } from './tasks.ts';

/** What became of a job: its state where its files lie there, and what is to be said of it. */
export interface JobDone {
  readonly state?: JobState;
  readonly problems: readonly Problem[];
  /** Where it was made in this run. */
  readonly manifest?: StoredManifest;
  readonly packed?: Uint8Array;
}

/** As it goes to whoever does the work. */
export const textOf = ({ text, file, shop, number }: DayJob, at: number): JobText => ({
  text,
  file,
  place: at + 1,
  ...defined({ shop, number }),
});

/** Makes every job whose files are not as they should be, each into its folder as soon as it is done. One that is wrong stops no other. */
export async function makeJobs(
  jobs: readonly DayJob[],
  folders: readonly string[],
  how: How,
  done: (at: number, job: JobDone) => void,
): Promise<void> {
  const { crew, progress } = how;
  let count = 0;
  await eachOf(jobs, crew.hands === 1 ? 1 : crew.hands + 1, async (job, at) => {
    if (how.stopped()) return;
    const one = await makeJob(job, at, folders[at]!, how);
    count += 1;
    progress.step(count, jobs.length, jobs.length === 1 ? 'job' : 'jobs');
    done(at, one);
  });
}

async function makeJob(job: DayJob, at: number, folder: string, how: How): Promise<JobDone> {
  const key = keyOf(job, how);
  const before = unchanged(job, key, folder, how);
  if (before !== undefined) {
    how.writer.kept(folder, [...before.files, MANIFEST], OF_A_JOB);
    const problems = before.warnings.map((each) => inPlace(each, job.file));
    return { state: stateOf(job, at, folder, before, false), problems };
  }
  try {
    const { out, options, sheets, version } = how;
    const { value, problems } = await how.crew.run('job', {
      job: textOf(job, at),
      options,
      sheets,
      source: originFrom(folder, job),
      made: { by: version, of: key },
      pack: out !== undefined,
    });
    if (value === undefined) return { problems: inTable(job, problems) };
    for (const file of value.pictures) remember(file, 'picture');
    await how.writer.whole({ folder, files: value.files, families: OF_A_JOB });
    const { manifest, packed } = value;
    return {
      state: stateOf(job, at, folder, manifest, true),
      problems: inTable(job, problems),
      manifest,
      ...defined({ packed }),
    };
  } catch (problem) {
    if (how.stopped()) return { problems: [] };
    return { problems: [failed(job, problem)] };
  }
}

/** A manifest names no ways of this machine. */
const inPlace = (problem: Problem, file: string): Problem =>
  problem.file === basename(file) ? { ...problem, file } : problem;

const inTable = ({ row, file }: DayJob, problems: readonly Problem[]): readonly Problem[] =>
  row === undefined ? problems : atCells(row, problems, file);

/** What could not be written, or whoever was at it came to an end: the others are made all the same. */
function failed(job: DayJob, problem: unknown): Problem {
  const words = problem instanceof Error ? problem.message : reason(problem);
  const code = problem instanceof UsageError ? 'job-unwritten' : 'job-failed';
  return { ...error(code, [], words), file: job.shown };
}
