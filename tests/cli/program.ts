import { createRequire } from 'node:module';
import { join } from 'node:path';
import { beforeAll } from 'vitest';
import { built } from '../built.ts';

/** One command in this process. */
type Main = (args: readonly string[]) => Promise<number>;

/**
 * The command line as the whole run of the tests has it: where `CI` is set the program that is built and packed, else the
 * sources, so that one file of tests is quick to run while it is worked on.
 */
export const main: Main = async (args) => (BUILT ? asBuilt(args) : fromSources(args));

const BUILT = Boolean(process.env.CI);
if (BUILT) beforeAll(() => built(), 240_000);

/** Whatever runs: what the sources tell is noted (`tests/told/`). */
export const fromSources: Main = async (args) => {
  const { main } = await import('../../src/cli/main.ts');
  return main(args, 'test');
};

/** The program's first file runs once each time it is loaded; what it loads stays, as in one long process. */
const asBuilt: Main = async (args) => {
  const start = join(await built(), 'cli/start.js');
  const load = createRequire(start);
  delete load.cache[start];
  const before = process.argv;
  process.argv = [process.execPath, join(start, '../../cli.js'), ...args];
  try {
    const { ended } = load(start) as { readonly ended: Promise<number> };
    return await ended;
  } finally {
    process.argv = before;
  }
};
