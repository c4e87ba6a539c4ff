import { join } from 'node:path';
import type { OutputFile } from '../../outputs/write.ts';
import type { Piece } from '../files/plan.ts';
import { type Recovered, recover } from '../files/recover.ts';
import { pieceOf, type TextChange } from '../files/text-change.ts';
import { known, rememberFound } from '../files/this-run.ts';
import { writeSet } from '../files/write-set.ts';
import { remark } from '../say.ts';

export interface OutputFolder {
  readonly folder: string;
  readonly files: readonly OutputFile[];
}

/** As `writeFolders`, into one folder. */
export const writeAll = (folder: string, files: readonly OutputFile[], change?: TextChange): Promise<void> =>
  writeFolders([{ folder, files }], change);

/**
 * Writes all files of all folders or none, and with them, or not at all, the change of a text. Earlier outputs of the same names are
 * replaced; nothing else in the folders is touched. What was read for this run is never written over.
 */
export const writeFolders = (folders: readonly OutputFolder[], change?: TextChange): Promise<void> =>
  write([
    ...folders.flatMap(({ folder, files }) => files.map(({ name, bytes }) => ({ file: join(folder, name), bytes }))),
    ...(change === undefined ? [] : [pieceOf(change)]),
  ]);

export async function write(pieces: readonly Piece[]): Promise<void> {
  tell(await writeSet(pieces, known()));
}

function tell(found: readonly Recovered[]): void {
  rememberFound(found);
  for (const { words } of found) remark(words);
}

/** What a stopped run has left in a folder is put in order before anybody believes it. */
export async function putInOrder(folder: string): Promise<void> {
  try {
    tell(await recover(folder));
  } catch (problem) {
    // Whoever only reads may go on: files that people write in are whole at any time.
    remark(problem instanceof Error ? problem.message : String(problem));
  }
}
