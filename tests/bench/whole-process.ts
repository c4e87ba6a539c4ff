import { spawnSync } from 'node:child_process';
import { join } from 'node:path';

const TOP = join(import.meta.dirname, '../..');

/** Milliseconds, also of the processor by all its threads, and peak MiB of one whole process; what only it knows it tells as it ends. */
export function measured(args: readonly string[]): {
  readonly ms: number;
  readonly cpuMs: number;
  readonly mib: number;
} {
  const tell =
    "process.on('exit',()=>{const u=process.resourceUsage();process._rawDebug('peak '+u.maxRSS+' cpu '+(u.userCPUTime+u.systemCPUTime))})";
  const start = process.hrtime.bigint();
  const { status, stderr } = spawnSync(process.execPath, ['--import', `data:text/javascript,${tell}`, ...args], {
    cwd: TOP,
    encoding: 'utf8',
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  const ms = Number(process.hrtime.bigint() - start) / 1e6;
  if (status !== 0) throw new Error(`node ${args.join(' ')} ended with ${status}\n${stderr}`);
  const [, peak, cpu] = /peak (\d+) cpu (\d+)/.exec(stderr) ?? [];
  return { ms, cpuMs: Number(cpu) / 1000, mib: Number(peak) / 1024 };
}
