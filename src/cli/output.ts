// The last thing that a command does: the calls that wait cost less than those that come back later.
import { closeSync, mkdirSync, openSync, readdirSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { UsageError } from './usage.ts';

export interface OutputFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface OutputFolder {
  readonly folder: string;
  readonly files: readonly OutputFile[];
}

/** As `writeFolders`, into one folder. */
export const writeAll = (folder: string, files: readonly OutputFile[], before?: () => Promise<void>): Promise<void> =>
  writeFolders([{ folder, files }], before);

/**
 * Writes all files of all folders or none: each goes whole to a hidden neighbour first, and only when all are on the disk do they take
 * their names. Earlier outputs of the same names are replaced; nothing else in the folder is touched. `before` is done
 * when everything is on the disk; where it throws, nothing takes its name.
 */
export async function writeFolders(folders: readonly OutputFolder[], before?: () => Promise<void>): Promise<void> {
  for (const { folder } of folders) makeFolder(folder);
  const waiting: { readonly from: string; readonly to: string }[] = [];
  try {
    for (const { folder, name, bytes } of folders.flatMap(inFolder)) {
      const to = join(folder, name);
      if (kind(to) === 'folder') throw new UsageError(`${to} is a folder, where a file of that name is to be written`);
      const from = join(folder, `.${name}.${process.pid}.part`);
      waiting.push({ from, to });
      const handle = openSync(from, 'wx');
      try {
        writeFileSync(handle, bytes);
      } finally {
        closeSync(handle);
      }
    }
    await before?.();
    for (const { from, to } of waiting) renameSync(from, to);
  } catch (problem) {
    for (const { from } of waiting) rmSync(from, { force: true });
    throw problem;
  }
}

const inFolder = ({ folder, files }: OutputFolder) => files.map((file) => ({ folder, ...file }));

function makeFolder(folder: string): void {
  if (kind(folder) === 'file') throw new UsageError(`${folder} is a file, not a folder to write into`);
  mkdirSync(folder, { recursive: true });
}

function kind(path: string): 'file' | 'folder' | undefined {
  try {
    return statSync(path).isDirectory() ? 'folder' : 'file';
  } catch {
    return undefined;
  }
}

/** Files in the folder that look like earlier outputs of `family` but are not among those written now. */
export async function leftOver(
  folder: string,
  family: RegExp,
  written: readonly OutputFile[],
): Promise<readonly string[]> {
  const now = new Set(written.map((file) => file.name));
  return readdirSync(folder)
    .filter((name) => family.test(name) && !now.has(name))
    .sort();
}
