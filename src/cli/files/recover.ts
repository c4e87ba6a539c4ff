import { join, relative, resolve } from 'node:path';
import { foldersOf, type Journal, parseJournal } from './journal.ts';
import { locked } from './lock.ts';
import { hiddenName, newRun } from './names.ts';
import { HERE, type Place, tracesIn } from './place.ts';
import { allTaken, cleanUp, takeBack } from './take-back.ts';
import { because } from './why.ts';

/** What was found of a run that had been stopped, and what became of it. */
export interface Recovered {
  readonly words: string;
  /** Files that people write in, which it had changed already and could not say so. */
  readonly kept: readonly string[];
}

/**
 * Puts in order what stopped runs have left in a folder: where one had taken all its steps only its traces go, where it
 * was in the middle everything is as it was before. Nothing is done where nothing was left.
 */
export async function recover(folder: string, place: Place = HERE): Promise<readonly Recovered[]> {
  const stopped = tracesIn(folder, place).stopped;
  const done: Recovered[] = [];
  for (const left of new Set(stopped.map((trace) => trace.run))) {
    const kinds = stopped.filter((trace) => trace.run === left).map(({ kind }) => kind);
    const home = kinds.includes('away') ? homeOf(folder, left, place) : folder;
    const found = home === undefined ? undefined : await settle(home, left, place);
    if (found !== undefined) done.push(found);
    else if (kinds.some((kind) => kind !== 'lock')) {
      done.push({ words: `what a stopped run had left in ${folder} was cleaned away`, kept: [] });
    }
    cleanUp(left, [folder], place.disk);
  }
  return done;
}

/** The folder that has the journal, as this one tells it. */
function homeOf(folder: string, left: string, { disk }: Place): string | undefined {
  try {
    const home = resolve(folder, textOf(join(folder, hiddenName(left, 'away')), disk));
    return disk.find(home)?.kind === 'folder' ? home : undefined;
  } catch {
    return undefined;
  }
}

/** By its journal, while nobody else does the same. Without one nothing had been renamed yet, or all was done. */
async function settle(home: string, left: string, place: Place): Promise<Recovered | undefined> {
  const known = read(home, left, place);
  if (known === undefined) return undefined;
  if (known === 'torn')
    return { words: `a run that was stopped left ${home} in the middle of its work; make its files again`, kept: [] };
  const folders = foldersOf(known.journal).filter((each) => place.disk.find(each)?.kind === 'folder');
  return locked(folders, newRun(place.own), place, () => {
    // Somebody else may have been faster.
    const now = read(home, left, place);
    if (now === undefined || now === 'torn') return undefined;
    const files = now.journal.steps.map((step) => join(step.folder, step.name));
    const names = files.map(shown).join(', ');
    try {
      const whole = !now.undoing && allTaken(now.journal, place.disk);
      if (!whole) takeBack(now.journal, place.disk);
      cleanUp(left, folders, place.disk);
      if (!whole) return { words: `a run was stopped while it wrote ${names}; all is as it was before it`, kept: [] };
      const kept = files.filter((_, index) => now.journal.steps[index]?.kept === true);
      return { words: `a run was stopped when it had just written ${names}; nothing of it is missing`, kept };
    } catch (problem) {
      throw because(
        `a run was stopped while it wrote ${names}, and that cannot be taken back`,
        problem,
        'see to that first',
      );
    }
  });
}

interface Left {
  readonly journal: Journal;
  /** Had it been in the middle of taking its steps back? */
  readonly undoing: boolean;
}

function read(home: string, left: string, { disk }: Place): Left | 'torn' | undefined {
  for (const kind of ['undo', 'journal'] as const) {
    const file = join(home, hiddenName(left, kind));
    if (disk.find(file) === undefined) continue;
    const journal = parseJournal(left, home, textOf(file, disk));
    return journal === undefined ? 'torn' : { journal, undoing: kind === 'undo' };
  }
  return undefined;
}

function textOf(file: string, disk: Place['disk']): string {
  return new TextDecoder().decode(disk.read(file));
}

/** As short as it can be told from here. */
function shown(file: string): string {
  const way = relative('.', file);
  return way.startsWith('..') ? file : way;
}
