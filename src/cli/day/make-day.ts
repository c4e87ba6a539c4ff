import { join } from 'node:path';
import { indexPage } from '../../day/index-page/index-page.ts';
import type { IndexedJob } from '../../day/index-page/model.ts';
import { FACE } from '../../outputs/face.ts';
import { MANIFEST } from '../../outputs/job-manifest.ts';
import { defined } from '../../problems/defined.ts';
import { type Problem, toldOnce } from '../../problems/problem.ts';
import { TextBytes } from '../../writers/text-bytes.ts';
import { type Print, printOf } from '../files/made.ts';
import type { DayJob } from './day-job.ts';
import { type DayPaper, dayBefore, dayManifest } from './day-manifest.ts';
import { DayPapers } from './day-papers.ts';
import { OF_A_DAY } from './earlier-jobs.ts';
import type { How } from './how.ts';
import { areAsMade, hashOfAll } from './made.ts';
import { makeJobs } from './make-jobs.ts';
import type { JobState } from './state.ts';

/** A page that shows more would take long to open. */
const MOST_SHOWN = 100;

export interface Day {
  readonly states: readonly JobState[];
  readonly papers: readonly DayPaper[];
  /** Errors and warnings, of the jobs in their order, then of what is for all. */
  readonly problems: readonly Problem[];
  /** Of the files of jobs that were made in this run, by place. */
  readonly prints: ReadonlyMap<number, readonly Print[]>;
}

/** Makes a day's jobs, and what is for all together where there is a folder for it. */
export async function makeDay(
  jobs: readonly DayJob[],
  folders: readonly string[],
  unread: readonly Problem[],
  how: How,
): Promise<Day> {
  const { out } = how;
  const before = out === undefined ? undefined : dayBefore(out);
  const papers = out === undefined ? undefined : new DayPapers(how, before, jobs);
  const states = new Map<number, JobState>();
  const prints = new Map<number, readonly Print[]>();
  const told = new Map<number, readonly Problem[]>();
  await makeJobs(jobs, folders, how, (at, done) => {
    told.set(at, done.problems);
    if (done.state !== undefined) states.set(at, done.state);
    if (done.manifest !== undefined) prints.set(at, done.manifest.made.outputs);
    papers?.add(at, done);
  });
  how.progress.end();
  const ofJobs = toldOnce([...unread, ...inOrder(told).flat()]);
  const made = inOrder(states);
  if (papers === undefined || how.stopped() || made.length === 0)
    return { states: made, papers: [], problems: ofJobs, prints };
  const joined = await papers.finish();
  // Nobody is needed any more: what threads hold is let go before the pages that show it all are made.
  await how.crew.close();
  const problems = toldOnce([...ofJobs, ...joined.problems]);
  if (!how.stopped()) await writeIndex(made, joined.papers, problems, how, before);
  return { states: made, papers: joined.papers, problems, prints };
}

const inOrder = <T>(found: ReadonlyMap<number, T>): readonly T[] =>
  [...found].sort(([a], [b]) => a - b).map(([, value]) => value);

/** What the index shows besides the jobs themselves: warnings stand with their jobs. */
const leftOut = (problems: readonly Problem[]): readonly Problem[] =>
  problems.filter(({ severity, code }) => severity === 'error' || code === 'day-stock');

async function writeIndex(
  states: readonly JobState[],
  papers: readonly DayPaper[],
  problems: readonly Problem[],
  how: How,
  before: ReturnType<typeof dayBefore>,
): Promise<void> {
  const { out = '', options, version, verify } = how;
  const wrong = leftOut(problems);
  const of = hashOfAll([
    version,
    options,
    states.map(({ key, folder }) => [key, folder.replace(/^.*[\\/]/u, '')]),
    papers.map(({ print, key }) => [print, key]),
    wrong,
  ]);
  const same = !how.force && before?.made.of === of && areAsMade(before.made.outputs, out, before.atMs, verify);
  const count = Math.ceil(states.length / MOST_SHOWN);
  const names = Array.from({ length: count }, (_, i) => (i === 0 ? 'index.html' : `index-${i + 1}.html`));
  if (same && states.every(({ now }) => !now)) {
    how.writer.kept(out, [...before.made.outputs.map(({ name }) => name), MANIFEST], OF_A_DAY);
    return;
  }
  const prints: Print[] = [];
  for (const [page, name] of names.entries()) {
    const shown = states.slice(page * MOST_SHOWN, (page + 1) * MOST_SHOWN).map((state) => indexed(state, how));
    const text = new TextBytes();
    const parts = indexPage({
      title: 'The day’s mats',
      ...defined({ date: options.date }),
      papers: papers.map(({ print, pages }) => ({ file: print.name, pages })),
      jobs: shown,
      count: states.length,
      pages: names,
      page,
      problems: page === 0 ? wrong : [],
    });
    for (const part of parts) text.add(part);
    const bytes = text.bytes();
    prints.push(printOf({ name, bytes }));
    await how.writer.some({ folder: out, files: [{ name, bytes }] });
  }
  const manifest = dayManifest(out, states, papers, prints, wrong, { by: version, of });
  const written = [...papers.map(({ print }) => print), ...prints];
  await how.writer.whole({ folder: out, files: [manifest], families: OF_A_DAY, written });
}

function indexed({ indexed: known, folder }: JobState, { writer }: How): IndexedJob {
  const name = folder.replace(/^.*[\\/]/u, '');
  const file = join(folder, FACE);
  const face = known.files.includes(FACE) ? new TextDecoder().decode(writer.read(file)) : undefined;
  return { ...known, folder: name, ...defined({ face }) };
}
