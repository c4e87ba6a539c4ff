import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const JOB = 'examples/heron/job.yaml';

/**
 * Runs such as a user makes, by command; OUT stands for a folder that goes away again. Of a bundle that several runs
 * load, the last one counts. A command without any is asked for its help.
 */
const RUNS: Readonly<Record<string, readonly (readonly string[])[]>> = {
  new: [['--list']],
  check: [[JOB]],
  pattern: [
    [JOB, '--svg', '--out', 'OUT'],
    [JOB, '--out', 'OUT'],
  ],
  proof: [
    [JOB, '--svg', '--png', '--out', 'OUT'],
    [JOB, '--out', 'OUT'],
  ],
  ticket: [[JOB, '--out', 'OUT']],
  placement: [[JOB, '--out', 'OUT']],
  intake: [[JOB, '--out', 'OUT']],
  blanks: [[JOB, '--out', 'OUT']],
  labels: [[JOB, '--out', 'OUT']],
  stock: [[JOB, '--effort', '0.02', '--out', 'OUT']],
  jig: [['printer', '--out', 'OUT']],
  cutfile: ['dxf', 'hpgl', 'svg'].map((format) => [JOB, '--machine', 'laser', '--format', format, '--out', 'OUT']),
  make: [[JOB, '--out', 'OUT']],
  schema: [['job']],
};

/**
 * Writes a V8 code cache beside each bundle in `dist`, with the functions in it that a run called. `launcher` is the
 * text of the launcher that does so when it exits. A run that fails leaves its caches out: the command works without.
 */
export function makeCaches(top: string, dist: string, launcher: string, commands: readonly string[]): void {
  const out = mkdtempSync(join(tmpdir(), 'matwright-'));
  const file = join(dist, 'make-caches.js');
  try {
    writeFileSync(file, launcher);
    const runs = [['--help'], ...commands.flatMap((name) => (RUNS[name] ?? [['--help']]).map((run) => [name, ...run]))];
    for (const run of runs) {
      const args = run.map((arg) => (arg === 'OUT' ? out : arg));
      const { status, stderr } = spawnSync(process.execPath, [file, ...args], { cwd: top, encoding: 'utf8' });
      if (status !== 0) process.stderr.write(`no code cache from: ${run.join(' ')}\n${stderr}`);
    }
  } finally {
    rmSync(file, { force: true });
    rmSync(out, { recursive: true, force: true });
  }
}
