import { basename, dirname, extname, join, resolve } from 'node:path';
import { defaultFolder } from '../input.ts';
import { UsageError } from '../usage.ts';
import type { DayJob } from './day-job.ts';

/** Names that no file may have on some systems, whatever its ending. */
const RESERVED = /^(?:con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(?:\.|$)/iu;
/** Signs that some disks or shells take for something else, and those that are not seen. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what it looks for.
const UNSAFE = /[<>:"/\\|?*\u0000-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069]+/gu;
/** Files of the day that lie beside the folders. */
const OF_THE_DAY = /^(?:manifest\.json|index(?:-\d+)?\.html|(?:patterns|tickets|labels|stock)(?:-\d+)*\.pdf)$/iu;
/** With the names of files in it a path stays below what any system takes. */
const LONGEST = 80;

/** A name that is one on every disk: composed, without signs that mean something, and not one of the reserved. */
export function safeName(name: string): string {
  const plain = name.normalize('NFC').replace(UNSAFE, '-').trim();
  const short = [...plain]
    .slice(0, LONGEST)
    .join('')
    .replace(/[. ]+$/u, '');
  // What begins with a point is hidden.
  const open = short.replace(/^[.\s]+/u, '');
  if (open === '') return 'job';
  return RESERVED.test(open) || OF_THE_DAY.test(open) ? `job-${open}` : open;
}

/** Names that some disks cannot tell from one another. */
const key = (name: string): string => name.normalize('NFC').toLowerCase();

/**
 * A folder for each job: by the name of its file, where several have one by that of the folder that they lie in too
 * (`heron/job.yaml`, `terns/job.yaml`), then by the ending. No two are alike on any disk.
 */
export function foldersOf(jobs: readonly Pick<DayJob, 'file'>[], out: string | undefined): readonly string[] {
  if (out === undefined)
    return apart(
      jobs,
      jobs.map(({ file }) => defaultFolder(file)),
    );
  const ways = [stem, withFolder, withEnding].map((way) => jobs.map(({ file }) => safeName(way(file))));
  const counts = ways.map((names) => counted(names.map(key)));
  const names = jobs.map((_, i) => {
    const way = counts.findIndex((count, w) => count.get(key(ways[w]![i]!)) === 1);
    return ways[way === -1 ? ways.length - 1 : way]![i]!;
  });
  return apart(
    jobs,
    names.map((name) => join(out, name)),
  );
}

const stem = (file: string): string => basename(file, extname(file));
const withFolder = (file: string): string => `${basename(dirname(resolve(file)))}-${stem(file)}`;
const withEnding = (file: string): string => `${withFolder(file)}-${extname(file).slice(1)}`;

function counted(names: readonly string[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  return counts;
}

function apart(jobs: readonly Pick<DayJob, 'file'>[], folders: readonly string[]): readonly string[] {
  const counts = counted(folders.map((folder) => key(resolve(folder))));
  const twice = jobs.filter((_, i) => counts.get(key(resolve(folders[i]!)))! > 1).map(({ file }) => file);
  if (twice.length === 0) return folders;
  throw new UsageError(`${twice.join(' and ')} would share a folder; rename one, or make them by themselves`);
}
