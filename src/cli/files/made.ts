import { join } from 'node:path';
import type { OutputFile } from '../../outputs/write.ts';
import { DISK } from './disk.ts';
import { hashOf } from './journal.ts';
import { readPlain } from './plain.ts';

/**
 * What was made in a folder of outputs, kept beside them: by it files that are left of an earlier run are told from those
 * of other people, and those that somebody has changed since from those that nobody would miss. Hidden, since it is of no use to a person.
 */
const MADE = '.matwright.json';
const LONGEST_LIST = 16 * 1024 * 1024;
/** No file of ours is as large as this. */
const MOST_BYTES = 2 ** 31 - 1;

export interface MadeFile {
  /** Which command made it last. */
  readonly by: string;
  /** Of its bytes, as it was written. */
  readonly sha256: string;
}

export type Made = ReadonlyMap<string, MadeFile>;

/** What was made in a folder; nothing where nothing is known of it. */
export function madeIn(folder: string): Made {
  try {
    const kept: unknown = JSON.parse(new TextDecoder().decode(readPlain(join(folder, MADE), LONGEST_LIST)));
    if (!isMap(kept) || !isMap(kept.made)) return new Map();
    const files = Object.entries(kept.made).flatMap(([name, file]) =>
      isPlainName(name) && isMadeFile(file) ? [[name, { by: file.by, sha256: file.sha256 }] as const] : [],
    );
    return new Map(files);
  } catch {
    // Whatever else it may be, it says nothing of ours.
    return new Map();
  }
}

const isMap = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;
const isMadeFile = (value: unknown): value is MadeFile =>
  isMap(value) && typeof value.by === 'string' && typeof value.sha256 === 'string';

/** A name in the folder itself: a list from elsewhere leads nowhere. */
const isPlainName = (name: string): boolean =>
  /^[^/\\\0]+$/u.test(name) && name !== '.' && name !== '..' && name !== MADE;

/** A file by what is in it. */
export interface Print {
  readonly name: string;
  readonly size: number;
  readonly sha256: string;
}

export const printOf = ({ name, bytes }: OutputFile): Print => ({ name, size: bytes.length, sha256: hashOf(bytes) });

/** The list as it is once these files are written; of those before it keeps what is still there. */
export function madeWith(folder: string, before: Made, by: string, files: readonly Print[]): OutputFile {
  const there = [...before].filter(([name]) => DISK.find(join(folder, name)) !== undefined);
  const now = files.map(({ name, sha256 }) => [name, { by, sha256 }] as const);
  const made = Object.fromEntries([...there, ...now].sort(([a], [b]) => (a < b ? -1 : 1)));
  return { name: MADE, bytes: new TextEncoder().encode(`${JSON.stringify({ made }, null, 1)}\n`) };
}

/** Is a file still as it was written? What cannot be read is not. */
export function isAsMade(folder: string, name: string, { sha256 }: Pick<MadeFile, 'sha256'>): boolean {
  try {
    return hashOf(readPlain(join(folder, name), MOST_BYTES)) === sha256;
  } catch {
    return false;
  }
}
