import { readdirSync, rmdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import { DISK } from '../files/disk.ts';
import { isAsMade, madeIn } from '../files/made.ts';
import { note } from '../say.ts';
import { foundIn } from './made.ts';

/** What everything of a job may be called, whichever state of the job it was made of. */
export const OF_A_JOB = [
  '^pattern-(?:\\d+|face)(?:-[\\w-]+)?\\.(?:pdf|svg|png)$',
  '^(?:proof|ticket|intake|placement|blanks|labels)(?:-[\\w-]+)?\\.(?:pdf|svg|png)$',
  '^face\\.svg$',
  '^cut-[\\w.-]+-\\d+(?:-bed)?\\.(?:svg|dxf|plt)$',
];
/** And what is for all jobs of a day together. */
export const OF_A_DAY = ['^(?:patterns|tickets|labels|stock)(?:-\\d+)*\\.pdf$', '^index-\\d+\\.html$'];

/** Folders that an earlier run has made, of jobs that are none of this day's. */
export function foldersLeft(out: string, folders: readonly string[]): readonly string[] {
  const now = new Set(folders.map((folder) => basename(folder).toLowerCase()));
  return readdirSync(out, { withFileTypes: true })
    .filter((each) => each.isDirectory() && !now.has(each.name.toLowerCase()))
    .map(({ name }) => join(out, name))
    .filter((folder) => 'source' in (foundIn(folder)?.manifest ?? {}))
    .sort();
}

/** Says which they are, and takes away what is as it was made in them where that was wished; a folder that is empty then goes too. */
export function tellFolders(folders: readonly string[], prune: boolean, quiet: boolean): void {
  for (const folder of folders) {
    if (!quiet) note(`${folder} is of a job that was not asked for now${prune ? ' and was taken away' : ''}`);
    if (!prune) continue;
    const made = [...madeIn(folder)].filter(([, { by }]) => by === 'make');
    const ours = made.filter(([name, file]) => isAsMade(folder, name, file)).map(([name]) => name);
    // The list goes with the last that it lists.
    const last = ours.length === made.length ? DISK.list(folder).filter((name) => name === '.matwright.json') : [];
    for (const name of [...ours, ...last]) DISK.remove(join(folder, name));
    try {
      rmdirSync(folder);
    } catch {
      // Something of somebody else lies in it.
    }
  }
}
