import { basename } from 'node:path';
import { manifestFile } from '../../outputs/job-manifest.ts';
import type { OutputFile } from '../../outputs/write.ts';
import { defined } from '../../problems/defined.ts';
import type { Problem } from '../../problems/problem.ts';
import type { Print } from '../files/made.ts';
import type { Origin } from './day-job.ts';
import { type Found, foundIn, type Made } from './made.ts';
import { type JobState, originFrom } from './state.ts';

/** A file for some jobs together, while it is made. */
export interface DayPaper {
  readonly print: Print;
  readonly pages: number;
  /** Of the files that were one document. */
  readonly name: string;
  readonly key: string;
  /** Their folders. */
  readonly jobs: readonly string[];
}

/** What `manifest.json` of a day says: each job's folder has its own beside. */
export interface DayManifest {
  /** All files beside the folders. */
  readonly files: readonly string[];
  readonly papers: readonly {
    readonly file: string;
    readonly pages: number;
    /** The document; of more than five hundred pages it is several files. */
    readonly name: string;
    /** Folders of the jobs that are in it. */
    readonly jobs: readonly string[];
    /** Of all that it is made of. */
    readonly of: string;
  }[];
  readonly jobs: readonly {
    readonly folder: string;
    readonly title: string;
    readonly number?: string;
    readonly sheets: number;
    readonly source: Origin;
  }[];
  readonly problems: readonly Problem[];
  readonly made: Made;
}

export function dayManifest(
  out: string,
  states: readonly JobState[],
  papers: readonly DayPaper[],
  pages: readonly Print[],
  problems: readonly Problem[],
  made: Pick<Made, 'by' | 'of'>,
): OutputFile {
  const outputs = [...papers.map(({ print }) => print), ...pages];
  const manifest: DayManifest = {
    files: outputs.map(({ name }) => name),
    papers: papers.map(({ print, pages: count, name, key, jobs }) => ({
      file: print.name,
      pages: count,
      name,
      jobs: jobs.map((folder) => basename(folder)),
      of: key,
    })),
    jobs: states.map(({ folder, job, indexed: { report, number, sheets } }) => ({
      folder: basename(folder),
      title: report.title,
      ...defined({ number }),
      sheets,
      source: originFrom(out, job),
    })),
    problems: problems.map((problem) =>
      problem.file === undefined ? problem : { ...problem, file: basename(problem.file) },
    ),
    made: { ...made, pictures: [], outputs },
  };
  return manifestFile(manifest);
}

/** A day's manifest that an earlier run has left. */
export function dayBefore(out: string): (Found & { readonly manifest: DayManifest }) | undefined {
  const found = foundIn(out);
  return found !== undefined && isOfDay(found) ? found : undefined;
}

const isOfDay = (found: Found): found is Found & { readonly manifest: DayManifest } =>
  Array.isArray(found.manifest.papers) && Array.isArray(found.manifest.jobs) && !('source' in found.manifest);
