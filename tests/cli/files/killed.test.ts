import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { recover } from '../../../src/cli/files/recover.ts';
import { TOP } from '../../../src/dev/build.ts';
import { spawned } from '../spawned.ts';
import { contents, inFolder, NEW, OLD } from './shelf.ts';

const folder = mkdtempSync(join(tmpdir(), 'matwright-'));
const writer = join(folder, 'writer.mjs');

/** As the next run does, in a process that lives. */
async function next(top: string): Promise<readonly string[]> {
  const found = [...(await recover(join(top, 'shop'))), ...(await recover(join(top, 'out')))];
  return found.map(({ words }) => words);
}

describe('a process that is killed while it writes', () => {
  beforeAll(() =>
    build({
      entryPoints: [join(TOP, 'tests/cli/files/dying-writer.ts')],
      bundle: true,
      platform: 'node',
      format: 'esm',
      outfile: writer,
      logLevel: 'error',
    }),
  );
  afterAll(() => rmSync(folder, { recursive: true }));

  it('before any of its steps leaves all or nothing to the next one', async () => {
    const whole = await inFolder(OLD, (top) => spawned([writer, 'step', '-1', top]));
    const steps = Number(whole.out);
    expect([whole.code, steps > 60]).toEqual([0, true]);
    const seen = new Set<string>();
    // The last half: what comes before is all on the way to the first new file.
    for (let step = Math.floor(steps / 3); step < steps; step += 2) {
      await inFolder(OLD, async (top) => {
        const ran = await spawned([writer, 'step', String(step), top]);
        expect(ran.signal, ran.err).toBe('SIGKILL');
        await next(top);
        const now = contents(top);
        expect([OLD, NEW], `step ${step}`).toContainEqual(now);
        seen.add(now['shop/shop.yaml']!);
      });
    }
    expect([...seen].sort()).toEqual(['new shop', 'old shop']);
  }, 120_000);

  it('at any moment leaves one generation of files, whichever it was at', async () => {
    let middle = 0;
    for (let turn = 0; turn < 12; turn += 1) {
      await inFolder(OLD, async (top) => {
        const child = spawn(process.execPath, [writer, 'loop', top], { detached: true, stdio: 'ignore' });
        const closed = new Promise((resolve) => child.on('close', resolve));
        const shop = (): string => readFileSync(join(top, 'shop/shop.yaml'), 'utf8');
        for (let waited = 0; shop() === 'old shop' && waited < 20_000; waited += 5) await pause(5);
        await pause(1 + ((turn * 7) % 23));
        process.kill(-child.pid!, 'SIGKILL');
        await closed;
        const before = JSON.stringify(contents(top));
        await next(top);
        const now = contents(top);
        if (JSON.stringify(now) !== before) middle += 1;
        expect(shop()).toMatch(/^generation \d+$/u);
        expect(now).toEqual(Object.fromEntries(Object.keys(NEW).map((path) => [path, shop()])));
      });
    }
    // Most of its time it is writing: nearly every one was stopped in the middle.
    expect(middle).toBeGreaterThan(4);
  }, 120_000);
});
