import { UsageError } from '../usage.ts';

export const NOTHING = 'nothing was changed';

/** What the system's codes mean to the one at the bench, and whether another path or permission would help. */
const REASONS: Readonly<Record<string, readonly [words: string, exit: 1 | 2]>> = {
  EACCES: ['it is not permitted here', 2],
  EPERM: ['it is not permitted here', 2],
  EROFS: ['the disk can only be read', 2],
  ENOENT: ['it, or its folder, is not there', 2],
  ENOTDIR: ['a part of its path is a file, not a folder', 2],
  EISDIR: ['a folder of that name is in the way', 2],
  EEXIST: ['something of that name is in the way', 2],
  ENOTEMPTY: ['a folder of that name is in the way', 2],
  ENAMETOOLONG: ['the name is too long', 2],
  ELOOP: ['its links lead in a circle', 2],
  EINVAL: ['the disk does not take such a name', 2],
  EXDEV: ['it lies across two disks', 2],
  EBUSY: ['another program holds it', 1],
  ETXTBSY: ['another program holds it', 1],
  EAGAIN: ['another program holds it', 1],
  ENOSPC: ['the disk is full', 1],
  EDQUOT: ['the share of the disk is used up', 1],
  EFBIG: ['it is larger than the disk allows', 1],
  EIO: ['the disk does not answer as it should', 1],
  EMFILE: ['too many files are open', 1],
  ENFILE: ['too many files are open', 1],
};

export function codeOf(problem: unknown): string | undefined {
  if (!(problem instanceof Error) || !('code' in problem)) return undefined;
  return typeof problem.code === 'string' ? problem.code : undefined;
}

/** `the disk is full (ENOSPC)` */
export function reason(problem: unknown): string {
  const code = codeOf(problem);
  if (code === undefined) return problem instanceof Error ? problem.message : String(problem);
  const words = REASONS[code]?.[0];
  return words === undefined ? code : `${words} (${code})`;
}

/** What failed, why and how things stand, as an error that ends the run with 2 where another call would do, else with 1. */
export function because(what: string, problem: unknown, state: string = NOTHING): Error {
  if (problem instanceof UsageError) return problem;
  const code = codeOf(problem);
  // What no system has said is a fault of the program.
  if (code === undefined) return problem instanceof Error ? problem : new Error(String(problem));
  const message = `${what}: ${reason(problem)}; ${state}`;
  return (REASONS[code]?.[1] ?? 1) === 2 ? new UsageError(message) : new Error(message);
}
