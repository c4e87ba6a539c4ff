import { remark, warn } from '../say.ts';
import { today } from '../today.ts';
import { keptAbove, listIn, markIn, nameIn } from './day-file.ts';
import type { JobState } from './state.ts';

/** Notes jobs that were made now in the list of the day, where one is kept beside them or above. A row of a table has no file to be named by. */
export async function noteMade(states: readonly JobState[]): Promise<void> {
  const byFolder = new Map<string, string[]>();
  for (const { job, now } of states) {
    const folder = job.row === undefined ? keptAbove(job.file) : undefined;
    if (folder !== undefined) byFolder.set(folder, [...(byFolder.get(folder) ?? []), ...(now ? [job.file] : [])]);
  }
  for (const [folder, files] of byFolder) {
    const { list } = await listIn(folder);
    const names = files.map((file) => nameIn(folder, file)).filter((name) => list.get(name)?.made === undefined);
    try {
      if (names.length > 0) warn(await markIn(folder, names, 'made', today()));
    } catch (problem) {
      // All is made; only the note is missing.
      remark(problem instanceof Error ? problem.message : String(problem));
    }
  }
}
