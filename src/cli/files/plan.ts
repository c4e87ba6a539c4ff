import { basename, dirname, join, resolve } from 'node:path';
import { UsageError } from '../usage.ts';
import type { Found } from './disk.ts';
import { hashOf, type Step } from './journal.ts';
import type { Place } from './place.ts';
import { type Known, refuseInputs } from './this-run.ts';
import { because, NOTHING } from './why.ts';

/** A file as it is to be. */
export interface Piece {
  /** As the user knows it. */
  readonly file: string;
  readonly bytes: Uint8Array;
  /**
   * What must be there until then: these bytes, or nothing (`null`). Given for files that people write in; where it is
   * left out whatever is there is replaced, and the folder is made.
   */
  readonly was?: Uint8Array | null;
}

export interface Planned extends Step {
  readonly piece: Piece;
  readonly before: Found | undefined;
}

/** Somebody else has written a file since it was read. */
export class ChangedMeanwhile extends UsageError {}

/** Where each piece goes, those that people write in last; refuses what cannot be before anything is written. */
export function plan(pieces: readonly Piece[], known: Known, place: Place): readonly Planned[] {
  const several = pieces.length > 1;
  const ordered = [...pieces.filter(({ was }) => was === undefined), ...pieces.filter(({ was }) => was !== undefined)];
  const targets = new Map<string, string>();
  return ordered.map((piece) => {
    const { file, bytes, was } = piece;
    const { target, before } = lookFor(piece, place);
    const kept = was !== undefined;
    if (before !== undefined && (before.mode & 0o222) === 0)
      throw new UsageError(`${file} is read-only; make it writable and try again, ${NOTHING}`);
    refuseInputs(target, file, kept, known, place.disk);
    refuseChanged(piece, target, place);
    const twin = targets.get(target);
    if (twin !== undefined) throw new UsageError(`${twin} and ${file} are one file; ${NOTHING}`);
    targets.set(target, file);
    const hash = several ? hashOf(bytes) : '';
    return {
      folder: dirname(target),
      name: basename(target),
      hash,
      replaces: before !== undefined,
      kept,
      piece,
      before,
    };
  });
}

/** The file that a name leads to, links followed, and what is there. */
function lookFor({ file }: Piece, { disk }: Place): { readonly target: string; readonly before: Found | undefined } {
  let before: Found | undefined;
  try {
    before = disk.find(file);
    if (before === undefined) return { target: join(disk.real(dirname(resolve(file))), basename(file)), before };
    if (before.kind === 'plain') return { target: disk.real(file), before };
  } catch (problem) {
    throw because(`${file} cannot be written`, problem);
  }
  switch (before.kind) {
    case 'folder':
      throw new UsageError(`${file} is a folder, where a file of that name is to be written; ${NOTHING}`);
    case 'link':
      throw new UsageError(
        `${file} is a link that leads nowhere; take it away, or put right where it leads; ${NOTHING}`,
      );
    case 'other':
      throw new UsageError(`${file} is a device, pipe or socket; only plain files are replaced; ${NOTHING}`);
    default:
      return before.kind satisfies never;
  }
}

/** Is a file that people write in still as it was read? */
export function refuseChanged({ file, was }: Piece, target: string, { disk }: Place): void {
  if (was === undefined) return;
  const there = disk.find(target);
  if (was === null) {
    if (there !== undefined) throw new ChangedMeanwhile(`${file} is there already; ${NOTHING}`);
    return;
  }
  if (there === undefined) throw new ChangedMeanwhile(`${file} is not there any more; ${NOTHING}`);
  let same = false;
  try {
    same = there.size === was.length && Buffer.compare(disk.read(target), was) === 0;
  } catch (problem) {
    throw because(`${file} cannot be read again`, problem);
  }
  if (!same) {
    throw new ChangedMeanwhile(`${file} was changed by something else meanwhile; ${NOTHING}, run the command again`);
  }
}

/** Makes the folders of pieces that bring theirs along; gives all that were not there, from the top. */
export function makeFolders(pieces: readonly Piece[], made: string[], { disk }: Place): void {
  const folders = new Set(pieces.filter(({ was }) => was === undefined).map(({ file }) => dirname(file)));
  for (const folder of folders) {
    const there = disk.find(folder);
    if (there?.kind === 'folder') continue;
    if (there?.kind === 'link')
      throw new UsageError(`${folder} is a link that leads nowhere, not a folder to write into`);
    if (there !== undefined) throw new UsageError(`${folder} is a file, not a folder to write into`);
    try {
      const first = disk.makeFolder(folder);
      if (first !== undefined) made.push(...between(resolve(first), resolve(folder)));
    } catch (problem) {
      throw because(`the folder ${folder} cannot be made`, problem);
    }
  }
}

/** Both and what lies between them. */
function between(upper: string, lower: string): readonly string[] {
  const steps: string[] = [];
  for (let at = lower; ; at = dirname(at)) {
    steps.unshift(at);
    if (at === upper || dirname(at) === at) return steps;
  }
}
