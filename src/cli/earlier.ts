import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { OutputFile } from '../outputs/write.ts';
import { DISK } from './files/disk.ts';
import { readPlain } from './files/plain.ts';
import { note } from './say.ts';

const MANIFEST = 'manifest.json';
const MOST_BYTES = 16 * 1024 * 1024;

/** What lies in a folder from an earlier state of the job. */
export interface Earlier {
  readonly folder: string;
  /** Looks like an output of what was made now and is not among it. */
  readonly names: readonly string[];
  /** Those that a manifest says are ours: these alone may be taken away. */
  readonly ours: readonly string[];
}

/** Names that the manifest in a folder lists; none where there is none, or none of ours. Read it before it is replaced. */
export function listedIn(folder: string): readonly string[] {
  try {
    const manifest: unknown = JSON.parse(new TextDecoder().decode(readPlain(join(folder, MANIFEST), MOST_BYTES)));
    const files = typeof manifest === 'object' && manifest !== null && 'files' in manifest ? manifest.files : [];
    return Array.isArray(files) ? files.filter((name) => typeof name === 'string' && isPlainName(name)) : [];
  } catch {
    // Whatever else it may be, it says nothing of ours.
    return [];
  }
}

/** A name in the folder itself: a manifest from elsewhere leads nowhere. */
const isPlainName = (name: string): boolean => /^[\w-][\w.-]*$/u.test(name) && name !== MANIFEST;

export function earlierIn(
  folder: string,
  listed: readonly string[],
  families: readonly string[],
  made: readonly OutputFile[],
): Earlier {
  const now = new Set(made.map(({ name }) => name));
  const patterns = families.map((family) => new RegExp(family, 'u'));
  const names = readdirSync(folder)
    .filter((name) => !now.has(name) && patterns.some((each) => each.test(name)))
    .sort();
  return { folder, names, ours: names.filter((name) => listed.includes(name)) };
}

/** Says what is left of an earlier state, and takes away what is ours where that was wished. */
export function tellEarlier({ folder, names, ours }: Earlier, prune: boolean, quiet: boolean): void {
  for (const name of names) {
    const gone = prune && ours.includes(name);
    if (gone) DISK.remove(join(folder, name));
    if (quiet) continue;
    const end = gone ? 'was taken away' : 'does not belong to what was made now';
    note(`${name} is from an earlier run and ${end}`);
  }
  if (!quiet && !prune && ours.length > 0) note(`--prune takes away what manifest.json lists: ${ours.join(', ')}`);
}
