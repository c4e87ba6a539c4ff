import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const JOB = 'examples/heron/job.yaml';

/** Runs such as a user makes first; OUT stands for a folder that goes away again. The last run of a bundle counts. */
const RUNS: readonly (readonly string[])[] = [
  ['--help'],
  ['check', JOB],
  ['pattern', JOB, '--svg', '--out', 'OUT'],
  ['pattern', JOB, '--out', 'OUT'],
];

/**
 * Writes a V8 code cache beside each bundle in `dist`, with the functions in it that a run called. `launcher` is the
 * text of the launcher that does so when it exits. A run that fails leaves its caches out: the command works without.
 */
export function makeCaches(top: string, dist: string, launcher: string): void {
  const out = mkdtempSync(join(tmpdir(), 'matwright-'));
  const file = join(dist, 'make-caches.js');
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
