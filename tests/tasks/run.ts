/** `npm run tasks [-- FILE.tgz]`: every task by the package as it is packed and installed into an empty folder. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { install } from '../bench/packed.ts';
import { carriedOut, TASKS } from './carried-out.ts';

const top = mkdtempSync(join(tmpdir(), 'matwright-tasks-'));
try {
  const [installed] = install(process.argv.slice(2), top);
  const program = join(installed!.inside, 'dist/cli.js');
  let failed = 0;
  for (const task of TASKS) {
    const wrong = await carriedOut(program, task);
    if (wrong.length > 0) failed += 1;
    console.log(
      `${wrong.length === 0 ? 'as it should be' : 'NOT'}  ${task.what}${wrong.map((each) => `\n    ${each}`).join('')}`,
    );
  }
  console.log(`${TASKS.length - failed} of ${TASKS.length} tasks`);
  process.exitCode = failed === 0 ? 0 : 1;
} finally {
  rmSync(top, { recursive: true });
}
