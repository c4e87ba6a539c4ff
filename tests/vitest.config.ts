import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const ci = process.env.CI !== undefined;

/** What holds for all. Property tests start from one seed, so that a run speaks of the code and not of luck: see the file. */
const resolve = {
  alias: [{ find: /^fast-check$/, replacement: fileURLToPath(new URL('seeded.ts', import.meta.url)) }],
};
const usual = {
  setupFiles: [fileURLToPath(new URL('svg-window.ts', import.meta.url))],
  testTimeout: 30_000,
  hookTimeout: 120_000,
};

/**
 * Folders whose tests keep to themselves: their files share a process, which reads each module in once. That is a quarter of
 * their time. All others have a process for each file.
 */
const TOGETHER = ['drawing', 'geometry', 'job', 'mat', 'papers', 'problems', 'settle', 'shapes', 'text', 'units'].map(
  (folder) => `tests/${folder}/**/*.test.ts`,
);

/** It lies here, since the top level is fixed; paths count from the top level all the same. */
export default defineConfig({
  test: {
    projects: [
      { resolve, test: { ...usual, name: 'together', include: TOGETHER, isolate: false } },
      {
        resolve,
        test: {
          ...usual,
          name: 'apart',
          include: ['tests/**/*.test.ts'],
          exclude: TOGETHER,
          globalSetup: fileURLToPath(new URL('run-folder.ts', import.meta.url)),
        },
      },
    ],
    // Left to itself it keeps one of two processors free.
    maxWorkers: Math.max(2, availableParallelism() - 1),
    // `.ci/run` counts the tests from this file.
    reporters: ci ? ['default', ['json', { outputFile: 'tests/.out/results.json' }]] : ['default'],
  },
});
