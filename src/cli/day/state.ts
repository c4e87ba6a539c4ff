import { dirname, relative } from 'node:path';
import type { IndexedJob } from '../../day/index-page/model.ts';
import { defined } from '../../problems/defined.ts';
import type { DayJob, Origin } from './day-job.ts';
import type { How } from './how.ts';
import { areAsMade, type Found, foundIn, hashOfAll } from './made.ts';
import type { StoredManifest } from './tasks.ts';

/** A job whose files lie in their folder. */
export interface JobState {
  readonly job: DayJob;
  readonly at: number;
  readonly folder: string;
  /** Of everything that its files are made of. */
  readonly key: string;
  /** Were they made in this run? */
  readonly now: boolean;
  /** What the index says of it, from its own folder. */
  readonly indexed: Omit<IndexedJob, 'folder' | 'face'>;
  /** Pages of its patterns. */
  readonly patterns: number;
  readonly origin: Origin;
}

/** A day keeps this much of each job, and no more. */
export function stateOf(job: DayJob, at: number, folder: string, manifest: StoredManifest, now: boolean): JobState {
  const { title, customer, units, count, outer, glazing, backing } = manifest;
  const layers = manifest.layers.map(({ name, board, blank }) => ({ name, board, blank }));
  const openings = manifest.openings.map(({ sight }) => ({ sight }));
  const report = { title, ...defined({ customer }), units, count, outer, layers, openings, glazing, backing };
  const { number, due, files, sheets, warnings } = manifest;
  return {
    job,
    at,
    folder,
    key: hashOfAll([manifest.made.of, ...manifest.made.pictures.map(({ sha256 }) => sha256)]),
    now,
    indexed: { report, ...defined({ number, due }), files, sheets, warnings },
    patterns: manifest.patterns.reduce((sum, { pages }) => sum + pages.length, 0),
    origin: manifest.source,
  };
}

/** Of all that a job's files are made of, but for pictures: those are named only once it has been read. */
export const keyOf = (job: DayJob, { version, options, sheets }: How): string =>
  hashOfAll([
    version,
    job.file.replace(/^.*[\\/]/u, ''),
    job.text,
    job.shop?.text ?? '',
    job.number ?? '',
    options,
    sheets,
  ]);

/** What was made of a job before, where that is still what would be made of it now. */
export function unchanged(
  job: DayJob,
  key: string,
  folder: string,
  { force, verify, version }: How,
): StoredManifest | undefined {
  if (force) return undefined;
  const found = foundIn(folder);
  if (found === undefined || found.made.by !== version || found.made.of !== key || !isOfJob(found)) return undefined;
  const { pictures, outputs } = found.made;
  if (!areAsMade(outputs, folder, found.atMs, verify)) return undefined;
  if (!areAsMade(pictures, dirname(job.file), found.atMs, verify)) return undefined;
  return found.manifest;
}

type OfJob = Found & { readonly manifest: StoredManifest };

/** One that this version has written: its key says so. A day's own has other things in it. */
const isOfJob = (found: Found): found is OfJob => Array.isArray(found.manifest.patterns) && 'source' in found.manifest;

/** The way to a job's texts from a folder of outputs: both may be moved together. */
export function originFrom(folder: string, { origin, number }: DayJob): Origin {
  const way = (file: string): string => relative(folder, file).replaceAll('\\', '/');
  const own = defined({ number });
  return 'job' in origin
    ? { job: way(origin.job), ...own }
    : { table: way(origin.table), template: way(origin.template), row: origin.row, ...own };
}
