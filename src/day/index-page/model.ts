import type { Report } from '../../bench/report.ts';
import type { Problem } from '../../problems/problem.ts';

/** What the index says of a job, all of it from the job's own manifest and folder. */
export interface IndexedJob {
  readonly report: Pick<Report, 'title' | 'customer' | 'units' | 'count' | 'outer' | 'glazing' | 'backing'> & {
    readonly layers: readonly Pick<Report['layers'][number], 'name' | 'board' | 'blank'>[];
    readonly openings: readonly Pick<Report['openings'][number], 'sight'>[];
  };
  readonly number?: string;
  readonly due?: string;
  /** From the index. */
  readonly folder: string;
  readonly files: readonly string[];
  readonly sheets: number;
  readonly warnings: readonly Problem[];
  /** The text of an SVG. */
  readonly face?: string;
}

/** A file for all jobs together. */
export interface IndexedPaper {
  readonly file: string;
  readonly pages: number;
}

export interface Index {
  readonly title: string;
  readonly date?: string;
  readonly papers: readonly IndexedPaper[];
  /** Those of this page. */
  readonly jobs: readonly IndexedJob[];
  /** On all pages. */
  readonly count: number;
  /** Names of all pages, and which of them this is. */
  readonly pages: readonly string[];
  readonly page: number;
  /** What was left out, and what concerns no single job. */
  readonly problems: readonly Problem[];
}
