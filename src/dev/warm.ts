import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Runs of the commands, such as a user makes first; OUT stands for a folder that goes away again. */
const RUNS: readonly (readonly string[])[] = [
  ['--help'],
  ['check', 'examples/heron/job.yaml'],
  ['pattern', 'examples/heron/job.yaml', '--svg', '--out', 'OUT'],
  ['pattern', 'examples/heron/job.yaml', '--out', 'OUT'],
];

/**
 * Writes a V8 code cache beside each bundle, with the functions in it that a run called. `launcher` is the text of the
 * launcher that does so when it exits. A run that fails leaves its caches out: the command works without them.
 */
export function makeCaches(top: string, launcher: string): void {
  const out = mkdtempSync(join(tmpdir(), 'matwright-'));
  const file = join(top, 'dist/caches.js');
  try {
    writeFileSync(file, launcher);
    for (const run of RUNS) {
      const args = run.map((arg) => (arg === 'OUT' ? out : arg));
      const { status, stderr } = spawnSync(process.execPath, [file, ...args], { cwd: top, encoding: 'utf8' });
      if (status !== 0) process.stderr.write(`no code cache from: ${run.join(' ')}\n${stderr}`);
    }
  } finally {
    rmSync(file, { force: true });
    rmSync(out, { recursive: true, force: true });
  }
}
