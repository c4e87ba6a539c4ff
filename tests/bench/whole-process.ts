import { spawnSync } from 'node:child_process';
import { join } from 'node:path';

const TOP = join(import.meta.dirname, '../..');

/** Milliseconds and peak MiB of one whole process; the peak is told by the process itself as it ends. */
export function measured(args: readonly string[]): { readonly ms: number; readonly mib: number } {
  const tell = "process.on('exit',()=>process._rawDebug('peak '+process.resourceUsage().maxRSS))";
  const start = process.hrtime.bigint();
  const { status, stderr } = spawnSync(process.execPath, ['--import', `data:text/javascript,${tell}`, ...args], {
    cwd: TOP,
    encoding: 'utf8',
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  const ms = Number(process.hrtime.bigint() - start) / 1e6;
  if (status !== 0) throw new Error(`node ${args.join(' ')} ended with ${status}\n${stderr}`);
  return { ms, mib: Number(/peak (\d+)/.exec(stderr)?.[1]) / 1024 };
}
