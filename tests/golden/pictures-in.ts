import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { PictureReader } from '../../src/index.ts';

/** The pictures of a job that lies in this folder. */
export const picturesIn =
  (folder: string | undefined): PictureReader =>
  async (name) => {
    const path = join(folder ?? '', name);
    if (folder === undefined || !existsSync(path)) return { why: `there is no ${name}`, hint: '' };
    return { bytes: new Uint8Array(readFileSync(path)) };
  };
