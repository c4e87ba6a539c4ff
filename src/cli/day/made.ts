import { statSync } from 'node:fs';
import { join } from 'node:path';
import { MANIFEST } from '../../outputs/job-manifest.ts';
import { hashOf } from '../files/journal.ts';
import { type Print, isAsMade as sameBytes } from '../files/made.ts';
import { readPlain } from '../files/plain.ts';

/** What a manifest says of how its files came to be: by it a later run knows whether anything has to be made again. */
export interface Made {
  /** The version of the program. */
  readonly by: string;
  /** Of everything that they were made of, the pictures aside. */
  readonly of: string;
  /** As the job names them. */
  readonly pictures: readonly Print[];
  readonly outputs: readonly Print[];
}

/** Of a job's manifest; that of a day is longer by every job. */
const LONGEST_MANIFEST = 256 * 1024 * 1024;

/** One text for everything that something is made of: equal only where all of it is. */
export const hashOfAll = (parts: readonly unknown[]): string => hashOf(new TextEncoder().encode(JSON.stringify(parts)));

/** A manifest that was read, and when it got its place: what was changed later is looked at. */
export interface Found {
  readonly manifest: Readonly<Record<string, unknown>>;
  readonly made: Made;
  readonly atMs: number;
}

/** The manifest of a folder; nothing where there is none, or none that says how its files came to be. */
export function foundIn(folder: string): Found | undefined {
  try {
    const file = join(folder, MANIFEST);
    const { ctimeMs } = statSync(file);
    const manifest: unknown = JSON.parse(new TextDecoder().decode(readPlain(file, LONGEST_MANIFEST)));
    if (!isRecord(manifest) || !isMade(manifest.made)) return undefined;
    return { manifest, made: manifest.made, atMs: ctimeMs };
  } catch {
    return undefined;
  }
}

/**
 * Are the files still those that the manifest speaks of? Where size and time say so they are believed, unless they are to be
 * verified: a file that was touched after the manifest got its place has another time, whoever touched it and however. Then its
 * bytes decide.
 */
export function areAsMade(files: readonly Print[], folder: string, atMs: number, verify: boolean): boolean {
  return files.every((file) => isUntouched(file, folder, atMs, verify));
}

function isUntouched({ name, size, sha256 }: Print, folder: string, atMs: number, verify: boolean): boolean {
  const path = join(folder, name);
  try {
    const stats = statSync(path);
    if (!stats.isFile() || stats.size !== size) return false;
    if (!verify && Math.max(stats.mtimeMs, stats.ctimeMs) <= atMs) return true;
    return sameBytes(folder, name, { sha256 });
  } catch {
    return false;
  }
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const isPrint = (value: unknown): value is Print =>
  isRecord(value) &&
  typeof value.name === 'string' &&
  typeof value.size === 'number' &&
  typeof value.sha256 === 'string';

const isPrints = (value: unknown): value is readonly Print[] => Array.isArray(value) && value.every(isPrint);

const isMade = (value: unknown): value is Made =>
  isRecord(value) &&
  typeof value.by === 'string' &&
  typeof value.of === 'string' &&
  isPrints(value.pictures) &&
  isPrints(value.outputs);
