import { join } from 'node:path';
import { DISK } from '../files/disk.ts';
import { type Left, leftBeside, type Outputs, writeOutputs } from '../output/earlier.ts';
import { type OutputFolder, writeFolders } from '../output/output.ts';

const BY = 'make';

/** Where a day's files go. */
export interface Writer {
  /** Some of the files of a folder that more will follow into. */
  readonly some: (folder: OutputFolder) => Promise<void>;
  /** All of a folder's files, or the last of them. */
  readonly whole: (outputs: Outputs) => Promise<void>;
  /** A folder's files lie there as they should. */
  readonly kept: (folder: string, names: readonly string[], families: readonly string[]) => void;
  /** A file that was written. */
  readonly read: (path: string) => Uint8Array;
  /** Nothing more comes, and nothing is wrong. */
  readonly release: () => Promise<void>;
  /** What earlier runs have left in the folders. */
  readonly left: Left[];
}

/** Each folder's files at once, whole or not at all. */
export function atOnce(prune: boolean): Writer {
  const left: Left[] = [];
  return {
    some: (folder) => writeFolders([folder]),
    whole: async (outputs) => {
      left.push(...(await writeOutputs(BY, [outputs], prune)));
    },
    kept: (folder, names, families) => left.push(...leftBeside(BY, folder, names, families, prune)),
    read: DISK.read,
    release: async () => undefined,
    left,
  };
}

/** Keeps all back until all is well: then everything of all folders is written, or nothing. */
export function held(prune: boolean): Writer {
  const left: Left[] = [];
  const parts: OutputFolder[] = [];
  const wholes: Outputs[] = [];
  const files = new Map<string, Uint8Array>();
  const keep = (folder: OutputFolder): void => {
    for (const { name, bytes } of folder.files) files.set(join(folder.folder, name), bytes);
  };
  return {
    some: async (folder) => {
      parts.push(folder);
      keep(folder);
    },
    whole: async (outputs) => {
      wholes.push(outputs);
      keep(outputs);
    },
    kept: (folder, names, families) => left.push(...leftBeside(BY, folder, names, families, prune)),
    read: (path) => files.get(path) ?? DISK.read(path),
    release: async () => {
      const all = wholes.map((outputs): Outputs => {
        const more = parts.filter(({ folder }) => folder === outputs.folder).flatMap((part) => part.files);
        return { ...outputs, files: [...more, ...outputs.files] };
      });
      left.push(...(await writeOutputs(BY, all, prune)));
    },
    left,
  };
}
