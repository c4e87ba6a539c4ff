import { join } from 'node:path';
import { DISK } from '../files/disk.ts';
import { type OutputFolder, writeFolders } from '../output.ts';
import type { How } from './how.ts';

/** Where a day's files go. */
export interface Writer extends Pick<How, 'write' | 'read'> {
  /** Nothing more comes, and nothing is wrong. */
  readonly release: () => Promise<void>;
}

/** Each folder's files at once, whole or not at all. */
export const AT_ONCE: Writer = {
  write: (folder) => writeFolders([folder]),
  read: DISK.read,
  release: async () => undefined,
};

/** Keeps all back until all is well: then everything of all folders is written, or nothing. */
export function held(): Writer {
  const folders: OutputFolder[] = [];
  const files = new Map<string, Uint8Array>();
  return {
    async write(folder) {
      folders.push(folder);
      for (const { name, bytes } of folder.files) files.set(join(folder.folder, name), bytes);
    },
    read: (path) => files.get(path) ?? DISK.read(path),
    release: () => writeFolders(folders),
  };
}
