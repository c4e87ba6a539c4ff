import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { OutputFile } from '../../outputs/write.ts';
import { DISK } from '../files/disk.ts';
import { isAsMade, type Made, madeIn, madeWith, type Print, printOf } from '../files/made.ts';
import type { TextChange } from '../files/text-change.ts';
import { note } from '../say.ts';
import { putInOrder, writeFolders } from './output.ts';

/** Files that belong together, and where they go. */
export interface Outputs {
  readonly folder: string;
  readonly files: readonly OutputFile[];
  /** Patterns of the names that they may have, also in another state of the job. */
  readonly families: readonly string[];
  /** Of the same, and written before in this run. */
  readonly written?: readonly Print[];
}

/** A file of these names that was not made now. */
export interface Left {
  readonly folder: string;
  readonly name: string;
  /** `made`: as an earlier run wrote it. `changed`: it wrote it, and somebody has changed it since. `unknown`: nothing says who made it. */
  readonly was: 'made' | 'changed' | 'unknown';
  /** Taken away, as was wished. */
  readonly gone: boolean;
}

/**
 * Writes the files of all folders or none, and notes in each folder what was made. Gives what is left there of earlier
 * runs; where that is wished, what is ours and as we wrote it is taken away.
 */
export async function writeOutputs(
  by: string,
  all: readonly Outputs[],
  prune: boolean,
  change?: TextChange,
): Promise<readonly Left[]> {
  const before: Made[] = [];
  for (const { folder } of all) {
    // What a stopped run has left there may still be taken back.
    if (DISK.find(folder)?.kind === 'folder') await putInOrder(folder);
    before.push(madeIn(folder));
  }
  const folders = all.map(({ folder, files, written = [] }, i) => ({
    folder,
    files: [...files, madeWith(folder, before[i]!, by, [...written, ...files.map(printOf)])],
  }));
  await writeFolders(folders, change);
  return all.flatMap(({ folder, files, families, written = [] }, i) =>
    leftIn(folder, [...written, ...files], families, before[i]!, by, prune),
  );
}

/** What is left beside files that lie there as they should and were not written again. */
export const leftBeside = (
  by: string,
  folder: string,
  names: readonly string[],
  families: readonly string[],
  prune: boolean,
): readonly Left[] =>
  leftIn(
    folder,
    names.map((name) => ({ name })),
    families,
    madeIn(folder),
    by,
    prune,
  );

function leftIn(
  folder: string,
  files: readonly Pick<OutputFile, 'name'>[],
  families: readonly string[],
  made: Made,
  by: string,
  prune: boolean,
): readonly Left[] {
  const now = new Set(files.map(({ name }) => name));
  const patterns = families.map((family) => new RegExp(family, 'u'));
  const isOurs = (name: string): boolean => by === 'make' && made.get(name)?.by === by;
  const names = readdirSync(folder).filter(
    (name) => !now.has(name) && (isOurs(name) || patterns.some((each) => each.test(name))),
  );
  return names.sort().map((name) => {
    const known = made.get(name);
    const was = known === undefined ? 'unknown' : isAsMade(folder, name, known) ? 'made' : 'changed';
    const gone = prune && was === 'made';
    if (gone) DISK.remove(join(folder, name));
    return { folder, name, was, gone };
  });
}

/** Of one folder, for `--json`; nothing where nothing is left. */
export const leftJson = (left: readonly Left[]) =>
  left.length === 0 ? {} : { earlier: left.map(({ name, was, gone }) => ({ name, was, gone })) };

/** Says what is left of earlier runs. */
export function tellLeft(all: readonly Left[]): void {
  const several = new Set(all.map(({ folder }) => folder)).size > 1;
  const shown = ({ folder, name }: Left): string => (several ? join(folder, name) : name);
  for (const left of all) note(`${shown(left)} ${left.gone ? GONE : WORDS[left.was]}`);
  const ours = all.filter((each) => each.was === 'made' && !each.gone).map(shown);
  if (ours.length > 0) note(`--prune takes away what is as it was made: ${ours.join(', ')}`);
}

const GONE = 'was from an earlier run and was taken away';
const WORDS: Readonly<Record<Left['was'], string>> = {
  made: 'is from an earlier run and does not belong to what was made now',
  changed: 'is from an earlier run, was changed since, and does not belong to what was made now: see to it yourself',
  unknown: 'does not belong to what was made now, and nothing says who made it: see to it yourself',
};
