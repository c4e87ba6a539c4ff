import { solveJob, type Work } from '../../src/index.ts';
import { fail, type Problem, type Result, succeed } from '../../src/problems/problem.ts';
import { FONTS } from '../fonts/loaded.ts';
import type { Case } from './case.ts';

export interface Solving {
  readonly work: Work;
  readonly warnings: readonly Problem[];
}

/** The jobs of a case, solved once for all that is made of them. */
export function solveWork({ job, file, more = {}, shop: text }: Case): Result<Solving> {
  const source = text === undefined ? {} : { shop: { text, file: 'shop.yaml' } };
  const jobs = Object.entries({ [file]: job, ...more });
  const solved = jobs.map(([name, own]) => solveJob(own, { fonts: FONTS, file: name, ...source }));
  const problems = solved.flatMap((each) => (each.ok ? [] : each.problems));
  if (problems.length > 0) return fail(problems);
  return succeed({
    work: { jobs: solved.flatMap((each) => (each.ok ? [each.value] : [])), ...source },
    warnings: solved.flatMap((each) => (each.ok ? each.warnings : [])),
  });
}
