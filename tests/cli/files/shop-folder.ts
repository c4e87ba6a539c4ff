import { chmodSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeAll, beforeEach, expect } from 'vitest';
import { built } from '../../built.ts';
import { command, type Spawned } from '../spawned.ts';
import { put } from './shelf.ts';

export const JOB =
  'title: Tern\nmat: {outer: 16 x 20, layers: [{board: a}, {board: a, reveal: 1/4}]}\nopenings: [{artwork: 10 x 13}]\n';
export const SHOP = 'boards: {a: {name: Ash grey, sheets: [{size: 32 x 40, count: 9}]}}\n';
export const PLAN = ['stock', 'job.yaml', '--effort', '0.005'];

export const ROOT = process.getuid?.() === 0;
export const NOBODY = 65534;

export interface ShopFolder {
  /** Of the test that runs. */
  readonly path: () => string;
  readonly at: (name: string) => string;
  readonly text: (name: string) => string;
  /** A command of the program as it is shipped, run in the folder. */
  readonly inside: (args: readonly string[], more?: Parameters<typeof command>[1]) => Promise<Spawned>;
}

/** A new folder with a job and a shop for each test of a file; at its end nothing hidden is left in it. */
export function shopFolder(): ShopFolder {
  let folder = '';
  beforeAll(() => built(), 180_000);
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'matwright-'));
    chmodSync(folder, 0o755);
    put(folder, { 'job.yaml': JOB, 'shop.yaml': SHOP });
  });
  afterEach(() => {
    const names = readdirSync(folder, { recursive: true, encoding: 'utf8' });
    expect(names.filter((name) => name.includes('.matwright-'))).toEqual([]);
    rmSync(folder, { recursive: true, force: true });
  });
  const at = (name: string): string => join(folder, name);
  return {
    path: () => folder,
    at,
    text: (name) => readFileSync(at(name), 'utf8'),
    inside: (args, more = {}) => command(args, { cwd: folder, ...more }),
  };
}
