import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** In the folder of a run: a line for each code that a file of tests has told of. */
export const fileIn = (folder: string): string => join(folder, 'told');

/** All that a run of tests has told of so far. */
export const allTold = (folder: string): ReadonlySet<string> =>
  new Set(readFileSync(fileIn(folder), 'utf8').split('\n'));
