import { type GrooveStroke, grooveStrokes } from '../bench/grooves.ts';
import type { Stroke } from '../bench/model.ts';
import type { Step } from '../bench/order.ts';
import { report as makeReport, type Report } from '../bench/report.ts';
import { strokes as makeStrokes } from '../bench/strokes.ts';
import { loadFonts } from '../fonts/load.ts';
import type { Fonts } from '../fonts/model.ts';
import type { Change } from '../job/change.ts';
import type { Job } from '../job/job.ts';
import { readJob } from '../job/read.ts';
import { NEEDS_FONTS } from '../mat/lettering.ts';
import type { Mat } from '../mat/model.ts';
import { solve } from '../mat/solve.ts';
import { defined } from '../problems/defined.ts';
import { fail, type Problem, type Result, succeed } from '../problems/problem.ts';
import type { Shop } from '../shop/shop.ts';

export interface Source {
  readonly text: string;
  /** As problems name it. */
  readonly file: string;
}

export interface SolveOptions {
  /** The job's file name, for titles and problems. */
  readonly file?: string;
  readonly shop?: Source;
  /** Tried instead of what the job says in its place. */
  readonly change?: Change;
  /** With outlines, for lettering; no other job needs any. */
  readonly fonts?: Fonts;
}

export interface Solved {
  readonly job: Job;
  readonly shop: Shop;
  /** The shop's file, where there is one. */
  readonly shopSource?: Source;
  readonly mat: Mat;
  readonly strokes: readonly Stroke[];
  /** What is done before each stroke, same order. */
  readonly steps: readonly Step[];
  /** Strokes of V-grooves, on the face, numbered by themselves. */
  readonly grooves: readonly GrooveStroke[];
  readonly report: Report;
  /** What was tried instead of what the job says, where something was. */
  readonly change?: Change;
  /** The same job, with something else tried; with fonts where it takes outlines that this one does not. */
  readonly again: (change: Change, fonts?: Fonts) => Result<Solved>;
  /** Adds file, line and column to problems that point into the job. */
  readonly locate: (problems: readonly Problem[]) => readonly Problem[];
  /** Where the job's text holds what a path speaks of. */
  readonly written: (path: Problem['path']) => Problem['path'];
}

/** A job that was read and its mat; how it is cut is not worked out yet. */
export type Sized = Pick<Solved, 'job' | 'shop' | 'mat' | 'locate' | 'written'>;

/** Reads and solves a job; nothing is written. All problems at once, each with its place. */
export function solveJob(jobText: string, options: SolveOptions = {}): Result<Solved> {
  const sized = sizeJob(jobText, options);
  return sized.ok ? workedOut(sized.value, sized.warnings, jobText, options) : sized;
}

/** The sizes alone, which is the lesser half of the work where there are many openings. */
export function sizeJob(jobText: string, options: SolveOptions = {}): Result<Sized> {
  const read = readJob({
    text: jobText,
    file: options.file ?? 'job.yaml',
    ...(options.shop === undefined ? {} : { shopText: options.shop.text, shopFile: options.shop.file }),
    ...defined({ change: options.change }),
  });
  if (!read.ok) return read;
  const { job, shop, locate, written } = read.value;
  const solved = solve(job, defined({ fonts: options.fonts }));
  if (!solved.ok) return fail(locate(solved.problems));
  return succeed({ job, shop, mat: solved.value, locate, written }, [...read.warnings, ...locate(solved.warnings)]);
}

/** The rest of a job that was sized with the same options. */
export function workedOut(
  sized: Sized,
  warnings: readonly Problem[],
  jobText: string,
  options: SolveOptions,
): Result<Solved> {
  const { job, mat, locate } = sized;
  const cut = makeStrokes(mat, job);
  const refused = cut.warnings.filter((problem) => problem.severity === 'error');
  if (refused.length > 0) return fail(locate(refused));
  const { strokes, steps } = cut;
  const grooves = grooveStrokes(mat, job);
  const report = makeReport(job, mat, strokes, grooves);
  const { change } = options;
  const again = (other: Change, fonts = options.fonts) =>
    solveJob(jobText, { ...options, change: other, ...defined({ fonts }) });
  const tried = defined({ change, shopSource: options.shop });
  return succeed({ ...sized, strokes, steps, grooves, report, ...tried, again }, [
    ...warnings,
    ...locate(cut.warnings),
  ]);
}

/** As `solveJob`; the outlines of letters are loaded where the job turns out to have lettering. */
export async function solveLoading(jobText: string, options: SolveOptions = {}): Promise<Result<Solved>> {
  return lettered((fonts) => solveJob(jobText, fonts === undefined ? options : { ...options, fonts }));
}

/** Solves; once more with the outlines of letters where they turn out to be needed. */
export async function lettered(solve: (fonts?: Fonts) => Result<Solved>): Promise<Result<Solved>> {
  const solved = solve();
  if (solved.ok || !solved.problems.some(({ code }) => code === NEEDS_FONTS)) return solved;
  return solve(await loadFonts([], { outlines: true }));
}
