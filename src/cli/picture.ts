import { readFile, stat } from 'node:fs/promises';
import { dirname, isAbsolute, join } from 'node:path';
import type { PictureSource } from '../make-proof.ts';

/** A scan of four hundred million pixels may come near; larger files are mistakes. */
const MOST_BYTES = 512 * 1024 * 1024;

/** Pictures as a job names them: files, relative to the job's own folder. */
export function picturesBeside(jobFile: string): PictureSource {
  return async (name) => {
    const hint = 'name a JPEG or PNG file, relative to the job';
    if (/^[a-z][a-z0-9+.-]+:\/\//iu.test(name)) return { why: 'the picture is an address; only files are read', hint };
    const file = isAbsolute(name) ? name : join(dirname(jobFile), name);
    try {
      const found = await stat(file);
      if (found.isDirectory()) return { why: `${file} is a folder`, hint };
      if (!found.isFile()) return { why: `${file} is no plain file`, hint };
      if (found.size > MOST_BYTES)
        return { why: `${file} has ${found.size} bytes; at most 512 MiB are read`, hint: 'save it smaller' };
      return { bytes: await readFile(file) };
    } catch (problem) {
      const { code } = problem as NodeJS.ErrnoException;
      if (code === 'ENOENT' || code === 'ENOTDIR')
        return { why: `there is no picture ${file}`, hint: 'check the name; it counts from the job’s own folder' };
      return { why: `${file} cannot be read (${code ?? 'unknown reason'})`, hint: 'check who may read it' };
    }
  };
}
