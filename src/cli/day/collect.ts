import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { defined } from '../../problems/defined.ts';
import { UsageError } from '../usage.ts';
import type { DayJob, Origin } from './day-job.ts';
import { asPeopleCount } from './find.ts';
import { foundIn } from './made.ts';
import { readDay } from './read.ts';

export interface Collected {
  readonly jobs: readonly DayJob[];
  readonly folders: readonly string[];
}

/** The jobs whose folders lie in one, read again where their manifests say that they are. In the order of the folders' names, as people count. */
export async function collected(out: string, shop: string | undefined): Promise<Collected> {
  const jobs: DayJob[] = [];
  const folders: string[] = [];
  for (const name of foldersIn(out)) {
    const folder = join(out, name);
    const origin = originIn(folder);
    if (origin === undefined) continue;
    const { number } = origin;
    const asked =
      'job' in origin
        ? { jobs: [join(folder, origin.job)] }
        : { jobs: [], table: join(folder, origin.table), template: join(folder, origin.template), row: origin.row };
    const read = await readDay({ ...asked, ...defined({ shop, number }) });
    jobs.push(...read.jobs);
    folders.push(...read.jobs.map(() => folder));
  }
  if (jobs.length > 0) return { jobs, folders };
  throw new UsageError(`${out}: no folder in it says which job it is of; make the jobs of --list first`);
}

function foldersIn(out: string): readonly string[] {
  try {
    const entries = readdirSync(out, { withFileTypes: true });
    return entries
      .filter((each) => each.isDirectory())
      .map(({ name }) => name)
      .sort(asPeopleCount);
  } catch {
    throw new UsageError(`${out}: there is no such folder to collect from`);
  }
}

function originIn(folder: string): Origin | undefined {
  const source = foundIn(folder)?.manifest.source;
  if (typeof source !== 'object' || source === null) return undefined;
  const { job, table, template, row, number } = source as Partial<Record<string, unknown>>;
  const counted = typeof number === 'string' ? { number } : {};
  if (typeof job === 'string') return { job, ...counted };
  if (typeof table !== 'string' || typeof template !== 'string' || typeof row !== 'number') return undefined;
  return { table, template, row, ...counted };
}
