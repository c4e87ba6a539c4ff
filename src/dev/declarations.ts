import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';

/** What a declaration speaks of in other files. */
const NAMED = /(?:from\s*|import\()['"](\.[^'"]+)\.[jt]s['"]/g;

/** Takes declarations out of `folder` that none of the `faces` leads to: two thirds of them, which nobody could name. */
export function keepReached(folder: string, faces: readonly string[]): void {
  const reached = new Set(faces);
  // A set is walked on while it grows.
  for (const file of reached) {
    for (const [, named] of readFileSync(join(folder, file), 'utf8').matchAll(NAMED)) {
      reached.add(`${normalize(join(dirname(file), named!))}.d.ts`);
    }
  }
  for (const file of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
    if (file.endsWith('.d.ts') && !reached.has(file)) rmSync(join(folder, file));
  }
}
