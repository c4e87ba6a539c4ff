import type { Problem } from '../../problems/problem.ts';
import { atRow } from './cells.ts';
import type { TableJob } from './jobs-from-table.ts';

const startsWith = (path: Problem['path'], start: Problem['path']): boolean =>
  start.length <= path.length && start.every((step, i) => step === path[i]);

/**
 * Problems of a job as problems of the table: the row, and the column whose place they speak of, or lies in it. `own` is the
 * name that the job was solved by; what stands in another file, such as the shop's, stays there. A key that nothing has is
 * the heading's, and is to be told once for all rows.
 */
export function atCells(
  { row, columns, file }: TableJob,
  problems: readonly Problem[],
  own: string,
): readonly Problem[] {
  return problems.map((problem) => {
    if (problem.file !== undefined && problem.file !== own) return problem;
    const { line: _line, column: _column, ...rest } = problem;
    const found = columns
      .filter(({ path }) => startsWith(problem.path, path) || startsWith(path, problem.path))
      .sort((a, b) => Math.abs(a.path.length - problem.path.length) - Math.abs(b.path.length - problem.path.length))[0];
    if (found === undefined || problem.path.length === 0) return atRow(rest, file, row);
    const heading = problem.code === 'key-unknown' && startsWith(found.path, problem.path);
    return { ...atRow(rest, file, heading ? 1 : row), column: found.at + 1 };
  });
}
