import { type Solved, solveLoading } from '../../outputs/solve-job.ts';
import { defined } from '../../problems/defined.ts';
import { fail, type Problem, type Result, succeed } from '../../problems/problem.ts';
import type { JobSource } from './answers.ts';

/** All jobs solved, or every problem of all of them. */
export async function solvedOf(jobs: readonly JobSource[]): Promise<Result<readonly Solved[]>> {
  const all: Solved[] = [];
  const problems: Problem[] = [];
  const warnings: Problem[] = [];
  for (const { text, file, shop } of jobs) {
    const one = await solveLoading(text, { file, ...defined({ shop }) });
    if (one.ok) {
      all.push(one.value);
      warnings.push(...one.warnings);
    } else problems.push(...one.problems);
  }
  return problems.length > 0 ? fail(problems) : succeed(all, warnings);
}
