import { chmod, open, readFile, realpath, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { UsageError } from './usage.ts';

const NOTHING = 'nothing was changed';

/**
 * Puts another text in the place of one that was read before, whole or not at all: the new file is written beside the
 * old one, and takes its name only if the old one is still as it was read. Without `before` there must be no file yet.
 * A link is followed. Throws a UsageError, and leaves everything as it was, where the file cannot be written or is not
 * what was read.
 */
export async function replaceText(file: string, before: string | undefined, after: string): Promise<void> {
  const target = before === undefined ? file : await realpath(file).catch(() => file);
  const mode = before === undefined ? undefined : await writable(target, file);
  await unchanged(target, file, before);
  const beside = join(dirname(target), `.${basename(target)}.${process.pid}.part`);
  try {
    const handle = await open(beside, 'wx');
    try {
      await handle.writeFile(after, 'utf8');
      await handle.sync();
    } finally {
      await handle.close();
    }
    if (mode !== undefined) await chmod(beside, mode);
    await unchanged(target, file, before);
    await rename(beside, target);
  } catch (problem) {
    await rm(beside, { force: true });
    if (problem instanceof UsageError) throw problem;
    const code = (problem as NodeJS.ErrnoException).code ?? 'unknown reason';
    throw new UsageError(`${file} cannot be written (${code}); ${NOTHING}`);
  }
}

/** The mode of a file that may be written. The mode counts for everyone, also for those whom the system lets write all. */
async function writable(target: string, file: string): Promise<number> {
  const { mode } = await stat(target).catch(() => {
    throw new UsageError(`${file} is not there any more; ${NOTHING}`);
  });
  if ((mode & 0o222) === 0) throw new UsageError(`${file} is read-only; make it writable and try again, ${NOTHING}`);
  return mode & 0o7777;
}

async function unchanged(target: string, file: string, before: string | undefined): Promise<void> {
  const now = await readFile(target, 'utf8').catch((problem: NodeJS.ErrnoException) => {
    if (problem.code === 'ENOENT') return undefined;
    throw new UsageError(`${file} cannot be read again (${problem.code}); ${NOTHING}`);
  });
  if (now !== before) {
    throw new UsageError(`${file} was changed by something else meanwhile; ${NOTHING}, run the command again`);
  }
}
