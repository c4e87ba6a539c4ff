import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Crew } from '../../../src/cli/day/crew.ts';
import { foldersOf } from '../../../src/cli/day/folders.ts';
import type { How } from '../../../src/cli/day/how.ts';
import { makeDay } from '../../../src/cli/day/make-day.ts';
import { readDay } from '../../../src/cli/day/read.ts';
import { work } from '../../../src/cli/day/work.ts';
import { atOnce } from '../../../src/cli/day/writer.ts';
import { put } from '../files/shelf.ts';

const SHOP = 'units: mm\nboards: {bone: {name: Bone, thickness: 1.4, sheets: [800 x 1000]}}\n';
const job = (width: number): string =>
  `units: mm\nmat: {outer: ${width} x 150, layers: [{board: bone}]}\nopenings: [{size: 60 x 80}]\nmake: [ticket]\n`;

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'matwright-'));
  put(folder, { 'shop.yaml': SHOP, 'one.yaml': job(120), 'two.yaml': job(130), 'three.yaml': job(140) });
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** What was asked for, in its order: `one.yaml`, or `stock of one.yaml two.yaml`; with the plan's bytes. */
async function day(hands: number): Promise<{ readonly asked: readonly string[]; readonly plan: Buffer }> {
  const asked: string[] = [];
  const base = (file: string): string => file.slice(file.lastIndexOf('/') + 1);
  const crew: Crew = {
    hands,
    run: (kind, task) => {
      if ('job' in task) asked.push(base(task.job.file));
      if ('papers' in task)
        asked.push(
          `${task.papers.map(({ output }) => output).join(' ')} of ${task.jobs.map(({ file }) => base(file)).join(' ')}`,
        );
      return work(kind, task);
    },
    close: async () => undefined,
  };
  const out = join(folder, 'out');
  const read = await readDay({ jobs: ['one', 'two', 'three'].map((name) => join(folder, `${name}.yaml`)) });
  const how: How = {
    out,
    options: {},
    version: '1',
    sheets: 200,
    force: false,
    verify: false,
    crew,
    progress: { step: () => undefined, end: () => undefined },
    stopped: () => false,
    writer: atOnce(false),
  };
  await makeDay(read.jobs, foldersOf(read.jobs, out), read.problems, how);
  return { asked, plan: readFileSync(join(out, 'stock.pdf')) };
}

const ALL = 'stock of one.yaml two.yaml three.yaml';

describe('a plan of a day’s boards', () => {
  it('is begun with the jobs where there are hands for it, once, and is the same', async () => {
    const alone = await day(1);
    expect(alone.asked.at(-1)).toBe('ticket labels stock of one.yaml two.yaml three.yaml');
    rmSync(join(folder, 'out'), { recursive: true });
    const two = await day(2);
    expect(two.asked.filter((what) => what.startsWith('stock'))).toEqual([ALL]);
    expect(two.asked.indexOf(ALL)).toBeLessThan(two.asked.indexOf('ticket labels of one.yaml two.yaml three.yaml'));
    expect(two.plan.equals(alone.plan)).toBe(true);
  });

  it('is made anew without the job that failed', async () => {
    put(folder, { 'three.yaml': job(20) });
    const { asked } = await day(2);
    expect(asked.filter((what) => what.startsWith('stock'))).toEqual([ALL, 'stock of one.yaml two.yaml']);
  });

  it('is not asked for where nothing has changed', async () => {
    await day(2);
    expect((await day(2)).asked).toEqual([]);
  });
});
