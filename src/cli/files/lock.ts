import { join } from 'node:path';
import { UsageError } from '../usage.ts';
import { hiddenName } from './names.ts';
import { type Place, type Trace, tracesIn } from './place.ts';

const PAUSE_MS = 10;
const PATIENCE_MS = 10_000;

/**
 * Does something while no other run writes into any of these folders.
 *
 * Each run that wants to puts a file of its own name into all of them, and only then looks: if it sees no other of a
 * living process it may go on. Of two, the one that comes later sees the other, so never do both go on. Where some wait
 * for one, the first by name stays, and the others withdraw until it is gone, so that one always gets on. The file
 * of a process that has ended counts for nothing, and nobody has to take anything over.
 */
export async function locked<T>(folders: readonly string[], run: string, place: Place, work: () => T): Promise<T> {
  const mine = hiddenName(run, 'lock');
  const { disk } = place;
  let stands = false;
  const stand = (): void => {
    for (const folder of folders) disk.create(join(folder, mine), new Uint8Array(0));
    stands = true;
  };
  const withdraw = (): void => {
    for (const folder of folders) disk.remove(join(folder, mine));
    stands = false;
  };
  try {
    for (let waited = 0; ; waited += PAUSE_MS) {
      if (!stands && others(folders, run, place).length === 0) stand();
      const before = others(folders, run, place);
      if (stands && before.length === 0) return work();
      if (stands && before.some(({ name }) => name < mine)) withdraw();
      if (waited >= PATIENCE_MS) throw tooLong(folders, before);
      await place.wait(PAUSE_MS);
    }
  } finally {
    letGo(withdraw);
  }
}

const others = (folders: readonly string[], run: string, place: Place): readonly Trace[] =>
  folders.flatMap((folder) =>
    tracesIn(folder, place).running.filter((each) => each.kind === 'lock' && each.run !== run),
  );

/** A lock that stays counts for nothing once this process has ended, and nothing more can be done about it. */
function letGo(withdraw: () => void): void {
  try {
    withdraw();
  } catch {}
}

function tooLong(folders: readonly string[], before: readonly Trace[]): UsageError {
  const [first] = before;
  const who = first === undefined ? 'another run' : `process ${first.id.pid} on ${first.id.host}`;
  const file = first === undefined ? '' : `; if it runs no more, delete ${first.name} there`;
  return new UsageError(`${folders.join(', ')}: ${who} has been writing there for too long${file}`);
}
