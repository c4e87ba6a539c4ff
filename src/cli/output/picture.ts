import { dirname, isAbsolute, join } from 'node:path';
import type { PictureReader } from '../../outputs/options.ts';
import { NotPlain, readPlain } from '../files/plain.ts';
import { remember } from '../files/this-run.ts';
import { codeOf, reason } from '../files/why.ts';

/** A scan of four hundred million pixels may come near; larger files are mistakes. */
const MOST_BYTES = 512 * 1024 * 1024;

/** Where a picture lies that a job or a shop names: relative to the folder of its own file. */
export const pictureFile = (namedIn: string, name: string): string =>
  isAbsolute(name) ? name : join(dirname(namedIn), name);

/** Pictures as a job or a shop names them: files, relative to the folder of its own. */
export function picturesBeside(namedIn: string, what: 'job' | "shop's file" = 'job'): PictureReader {
  return async (name) => {
    const hint = `name a ${what === 'job' ? 'JPEG or PNG' : 'SVG, JPEG or PNG'} file, relative to the ${what}`;
    if (/^[a-z][a-z0-9+.-]+:\/\//iu.test(name)) return { why: 'the picture is an address; only files are read', hint };
    const file = pictureFile(namedIn, name);
    try {
      const bytes = readPlain(file, MOST_BYTES);
      remember(file, 'picture');
      return { bytes };
    } catch (problem) {
      if (problem instanceof NotPlain && problem.kind === 'large')
        return { why: `${problem.message}; at most 512 MiB are read`, hint: 'save it smaller' };
      if (problem instanceof NotPlain) return { why: problem.message, hint };
      if (['ENOENT', 'ENOTDIR'].includes(codeOf(problem) ?? ''))
        return { why: `there is no picture ${file}`, hint: `check the name; it counts from the folder of the ${what}` };
      return { why: `${file} cannot be read: ${reason(problem)}`, hint: 'check who may read it' };
    }
  };
}
