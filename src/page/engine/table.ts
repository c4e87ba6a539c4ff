import { jobsFromTable } from '../../day/table/jobs-from-table.ts';
import { dataOf } from '../../read/edit/find-node.ts';
import type { Asks, TableRow, Told } from './answers.ts';

/** What a job's text calls its piece. */
function titleOf(text: string): string | undefined {
  const { title } = dataOf(text) as { readonly title?: unknown };
  return title === undefined ? undefined : String(title);
}

/** A job of each row; rows that are wrong are told with their place and left out. */
export async function table({ table: rows, template }: Asks['table']['request']): Promise<Told<readonly TableRow[]>> {
  const read = jobsFromTable(rows, template);
  if (!read.ok) return { ok: false, problems: read.problems };
  const { jobs, problems } = read.value;
  const value = jobs.map(({ name, text }) => ({ file: `${name}.yaml`, title: titleOf(text) ?? name, text }));
  return { ok: true, value, problems: [...read.warnings, ...problems] };
}
