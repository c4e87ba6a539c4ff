import type { BenchOutput } from '../../day/papers/bench.ts';
import type { Paper } from '../../day/papers/paper.ts';
import type { Manifest } from '../../outputs/job-manifest.ts';
import type { OutputOptions } from '../../outputs/options.ts';
import type { OutputFile } from '../../outputs/write.ts';
import type { Problem } from '../../problems/problem.ts';
import type { SourceFile } from '../input.ts';
import type { Origin } from './day-job.ts';
import type { Made } from './made.ts';

/** A job as it goes from thread to thread. */
export interface JobText {
  readonly file: string;
  readonly text: string;
  readonly shop?: SourceFile;
  readonly number?: string;
  /** Which of the day's it is, from 1. */
  readonly place: number;
}

/** What can be done by itself, wherever there is a hand free: plain data in, plain data out. */
export interface Tasks {
  /** Everything of a job; its patterns packed where they are wanted for the day's file. */
  readonly job: {
    readonly task: {
      readonly job: JobText;
      readonly options: OutputOptions;
      readonly sheets: number;
      readonly source: Origin;
      readonly made: Pick<Made, 'by' | 'of'>;
      readonly pack: boolean;
    };
    readonly answer: Told<MadeJob>;
  };
  /** The patterns of a job whose files are there already. */
  readonly pages: {
    readonly task: { readonly job: JobText; readonly options: OutputOptions };
    readonly answer: Told<Uint8Array | undefined>;
  };
  /** Patterns of several jobs as one file. */
  readonly patterns: {
    readonly task: { readonly name: string; readonly packed: readonly Uint8Array[] };
    readonly answer: Told<readonly Paper[]>;
  };
  /** What the bench gets for several jobs together. */
  readonly bench: {
    readonly task: {
      readonly papers: readonly { readonly output: BenchOutput; readonly name: string }[];
      readonly jobs: readonly JobText[];
      readonly options: OutputOptions;
    };
    /** In the order in which they were asked for; of one that comes to nothing there are none. */
    readonly answer: Told<readonly (readonly Paper[])[]>;
  };
}

export type TaskKind = keyof Tasks;

/** What came of it; `value` is undefined where it came to nothing. */
export interface Told<T> {
  readonly value: T | undefined;
  readonly problems: readonly Problem[];
}

export interface MadeJob {
  /** The manifest last. */
  readonly files: readonly OutputFile[];
  readonly manifest: StoredManifest;
  readonly packed?: Uint8Array;
  /** Files that were read, beside the job itself. */
  readonly pictures: readonly string[];
}

/** What lies beside the files of a job. */
export interface StoredManifest extends Manifest {
  /** Where the job is, from the manifest's folder. */
  readonly source: Origin;
  readonly made: Made;
}
