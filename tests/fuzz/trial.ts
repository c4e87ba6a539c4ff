import { build, solveJob } from '../../src/index.ts';
import { FONTS } from '../fonts/loaded.ts';

export interface Trial {
  readonly solved: boolean;
  readonly patterns: boolean;
  /** What should not be, in plain words. */
  readonly found: readonly string[];
}

/** One job through reading, solving and the strokes, and through its documents where that is wished. Never throws. */
export async function trial(job: string, documents: boolean): Promise<Trial> {
  const found: string[] = [];
  try {
    const solved = solveJob(job, { fonts: FONTS, file: 'job.yaml' });
    if (solved.ok) {
      if (!finite(solved.value.report)) found.push('a number that is none');
      const made = documents ? await build(job, { file: 'job.yaml' }) : undefined;
      return { solved: true, patterns: made?.ok === true, found };
    }
    const bare = solved.problems.find((p) => p.severity === 'error' && (p.line === undefined || p.message === ''));
    if (bare !== undefined) found.push(`a problem without its place: ${bare.code}`);
    if (!solved.problems.some((p) => p.severity === 'error')) found.push('refused without an error');
    if (documents && (await build(job, { file: 'job.yaml' })).ok) found.push('output from wrong input');
  } catch (problem) {
    found.push(problem instanceof Error ? (problem.stack ?? problem.message) : String(problem));
  }
  return { solved: false, patterns: false, found };
}

function finite(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value);
  return typeof value !== 'object' || value === null || Object.values(value).every(finite);
}
