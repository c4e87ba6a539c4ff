import { join, relative } from 'node:path';
import { defined } from '../../problems/defined.ts';
import { UsageError } from '../usage.ts';
import { foldersOf, type Journal, journalText, oldOf, partOf } from './journal.ts';
import { locked } from './lock.ts';
import { hiddenName, newRun } from './names.ts';
import { HERE, type Place, tracesIn } from './place.ts';
import { makeFolders, type Piece, type Planned, plan, refuseChanged } from './plan.ts';
import { type Recovered, recover } from './recover.ts';
import { cleanUp, takeBack } from './take-back.ts';
import type { Known } from './this-run.ts';
import { because, NOTHING, reason } from './why.ts';

/**
 * Writes all pieces or none. Each goes whole to a hidden file beside its name; when all are on the disk they are renamed,
 * with a journal where they are several. Where a step fails all are taken back at once; where the run is stopped, the
 * next one that comes there does it. Gives what was found of such runs.
 */
export async function writeSet(
  pieces: readonly Piece[],
  known: Known,
  place: Place = HERE,
): Promise<readonly Recovered[]> {
  const run = newRun(place.own);
  const made: string[] = [];
  const recovered: Recovered[] = [];
  let folders: readonly string[] = [];
  let [done, stuck] = [false, false];
  try {
    makeFolders(pieces, made, place);
    const planned = plan(pieces, known, place);
    folders = [...new Set(planned.map(({ folder }) => folder))].sort();
    writeParts(run, planned, place);
    while (!done) {
      for (const folder of folders) recovered.push(...(await recover(folder, place)));
      refuseDoubtful(planned, [...known.doubtful, ...recovered.flatMap(({ kept }) => kept)]);
      done = await locked(folders, run, place, () => {
        // A run may have been stopped since.
        if (folders.some((folder) => tracesIn(folder, place).stopped.length > 0)) return false;
        commit(run, planned, place);
        return true;
      });
    }
    return recovered;
  } catch (problem) {
    stuck = problem instanceof Stuck;
    throw because(`nothing can be written into ${folders.join(', ')}`, problem);
  } finally {
    if (!stuck) attempt(() => cleanUp(run, folders, place.disk));
    if (!done) for (const folder of made.reverse()) attempt(() => place.disk.removeFolder(folder));
  }
}

/** Neither done nor taken back: the journal has to stay. */
class Stuck extends Error {}

/** What fails here is left to the next run. */
function attempt(work: () => void): void {
  try {
    work();
  } catch {}
}

/** Who comes after a run that was stopped when it had just changed a file may be about to do the same again. */
function refuseDoubtful(planned: readonly Planned[], doubtful: readonly string[]): void {
  const again = planned.find(({ folder, name, kept }) => kept && doubtful.includes(join(folder, name)));
  if (again === undefined) return;
  throw new UsageError(
    `${again.piece.file} had been changed already by a run that was stopped before it could say so; look at it, and run the command again if there is still something to do; ${NOTHING}`,
  );
}

function writeParts(run: string, planned: readonly Planned[], { disk }: Place): void {
  const sync = planned.some(({ kept }) => kept);
  for (const [index, step] of planned.entries()) {
    const { bytes, file } = step.piece;
    try {
      disk.create(partOf(run, step, index), bytes, {
        sync,
        ...defined({ like: step.before }),
      });
    } catch (problem) {
      throw because(`${file} cannot be written`, problem);
    }
  }
}

/** Gives all parts their names; nobody else writes there meanwhile. */
function commit(run: string, planned: readonly Planned[], place: Place): void {
  const { disk } = place;
  const steps = planned.map((step) => ({ ...step, replaces: disk.find(join(step.folder, step.name)) !== undefined }));
  const last = steps.at(-1);
  if (last === undefined) return;
  const journal: Journal = { run, home: last.folder, steps };
  const folders = foldersOf(journal);
  const certain = steps.some(({ kept }) => kept);
  const several = steps.length > 1;
  for (const step of steps) refuseChanged(step.piece, join(step.folder, step.name), place);
  if (several) announce(journal, place);
  if (several && certain) for (const folder of folders) disk.settle(folder);
  for (const [index, step] of steps.entries()) {
    try {
      // Once more, since the disk may have taken its time.
      if (several) refuseChanged(step.piece, join(step.folder, step.name), place);
      take(run, step, index, place);
    } catch (problem) {
      const words = `${step.piece.file} cannot be written`;
      if (several) undo(journal, words, problem, place);
      throw because(words, problem);
    }
  }
  // All is done: from here on nothing may make it look otherwise.
  if (certain) for (const folder of folders) attempt(() => disk.settle(folder));
  if (several) attempt(() => disk.remove(join(journal.home, hiddenName(run, 'journal'))));
}

/** Second names for all that is to be replaced, then the journal, which appears whole. */
function announce(journal: Journal, { disk }: Place): void {
  const { run, home, steps } = journal;
  try {
    for (const [index, step] of steps.entries())
      if (step.replaces) disk.link(join(step.folder, step.name), oldOf(run, step, index));
    for (const folder of foldersOf(journal))
      if (folder !== home)
        disk.create(join(folder, hiddenName(run, 'away')), bytesOf(relative(folder, home)), { sync: true });
    const whole = join(home, hiddenName(run, 'part', steps.length));
    disk.create(whole, bytesOf(journalText(journal)), { sync: steps.some(({ kept }) => kept) });
    disk.rename(whole, join(home, hiddenName(run, 'journal')));
  } catch (problem) {
    throw because(`${steps.map(({ name }) => name).join(', ')} cannot be written`, problem);
  }
}

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

/** One part gets its name. Where nothing may be replaced it gets it as a second one, which fails if it is taken. */
function take(run: string, { folder, name, piece }: Planned, index: number, { disk }: Place): void {
  const part = partOf(run, { folder }, index);
  const target = join(folder, name);
  if (piece.was === null) {
    disk.link(part, target);
    disk.remove(part);
  } else disk.rename(part, target);
}

function undo(journal: Journal, words: string, problem: unknown, { disk }: Place): void {
  try {
    takeBack(journal, disk);
  } catch (second) {
    throw new Stuck(
      `${words}: ${reason(problem)}; nor can what was written be taken back (${reason(second)}): the next run that writes there tries again`,
    );
  }
}
