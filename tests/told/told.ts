import { appendFileSync } from 'node:fs';
import { afterAll } from 'vitest';
import { fileIn } from './told-file.ts';

const codes = new Set<string>();

/** Notes that a problem with this code was made. */
export function tell(code: string): string {
  codes.add(code);
  return code;
}

/** At the end of each file of tests, its codes go where all of a run lie. */
export function noteTold(): void {
  afterAll(() => {
    const folder = process.env.MATWRIGHT_RUN_FOLDER;
    if (folder === undefined || codes.size === 0) return;
    appendFileSync(fileIn(folder), [...codes].map((code) => `${code}\n`).join(''));
    codes.clear();
  });
}
