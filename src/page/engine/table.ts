import { atCells } from '../../day/table/at-cells.ts';
import { jobsFromTable } from '../../day/table/jobs-from-table.ts';
import { solveLoading } from '../../outputs/solve-job.ts';
import { defined } from '../../problems/defined.ts';
import type { Problem } from '../../problems/problem.ts';
import { dataOf } from '../../read/edit/find-node.ts';
import type { Asks, TableRow, Told } from './answers.ts';

/** What a job's text calls its piece. */
function titleOf(text: string): string | undefined {
  const { title } = dataOf(text) as { readonly title?: unknown };
  return title === undefined ? undefined : String(title);
}

/** A job of each row, or what is wrong with any of them, told of its row: a table that was put right makes no piece twice. */
export async function table(request: Asks['table']['request']): Promise<Told<readonly TableRow[]>> {
  const read = jobsFromTable(request.table, request.template);
  if (!read.ok) return { ok: false, problems: read.problems };
  const { jobs } = read.value;
  const problems: Problem[] = [...read.value.problems];
  for (const job of jobs) {
    const file = `${job.name}.yaml`;
    const solved = await solveLoading(job.text, { file, ...defined({ shop: request.shop }) });
    if (!solved.ok) problems.push(...atCells(job, solved.problems, file));
  }
  if (problems.some(({ severity }) => severity === 'error')) return { ok: false, problems };
  const value = jobs.map(({ name, text }) => ({ file: `${name}.yaml`, title: titleOf(text) ?? name, text }));
  return { ok: true, value, problems: [...read.warnings, ...problems] };
}
