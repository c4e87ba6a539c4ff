/**
 * Run in the copy as a process of its own: one vitest that stands by, so that only what a mutant changes is read and
 * translated anew. Asked for files of tests by a message, it answers with what became of them.
 */
import { join } from 'node:path';
import { createVitest } from 'vitest/node';
import type { Outcome } from './tests-in-copy.ts';

export interface Asked {
  /** Sources that are not what they were. */
  readonly changed: readonly string[];
  /** Tests in the order in which they run, up to the first that fails. */
  readonly files: readonly string[];
}

const here = process.cwd();
const quiet = { onInit: () => undefined };
const vitest = await createVitest(
  'test',
  { root: here, config: 'tests/in-order.config.ts', watch: false, bail: 1, reporters: [quiet] },
  { clearScreen: false },
);
const project = vitest.getRootProject();

process.on('message', async ({ changed, files }: Asked) => {
  for (const path of changed) vitest.invalidateFile(join(here, path));
  process.env.IN_ORDER = files.join(',');
  // What failed before would count as the first failure of this run.
  vitest.state.filesMap.clear();
  vitest.state.idMap.clear();
  const { testModules } = await vitest.runTestSpecifications(
    files.map((file) => project.createSpecification(join(here, file))),
  );
  const outcome: Outcome = {
    ended: true,
    files: testModules
      .filter((module) => module.state() === 'failed' || [...module.children.allTests()].some((test) => test.ok()))
      .map((module) => ({
        file: module.moduleId.slice(here.length + 1),
        passed: module.state() === 'passed',
        seconds: module.diagnostic().duration / 1000,
      })),
  };
  process.send!(outcome);
});
// Whoever asked is gone, however: nothing of this group is left spinning in a mutant that never ends.
process.on('disconnect', () => process.kill(-process.pid, 'SIGKILL'));
process.send!('ready');
