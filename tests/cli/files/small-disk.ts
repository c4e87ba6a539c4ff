import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ROOT } from './shop-folder.ts';

const mount = (folder: string, ...options: readonly string[]): boolean =>
  spawnSync('mount', ['-t', 'tmpfs', ...options, 'none', folder]).status === 0;
const unmount = (folder: string): void => void spawnSync('umount', [folder]);

/** Whether small disks can be had: that wants root and mount. */
export const MOUNTS = ROOT && mountable();

function mountable(): boolean {
  const there = mkdtempSync(join(tmpdir(), 'matwright-'));
  const could = mount(there);
  if (could) unmount(there);
  rmSync(there, { recursive: true });
  return could;
}

/** A disk of its own in a folder; what is given takes it away again. */
export function mounted(folder: string, size: string): () => void {
  if (!mount(folder, '-o', `size=${size}`)) throw new Error(`no disk in ${folder}`);
  return () => unmount(folder);
}
