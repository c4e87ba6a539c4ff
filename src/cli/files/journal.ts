import { createRequire } from 'node:module';
import { join, relative, resolve } from 'node:path';
import { hiddenName } from './names.ts';

/** One file that gets its name. */
export interface Step {
  readonly folder: string;
  readonly name: string;
  /** Of the new bytes: what is at the name is known by it as ours. */
  readonly hash: string;
  /** Was there a file before? Then it is kept under a second name until all is done. */
  readonly replaces: boolean;
  /** A file that people write in too, and that cannot be made again. */
  readonly kept: boolean;
}

/**
 * What a run is about to rename, in this order. It is written when all new files and the second names of all old ones are there,
 * and before the first rename. As long as it is there the run is not done: whoever finds it, and that run has ended, takes the steps back,
 * unless all were taken. The file that people write in comes last: so it never has to be taken back.
 */
export interface Journal {
  readonly run: string;
  /** The folder that the journal lies in. */
  readonly home: string;
  readonly steps: readonly Step[];
}

/** Read when something is hashed and not before: most runs hash nothing, and all of Node's ciphers come with it. */
const crypto = (): typeof import('node:crypto') => createRequire(import.meta.url)('node:crypto');

/** Files are hashed for their manifest, for the list of what was made and for the journal: once each. */
const HASHED = new WeakMap<Uint8Array, string>();

/** Of bytes that nobody changes any more. */
export function hashOf(bytes: Uint8Array): string {
  const hash = HASHED.get(bytes) ?? crypto().createHash('sha256').update(bytes).digest('hex');
  HASHED.set(bytes, hash);
  return hash;
}

export const foldersOf = ({ home, steps }: Journal): readonly string[] => [
  ...new Set([home, ...steps.map(({ folder }) => folder)]),
];

export const partOf = (run: string, { folder }: Pick<Step, 'folder'>, index: number): string =>
  join(folder, hiddenName(run, 'part', index));
export const oldOf = (run: string, { folder }: Pick<Step, 'folder'>, index: number): string =>
  join(folder, hiddenName(run, 'old', index));

/** Folders count from the journal's own, so that all may be moved together. */
export function journalText({ home, steps }: Journal): string {
  const list = steps.map(({ folder, name, hash, replaces, kept }) => ({
    folder: relative(home, folder),
    name,
    hash,
    replaces,
    kept,
  }));
  return `${JSON.stringify(list)}\n`;
}

/** Undefined where the text is none of ours, or not whole: a machine that lost its power may leave that. */
export function parseJournal(run: string, home: string, text: string): Journal | undefined {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return undefined;
  }
  if (!Array.isArray(value) || !value.every(isStep)) return undefined;
  return { run, home, steps: value.map((step) => ({ ...step, folder: resolve(home, step.folder) })) };
}

function isStep(value: unknown): value is Step {
  if (typeof value !== 'object' || value === null) return false;
  const { folder, name, hash, replaces, kept } = value as Partial<Record<keyof Step, unknown>>;
  const texts = [folder, name, hash].every((each) => typeof each === 'string');
  return texts && typeof replaces === 'boolean' && typeof kept === 'boolean';
}
