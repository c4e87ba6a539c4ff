import { type FSWatcher, watch } from 'node:fs';
import { basename, dirname, resolve } from 'node:path';
import { note, warn } from '../say.ts';
import { UsageError } from '../usage.ts';
import { changedFiles, changedLine } from './changes.ts';
import type { How } from './how.ts';
import { foundIn } from './made.ts';
import { type Day, makeDay } from './make-day.ts';
import type { ReadDay } from './read.ts';

/** Editors write a file in several steps. */
const SETTLED_MS = 15;
/** What is for all jobs together is made once nobody has saved for so long. */
const QUIET_MS = 1500;

export interface Watched {
  readonly read: () => Promise<ReadDay>;
  readonly foldersOf: (day: ReadDay) => readonly string[];
  /** Without a folder for what is for all together, where only the jobs are wanted now. */
  readonly how: (all: boolean, stopped: () => boolean) => How;
  /** Files besides the jobs' own. */
  readonly also: readonly string[];
  /** Ends it. */
  readonly ended: Promise<void>;
}

/**
 * Makes a job again as soon as it, its shop or its table is saved, and says in a line what changed; what is for all jobs
 * together follows when nobody saves any more. Until it is ended.
 */
export async function watchDay(first: ReadDay, { read, foldersOf, how, also, ended }: Watched): Promise<void> {
  let last = first;
  let timer: NodeJS.Timeout | undefined;
  let [saves, over] = [0, false];
  let turn: Promise<void> = Promise.resolve();
  const inTurn = (work: () => Promise<void>): void => {
    turn = turn
      .then(work)
      .catch((problem: unknown) => note(problem instanceof Error ? problem.message : String(problem)));
  };
  const later = (ms: number, work: () => Promise<void>): void => {
    clearTimeout(timer);
    timer = setTimeout(() => inTurn(work), ms);
  };
  const all = async (): Promise<void> => {
    const at = saves;
    await makeDay(
      last.jobs,
      foldersOf(last),
      last.problems,
      how(true, () => over || saves !== at),
    );
  };
  const saved = async (): Promise<void> => {
    const begun = performance.now();
    const before = last;
    try {
      last = await read();
    } catch (problem) {
      // Between two steps of an editor a file is away.
      if (problem instanceof UsageError) return note(problem.message);
      throw problem;
    }
    const folders = foldersOf(last);
    const prints = folders.map((folder) => foundIn(folder)?.made.outputs ?? []);
    const day = await makeDay(
      last.jobs,
      folders,
      last.problems,
      how(false, () => over),
    );
    tell(day, before, prints, performance.now() - begun);
    later(QUIET_MS, all);
  };
  const watchers = foldersToWatch(first, also).map((folder) =>
    listen(folder, () => {
      saves += 1;
      later(SETTLED_MS, saved);
    }),
  );
  note(`watching ${first.jobs.length === 1 ? 'one job' : `${first.jobs.length} jobs`}; Ctrl-C ends it`);
  await ended;
  over = true;
  clearTimeout(timer);
  for (const watcher of watchers) watcher.close();
  await turn;
}

function listen(folder: string, heard: () => void): FSWatcher {
  const watcher = watch(folder, (_, name) => {
    // What is written beside the jobs by runs is no source.
    if (name === null || (/\.(?:ya?ml|json|csv|tsv|txt|png|jpe?g|svg)$/iu.test(name) && !name.startsWith('.matwright')))
      heard();
  });
  watcher.on('error', () => undefined);
  return watcher;
}

function foldersToWatch({ jobs }: ReadDay, also: readonly string[]): readonly string[] {
  const files = [...jobs.flatMap(({ file, shop }) => [file, ...(shop === undefined ? [] : [shop.file])]), ...also];
  return [...new Set(files.map((file) => dirname(resolve(file))))];
}

function tell(
  day: Day,
  before: ReadDay,
  prints: readonly (readonly { name: string; size: number; sha256: string }[])[],
  ms: number,
): void {
  const errors = day.problems.filter(({ severity }) => severity === 'error');
  warn(errors);
  for (const { at, job, now } of day.states) {
    if (!now) continue;
    const files = changedFiles(prints[at] ?? [], day.prints.get(at) ?? []);
    const old = before.jobs.find(({ file }) => file === job.file);
    const line = old === undefined ? undefined : changedLine(old.text, job.text);
    const what = files.length === 0 ? 'the same files' : files.join(', ');
    note(`${basename(job.shown)}: ${what}, ${Math.round(ms)} ms${line === undefined ? '' : ` (${line})`}`);
  }
}
