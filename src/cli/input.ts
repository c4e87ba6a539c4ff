// A few small files, read before anything else can be done: the calls that wait cost less than those that come back later.
import { readFileSync, statSync } from 'node:fs';
import { basename, dirname, extname, join, resolve } from 'node:path';
import { UsageError } from './usage.ts';

/** Larger files are refused unread; the reader's own limit is lower and gives the place. */
const MOST_BYTES = 4 * 1024 * 1024;

export interface SourceFile {
  /** As the user wrote it. */
  readonly file: string;
  readonly text: string;
}

export async function readSource(file: string, what: string): Promise<SourceFile> {
  try {
    const { size } = statSync(file);
    if (size > MOST_BYTES)
      throw new UsageError(`${file}: ${what} of ${size} bytes is refused; at most 256 KiB are read`);
    return { file, text: readFileSync(file, 'utf8') };
  } catch (problem) {
    if (problem instanceof UsageError) throw problem;
    const code = (problem as NodeJS.ErrnoException).code;
    if (code === 'ENOENT') throw new UsageError(`${file}: there is no such ${what}; check the name and the folder`);
    if (code === 'EISDIR') throw new UsageError(`${file} is a folder; name the ${what} in it`);
    throw new UsageError(`${file}: the ${what} cannot be read (${code ?? 'unknown reason'})`);
  }
}

/** The shop's file: the one asked for, else `shop.yaml` beside the job or in the nearest folder above it. */
export async function findShop(jobFile: string, asked: string | undefined): Promise<SourceFile | undefined> {
  if (asked !== undefined) return readSource(asked, "shop's file");
  let folder = dirname(resolve(jobFile));
  for (;;) {
    const file = join(folder, 'shop.yaml');
    if (await exists(file)) return readSource(file, "shop's file");
    const above = dirname(folder);
    if (above === folder) return undefined;
    folder = above;
  }
}

async function exists(file: string): Promise<boolean> {
  try {
    return statSync(file).isFile();
  } catch {
    return false;
  }
}

/** Where outputs go unless asked otherwise: a folder named after the job's file, beside it. */
export function defaultFolder(jobFile: string): string {
  const name = basename(jobFile, extname(jobFile));
  const folder = join(dirname(jobFile), name);
  return folder === jobFile ? `${folder}-out` : folder;
}
