import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';

import { defineConfig, type Plugin } from 'vitest/config';
import { EveryCode } from './told/every-code.ts';

const ci = process.env.CI !== undefined;
const path = (file: URL): string => fileURLToPath(file);

/** What holds for all. Property tests start from one seed, so that a run speaks of the code and not of luck: see the file. */
const resolve = {
  alias: [{ find: /^fast-check$/, replacement: path(new URL('seeded.ts', import.meta.url)) }],
};
/** Every problem that a test makes the sources tell is noted, see `told/`. */
const told: Plugin = {
  name: 'told',
  enforce: 'pre',
  resolveId: (id, importer = '') =>
    /(?:^\.|\/problems)\/problem\.ts$/.test(id) && /\/src\//.test(importer)
      ? path(new URL('told/problem.ts', import.meta.url))
      : null,
};
const usual = {
  setupFiles: [path(new URL('svg-window.ts', import.meta.url)), path(new URL('told/setup.ts', import.meta.url))],
  testTimeout: 30_000,
  hookTimeout: 120_000,
};

/**
 * Folders whose tests keep to themselves: their files share a thread, which reads each module in once. All others have a
 * process for each file. Whether files are kept apart is asked of the pool, not of a project: so there are two pools.
 */
const TOGETHER = [
  'calibrate',
  'cutfiles',
  'day',
  'documents',
  'drawing',
  'geometry',
  'job',
  'mat',
  'paper',
  'papers',
  'pictures',
  'problems',
  'read',
  'settle',
  'shapes',
  'shop',
  'stock',
  'text',
  'units',
].map((folder) => `tests/${folder}/**/*.test.ts`);

const BROWSER = 'tests/page/**/*.test.ts';

/** It lies here, since the top level is fixed; paths count from the top level all the same. */
export default defineConfig({
  test: {
    projects: [
      {
        resolve,
        plugins: [told],
        test: { ...usual, name: 'together', include: TOGETHER, pool: 'threads', isolate: false },
      },
      {
        resolve,
        plugins: [told],
        test: {
          ...usual,
          name: 'apart',
          pool: 'forks',
          include: ['tests/**/*.test.ts'],
          exclude: [...TOGETHER, BROWSER],
          globalSetup: path(new URL('run-folder.ts', import.meta.url)),
        },
      },
      {
        resolve,
        plugins: [told],
        test: {
          ...usual,
          name: 'browser',
          pool: 'forks',
          include: [BROWSER],
          // On a loaded machine a browser now and then answers nothing for half a minute. What is wrong is wrong twice.
          retry: ci ? 1 : 0,
          globalSetup: path(new URL('run-folder.ts', import.meta.url)),
        },
      },
    ],
    poolOptions: { threads: { isolate: false, minThreads: 1, maxThreads: 1 } },
    // Left to itself it keeps one of two processors free.
    maxWorkers: Math.max(2, availableParallelism() - 1),
    // `.ci/run` counts the tests from this file.
    reporters: ['default', ...(ci ? ['json'] : []), new EveryCode()],
    outputFile: { json: 'tests/.out/results.json' },
  },
});
