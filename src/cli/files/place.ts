import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { DISK, type Disk } from './disk.ts';
import { type HiddenName, parseHidden } from './names.ts';
import { alive, OWN, type ProcessId } from './process.ts';

/** What writing needs of the world: the disk, who writes, who else still runs, and time. */
export interface Place {
  readonly disk: Disk;
  readonly own: ProcessId;
  readonly alive: (id: ProcessId, ageMs: number) => boolean;
  readonly now: () => number;
  readonly wait: (ms: number) => Promise<unknown>;
}

export const HERE: Place = { disk: DISK, own: OWN, alive, now: Date.now, wait: pause };

/** A hidden file in a folder. */
export interface Trace extends HiddenName {
  readonly name: string;
}

/** What other runs than this have in a folder: those that still run, and those that were stopped. */
export function tracesIn(folder: string, place: Place): { readonly running: Trace[]; readonly stopped: Trace[] } {
  const running: Trace[] = [];
  const stopped: Trace[] = [];
  for (const name of place.disk.list(folder)) {
    const parsed = parseHidden(name);
    if (parsed === undefined) continue;
    const found = place.disk.find(join(folder, name));
    if (found === undefined) continue;
    const lives = place.alive(parsed.id, place.now() - found.changedMs);
    (lives ? running : stopped).push({ name, ...parsed });
  }
  return { running, stopped };
}
