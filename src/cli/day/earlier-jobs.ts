import { readdirSync, rmdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import { MANIFEST } from '../../outputs/job-manifest.ts';
import { type Earlier, earlierIn, type Listed, listedIn } from '../earlier.ts';
import { DISK } from '../files/disk.ts';
import { note } from '../say.ts';
import { safeName } from './folders.ts';
import { foundIn } from './made.ts';

/** What everything of a job may be called, whichever state of the job it was made of. */
const OF_A_JOB = [
  '^pattern-(?:\\d+|face)(?:-[\\w-]+)?\\.(?:pdf|svg|png)$',
  '^(?:proof|ticket|intake|placement|blanks|labels)(?:-[\\w-]+)?\\.(?:pdf|svg|png)$',
  '^face\\.svg$',
  '^cut-[\\w.-]+-\\d+\\.(?:svg|dxf|plt)$',
];
const OF_A_DAY = ['^(?:patterns|tickets|labels|stock)(?:-\\d+)*\\.pdf$', '^index-\\d+\\.html$'];

/** One name, whatever signs are in it. */
const asFamily = (name: string): string => `^${name.replaceAll('.', '\\.')}$`;

const families = (listed: readonly Listed[], others: readonly string[]): readonly string[] => [
  ...listed.map(({ name }) => asFamily(name)),
  ...others,
];

export const earlierOfJob = (folder: string, listed: readonly Listed[], files: readonly string[]): Earlier =>
  earlierIn(
    folder,
    listed,
    families(listed, OF_A_JOB),
    [...files, MANIFEST].map((name) => ({ name })),
  );

export const earlierOfDay = (out: string, listed: readonly Listed[], files: readonly string[]): Earlier =>
  earlierIn(
    out,
    listed,
    families(listed, OF_A_DAY),
    [...files, MANIFEST].map((name) => ({ name })),
  );

/** Folders that an earlier run has made, of jobs that are none of this day's. */
export function foldersLeft(out: string, folders: readonly string[]): readonly string[] {
  const now = new Set(folders.map((folder) => basename(folder).toLowerCase()));
  return readdirSync(out, { withFileTypes: true })
    .filter((each) => each.isDirectory() && !now.has(each.name.toLowerCase()) && safeName(each.name) === each.name)
    .map(({ name }) => join(out, name))
    .filter((folder) => 'source' in (foundIn(folder)?.manifest ?? {}))
    .sort();
}

/** Says which they are, and takes away what is ours in them where that was wished; a folder that is empty then goes too. */
export function tellLeft(folders: readonly string[], prune: boolean, quiet: boolean): void {
  for (const folder of folders) {
    if (!quiet) note(`${folder} is of a job that was not asked for now${prune ? ' and was taken away' : ''}`);
    if (!prune) continue;
    for (const { name, ours } of listedIn(folder)) if (ours) DISK.remove(join(folder, name));
    DISK.remove(join(folder, MANIFEST));
    try {
      rmdirSync(folder);
    } catch {
      // Something of somebody else lies in it.
    }
  }
}
