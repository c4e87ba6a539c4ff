import {
  chmodSync,
  chownSync,
  closeSync,
  constants,
  copyFileSync,
  fsyncSync,
  linkSync,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  realpathSync,
  renameSync,
  rmdirSync,
  type Stats,
  statSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs';
import { readPlain } from './plain.ts';
import { codeOf } from './why.ts';

/** What a path leads to, links followed. A `link` is one that leads nowhere; `other` are devices, pipes and sockets. */
export interface Found {
  readonly kind: 'plain' | 'folder' | 'link' | 'other';
  readonly size: number;
  readonly mode: number;
  readonly uid: number;
  readonly gid: number;
  readonly dev: number;
  readonly ino: number;
  readonly changedMs: number;
}

/** How a new file is to be: on the disk for certain before anything else is done, and whose. */
export interface Manner {
  readonly sync?: boolean;
  readonly like?: Found;
}

/**
 * Everything that is done to the disk in order to write, one step a call: so tests can let any step fail, or be the
 * last. The calls wait: each is short, and so nothing of this process comes between two of them.
 */
export interface Disk {
  readonly find: (path: string) => Found | undefined;
  readonly real: (path: string) => string;
  readonly list: (folder: string) => readonly string[];
  readonly read: (path: string) => Uint8Array;
  /** Makes a folder and those above it; says which is the first of them that was not there. */
  readonly makeFolder: (folder: string) => string | undefined;
  /** Takes an empty folder away. */
  readonly removeFolder: (folder: string) => void;
  /** A new file; fails where there is one. */
  readonly create: (path: string, bytes: Uint8Array, manner?: Manner) => void;
  /** A second name for a file, or a copy of it where the disk knows no such thing; fails where the name is taken. */
  readonly link: (from: string, to: string) => void;
  readonly rename: (from: string, to: string) => void;
  /** Takes a file away; it need not be there. */
  readonly remove: (path: string) => void;
  /** Sees to it that the names in a folder are on the disk. */
  readonly settle: (folder: string) => void;
}

const ABSENT = ['ENOENT', 'ENOTDIR'];
/** Disks without second names, such as those of cameras and sticks, answer with one of these. */
const NO_LINKS = ['EPERM', 'ENOSYS', 'ENOTSUP', 'EOPNOTSUPP', 'EMLINK', 'EINVAL'];
/** No file of ours is as large as this. */
const MOST_BYTES = 2 ** 31 - 1;

export const DISK: Disk = {
  find(path) {
    try {
      return found(statSync(path));
    } catch (problem) {
      const code = codeOf(problem) ?? '';
      if (code !== 'ELOOP' && !ABSENT.includes(code)) throw problem;
    }
    try {
      return found(lstatSync(path));
    } catch (problem) {
      if (ABSENT.includes(codeOf(problem) ?? '')) return undefined;
      throw problem;
    }
  },
  real: (path) => realpathSync(path),
  list: (folder) => readdirSync(folder),
  read: (path) => readPlain(path, MOST_BYTES),
  makeFolder: (folder) => mkdirSync(folder, { recursive: true }),
  removeFolder: (folder) => rmdirSync(folder),
  create(path, bytes, { sync = false, like } = {}) {
    const handle = openSync(path, 'wx');
    try {
      writeFileSync(handle, bytes);
      if (sync) fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    if (like !== undefined) take(path, like);
  },
  link(from, to) {
    try {
      linkSync(from, to);
    } catch (problem) {
      if (!NO_LINKS.includes(codeOf(problem) ?? '')) throw problem;
      copyFileSync(from, to, constants.COPYFILE_EXCL);
    }
  },
  rename: (from, to) => renameSync(from, to),
  remove(path) {
    try {
      unlinkSync(path);
    } catch (problem) {
      if (!ABSENT.includes(codeOf(problem) ?? '')) throw problem;
    }
  },
  settle(folder) {
    try {
      const handle = openSync(folder, 'r');
      try {
        fsyncSync(handle);
      } finally {
        closeSync(handle);
      }
    } catch {
      // Not every system opens a folder; those that do not keep their names safe themselves.
    }
  },
};

function found(stats: Stats): Found {
  const { size, mode, uid, gid, dev, ino, mtimeMs } = stats;
  const rest = { size, mode: mode & 0o7777, uid, gid, dev, ino, changedMs: mtimeMs };
  if (stats.isFile()) return { kind: 'plain', ...rest };
  if (stats.isDirectory()) return { kind: 'folder', ...rest };
  return { kind: stats.isSymbolicLink() ? 'link' : 'other', ...rest };
}

/** A file that takes another's place keeps its mode, and its owner where that may be given. */
function take(path: string, like: Found): void {
  const own = statSync(path);
  if (own.uid !== like.uid || own.gid !== like.gid) {
    try {
      chownSync(path, like.uid, like.gid);
    } catch {
      // Only the one who rules the machine may give files away.
    }
  }
  if ((own.mode & 0o7777) !== like.mode) chmodSync(path, like.mode);
}
