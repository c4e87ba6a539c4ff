import { lstatSync, realpathSync } from 'node:fs';
import { basename, dirname, join, sep } from 'node:path';
import { codeOf } from '../files/why.ts';

/** Names that some systems take for devices, with any ending. */
const DEVICES = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\..*)?$/iu;
/** Folders within folders. */
const DEEPEST = 8;
const LONGEST = 200;

/** Whether a part of a name is one that a file of the user may have: nothing hidden, nothing that a system reads otherwise. */
const isPlainPart = (part: string): boolean =>
  part !== '' &&
  part.length <= LONGEST &&
  !part.startsWith('.') &&
  !/[\p{Cc}\\:*?"<>|]|[. ]$/u.test(part) &&
  !DEVICES.test(part);

/**
 * The path of a file within a folder, by its name with `/` between parts; undefined where the name is none, or leads out
 * of the folder by a link, to the file or to a folder on the way.
 */
export function pathInside(folder: string, name: string): string | undefined {
  const parts = name.split('/');
  if (parts.length > DEEPEST || !parts.every(isPlainPart)) return undefined;
  const path = join(folder, ...parts);
  const top = realpathSync(folder);
  const real = realOf(path);
  return real === undefined || !real.startsWith(top === sep ? top : `${top}${sep}`) ? undefined : path;
}

/** Where a path really leads; what is not there yet lies where its folder really is. */
function realOf(path: string): string | undefined {
  try {
    return realpathSync(path);
  } catch (problem) {
    if (codeOf(problem) !== 'ENOENT') return undefined;
  }
  // A link that leads nowhere is there, and would be followed by whoever writes.
  if (isThere(path)) return undefined;
  const above = dirname(path);
  if (above === path) return undefined;
  const real = realOf(above);
  return real === undefined ? undefined : join(real, basename(path));
}

function isThere(path: string): boolean {
  try {
    lstatSync(path);
    return true;
  } catch {
    return false;
  }
}
