import { join } from 'node:path';
import { DISK } from '../../../src/cli/files/disk.ts';
import { Inputs } from '../../../src/cli/files/inputs.ts';
import type { Piece } from '../../../src/cli/files/plan.ts';
import { recover } from '../../../src/cli/files/recover.ts';
import type { Known } from '../../../src/cli/files/this-run.ts';
import { writeSet } from '../../../src/cli/files/write-set.ts';
import { faulty, placeOf } from './faulty.ts';
import { type Contents, inFolder } from './shelf.ts';

export const KNOWN: Known = { inputs: new Inputs(), doubtful: [] };

/** Runs once without a fault, to know how many steps there are. */
export const stepsOf = (given: Contents, set: (top: string) => readonly Piece[]): Promise<number> =>
  inFolder(given, async (top) => {
    const { disk, steps } = faulty(() => undefined);
    await writeSet(set(top), KNOWN, placeOf(1, disk));
    return steps();
  });

/** Whoever comes next: puts both folders in order, as reading the shop's file and writing the plan do. */
export async function next(top: string, pid: number, disk = DISK): Promise<readonly string[]> {
  const place = placeOf(pid, disk, pid - 1);
  const found = [...(await recover(join(top, 'shop'), place)), ...(await recover(join(top, 'out'), place))];
  return found.map(({ words }) => words);
}
