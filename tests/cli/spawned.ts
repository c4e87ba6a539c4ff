import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { built } from '../built.ts';

export interface Spawned {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly out: string;
  readonly err: string;
}

export interface Surroundings {
  readonly cwd?: string;
  /** Where standard output goes instead of to the test: an open file. */
  readonly stdout?: number;
  /** The user whom the process runs as; only root may choose. */
  readonly uid?: number;
  readonly limitMs?: number;
}

/** A process in a group of its own, which is killed as a whole when its time is up. */
export function spawned(args: readonly string[], surroundings: Surroundings = {}): Promise<Spawned> {
  const { cwd, stdout = 'pipe', uid, limitMs = 60_000 } = surroundings;
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, {
      cwd,
      detached: true,
      stdio: ['ignore', stdout, 'pipe'],
      ...(uid === undefined ? {} : { uid, gid: uid }),
    });
    let [out, err] = ['', ''];
    child.stdout?.on('data', (chunk) => (out += String(chunk)));
    child.stderr?.on('data', (chunk) => (err += String(chunk)));
    const timer = setTimeout(() => child.pid !== undefined && process.kill(-child.pid, 'SIGKILL'), limitMs);
    child.on('error', reject);
    child.on('close', (code, signal) => {
      clearTimeout(timer);
      resolve({ code, signal, out, err });
    });
  });
}

/** A command of the program as it is shipped. */
export async function command(args: readonly string[], surroundings: Surroundings = {}): Promise<Spawned> {
  return spawned([join(await built(), 'cli.js'), ...args], surroundings);
}
