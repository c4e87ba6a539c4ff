import { join } from 'node:path';
import type { Disk } from './disk.ts';
import { hashOf, type Journal, oldOf, partOf, type Step } from './journal.ts';
import { hiddenName, parseHidden } from './names.ts';

/** Have all steps been taken? Then nothing is to be taken back. */
export function allTaken({ run, steps }: Journal, disk: Disk): boolean {
  return steps.every((step, index) => disk.find(partOf(run, step, index)) === undefined);
}

/**
 * Puts back every old file that was replaced, and takes away every new one that replaced nothing, the last first. What somebody
 * else has put in the place of a new file since stays. May be stopped at any point and done again; it counts as done
 * once no journal is left.
 */
export function takeBack(journal: Journal, disk: Disk): void {
  const { run, home, steps } = journal;
  const [told, undo] = [join(home, hiddenName(run, 'journal')), join(home, hiddenName(run, 'undo'))];
  // From here on it is not asked any more whether all steps were taken.
  if (disk.find(undo) === undefined) disk.rename(told, undo);
  for (const [index, step] of [...steps.entries()].reverse()) {
    const target = join(step.folder, step.name);
    if (!step.replaces) {
      if (isOurs(target, step, disk)) disk.remove(target);
      continue;
    }
    const old = oldOf(run, step, index);
    const replaced = disk.find(partOf(run, step, index)) === undefined && disk.find(old) !== undefined;
    if (replaced && (disk.find(target) === undefined || isOurs(target, step, disk))) disk.rename(old, target);
  }
}

function isOurs(target: string, { hash }: Step, disk: Disk): boolean {
  return disk.find(target)?.kind === 'plain' && hashOf(disk.read(target)) === hash;
}

/** Takes away what a run has in its folders. The journal goes first: what it does not stand for is of no use any more. */
export function cleanUp(run: string, folders: readonly string[], disk: Disk): void {
  const names = folders.flatMap((folder) =>
    disk.list(folder).flatMap((name) => {
      const parsed = parseHidden(name);
      return parsed?.run === run ? [{ path: join(folder, name), first: /^(?:journal|undo)$/u.test(parsed.kind) }] : [];
    }),
  );
  for (const { path, first } of names) if (first) disk.remove(path);
  for (const { path, first } of names) if (!first) disk.remove(path);
}
