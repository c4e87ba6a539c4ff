import { mkdir, open, readdir, rename, rm, stat } from 'node:fs/promises';
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
  for (const { folder } of folders) await makeFolder(folder);
  const waiting: { readonly from: string; readonly to: string }[] = [];
  try {
    for (const { folder, name, bytes } of folders.flatMap(inFolder)) {
      const to = join(folder, name);
      if ((await kind(to)) === 'folder')
        throw new UsageError(`${to} is a folder, where a file of that name is to be written`);
      const from = join(folder, `.${name}.${process.pid}.part`);
      waiting.push({ from, to });
      const handle = await open(from, 'wx');
      try {
        await handle.writeFile(bytes);
      } finally {
        await handle.close();
      }
    }
    await before?.();
    for (const { from, to } of waiting) await rename(from, to);
  } catch (problem) {
    await Promise.all(waiting.map(({ from }) => rm(from, { force: true })));
    throw problem;
  }
}

const inFolder = ({ folder, files }: OutputFolder) => files.map((file) => ({ folder, ...file }));

async function makeFolder(folder: string): Promise<void> {
  if ((await kind(folder)) === 'file') throw new UsageError(`${folder} is a file, not a folder to write into`);
  await mkdir(folder, { recursive: true });
}

async function kind(path: string): Promise<'file' | 'folder' | undefined> {
  try {
    return (await stat(path)).isDirectory() ? 'folder' : 'file';
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
  return (await readdir(folder)).filter((name) => family.test(name) && !now.has(name)).sort();
}
