import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const ci = process.env.CI !== undefined;

/** It lies here, since the top level is fixed; paths count from the top level all the same. */
export default defineConfig({
  // Property tests start from one seed, so that a run speaks of the code and not of luck: see the file.
  resolve: { alias: [{ find: /^fast-check$/, replacement: fileURLToPath(new URL('seeded.ts', import.meta.url)) }] },
  test: {
    setupFiles: [fileURLToPath(new URL('svg-window.ts', import.meta.url))],
    include: ['tests/**/*.test.ts'],
    globalSetup: fileURLToPath(new URL('run-folder.ts', import.meta.url)),
    testTimeout: 30_000,
    hookTimeout: 120_000,
    // `.ci/run` counts the tests from this file.
    reporters: ci ? ['default', ['json', { outputFile: 'tests/.out/results.json' }]] : ['default'],
  },
});
