import { closeSync, constants, fstatSync, openSync, readSync, type Stats, statSync } from 'node:fs';

/** What is at a path is no plain file, or not one that can be read whole. */
export class NotPlain extends Error {
  constructor(
    readonly kind: 'folder' | 'other' | 'large' | 'moving',
    message: string,
  ) {
    super(message);
  }
}

// Without it opening a pipe waits until somebody writes; systems that lack it have no such pipes.
const AT_ONCE = (constants.O_NONBLOCK as number | undefined) ?? 0;

/**
 * A plain file, whole: at most `most` bytes, checked before any is read. Devices and pipes are refused before they are opened,
 * since opening alone can set one off, and once more when they are open. What the system makes up as it is
 * read (`/proc`) says that it is empty and is not: that is no plain file either.
 */
export function readPlain(path: string, most: number): Uint8Array {
  plain(statSync(path), path, most);
  const handle = openSync(path, constants.O_RDONLY | AT_ONCE);
  try {
    const { size } = plain(fstatSync(handle), path, most);
    // One byte more than it says, to see that there is none.
    const bytes = new Uint8Array(size + 1);
    let length = 0;
    while (length < bytes.length) {
      const count = readSync(handle, bytes, length, bytes.length - length, null);
      if (count === 0) break;
      length += count;
    }
    if (length === size) return bytes.subarray(0, size);
    if (size === 0) throw new NotPlain('other', `${path} is made up by the system, no plain file`);
    throw new NotPlain('moving', `${path} changed while it was read; try again`);
  } finally {
    closeSync(handle);
  }
}

function plain(stats: Stats, path: string, most: number): Stats {
  if (stats.isDirectory()) throw new NotPlain('folder', `${path} is a folder`);
  if (!stats.isFile()) throw new NotPlain('other', `${path} is ${word(stats)}, no plain file`);
  if (stats.size > most) throw new NotPlain('large', `${path} has ${stats.size} bytes`);
  return stats;
}

function word(stats: Stats): string {
  if (stats.isFIFO()) return 'a pipe';
  if (stats.isSocket()) return 'a socket';
  return 'a device';
}
