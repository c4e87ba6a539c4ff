import { existsSync, mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { build, TOP } from '../src/dev/build.ts';

const PATIENCE_MS = 180_000;

/** `dist/` as it is shipped, built once for each run of the tests by the first worker that asks. */
export async function built(): Promise<string> {
  const folder = process.env.MATWRIGHT_RUN_FOLDER;
  if (folder === undefined) throw new Error('tests/run-folder.ts has not been run');
  const dist = join(folder, 'dist');
  const [done, failed] = [join(folder, 'built'), join(folder, 'not-built')];
  if (isFirst(join(folder, 'building'))) {
    try {
      await build(dist);
      // What it is installed with is looked for beside it.
      for (const name of ['node_modules', 'templates']) symlinkSync(join(TOP, name), join(folder, name));
      writeFileSync(done, '');
    } catch (problem) {
      writeFileSync(failed, String(problem));
      throw problem;
    }
  }
  for (let waited = 0; !existsSync(done); waited += 50) {
    if (existsSync(failed)) throw new Error('another worker could not build it');
    if (waited > PATIENCE_MS) throw new Error('another worker does not come to an end with the build');
    await pause(50);
  }
  return dist;
}

function isFirst(mark: string): boolean {
  try {
    mkdirSync(mark);
    return true;
  } catch {
    return false;
  }
}
