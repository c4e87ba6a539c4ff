import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export const about = 'whole-process time of the commands against bare Node; goal 3.5 ×, aim 2.5 ×';
export const light = true;

const TOP = join(import.meta.dirname, '../..');

function milliseconds(args: readonly string[]): number {
  const start = process.hrtime.bigint();
  const { status, stderr } = spawnSync(process.execPath, args, { cwd: TOP, stdio: ['ignore', 'ignore', 'pipe'] });
  const taken = Number(process.hrtime.bigint() - start) / 1e6;
  if (status !== 0) throw new Error(`node ${args.join(' ')} ended with ${status}\n${stderr}`);
  return taken;
}

const at = (sorted: readonly number[], part: number): number => sorted[Math.floor((sorted.length - 1) * part)]!;

/** `[RUNS]`, 30 unless given. The commands take turns, so that whatever else the machine does meets them all. */
export function run([runs = '30']: readonly string[]): void {
  const out = mkdtempSync(join(tmpdir(), 'matwright-'));
  const cli = 'dist/cli.js';
  const job = 'examples/heron/job.yaml';
  const commands: Readonly<Record<string, readonly string[]>> = {
    'bare Node': ['-e', '0'],
    'matwright --help': [cli, '--help'],
    'matwright check': [cli, 'check', job],
    'matwright pattern': [cli, 'pattern', job, '--out', out],
    'matwright proof': [cli, 'proof', job, '--out', out],
    'matwright ticket': [cli, 'ticket', job, '--out', out],
    'matwright pattern --svg': [cli, 'pattern', job, '--svg', '--out', out],
  };
  const times = new Map(Object.keys(commands).map((name) => [name, [] as number[]]));
  try {
    for (let i = -2; i < Number(runs); i++) {
      for (const [name, args] of Object.entries(commands)) {
        const taken = milliseconds(args);
        // The first rounds only bring the files into the disk cache.
        if (i >= 0) times.get(name)!.push(taken);
      }
    }
  } finally {
    rmSync(out, { recursive: true });
  }
  let bare: number | undefined;
  for (const [name, taken] of times) {
    taken.sort((a, b) => a - b);
    const median = at(taken, 0.5);
    bare ??= median;
    const spread = `${at(taken, 0.1).toFixed(0)}–${at(taken, 0.9).toFixed(0)}`;
    console.log(
      `  ${name.padEnd(24)} ${median.toFixed(1).padStart(6)} ms  ${(median / bare).toFixed(2)} ×  (${spread} ms, ${runs} runs)`,
    );
  }
}
