import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { asPeopleCount, findJobs } from '../../../src/cli/day/find.ts';

const JOB = 'mat: {outer: 11 x 14}\nopenings: [{artwork: 8 x 10}]\n';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'matwright-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const lay = (files: Readonly<Record<string, string>>): void => {
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
};
const found = async (...names: readonly string[]): Promise<readonly string[]> =>
  (await findJobs(names.map((name) => join(folder, name)))).map((file) => relative(folder, file));

describe('the jobs that are meant', () => {
  it('in a folder are all below it but what is none, in the order in which people count', async () => {
    lay({
      '10.yaml': JOB,
      '2.yml': JOB,
      'b/heron.json': '{"openings": []}',
      'b/shop.yaml': 'boards: {}\n',
      'b/day.yaml': 'heron: {}\n',
      'prints.csv': 'title\n',
      'readings.yaml': 'head: pull\n',
      '.hidden.yaml': JOB,
      '_old/a.yaml': JOB,
      'node_modules/a.yaml': JOB,
      // What make has left there.
      '2/manifest.json': '{}',
      '2/other.yaml': JOB,
    });
    const said = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
    try {
      expect(await found('.')).toEqual(['2.yml', '10.yaml', join('b', 'heron.json')]);
      expect(said.mock.calls.join('')).toMatch(/^matwright: .*readings\.yaml has neither openings nor a mat/u);
    } finally {
      said.mockRestore();
    }
  });

  it('are found by a pattern that no shell has written out, and none comes twice', async () => {
    lay({ 'monday/a.yaml': JOB, 'monday/b.yaml': JOB, 'monday/shop.yaml': '', 'tuesday/[x].yaml': JOB });
    expect(await found('monday/*.yaml', 'monday/b.yaml')).toEqual([join('monday', 'a.yaml'), join('monday', 'b.yaml')]);
    expect(await found('{monday,tuesday}/*')).toHaveLength(3);
    // A file that is called like a pattern is itself.
    expect(await found('tuesday/[x].yaml')).toEqual([join('tuesday', '[x].yaml')]);
    await expect(found('sunday/*.yaml')).rejects.toThrow('no job is called so');
  });

  it('follow links once, and are none in an empty folder', async () => {
    mkdirSync(join(folder, 'empty'));
    symlinkSync(folder, join(folder, 'empty', 'round'));
    await expect(found('empty')).rejects.toThrow('there are no jobs in it');
  });

  it('keep what is named by itself, shop or not', async () => {
    lay({ 'shop.yaml': '' });
    expect(await found('shop.yaml')).toEqual(['shop.yaml']);
    expect(await found('shop.yaml', 'no.yaml')).toEqual(['no.yaml']);
  });

  it('are in one order, whatever order they were found in', () => {
    const names = ['a10b', 'a9b', 'a9', 'a010', 'B', 'ä', 'a'];
    const sorted = [...names].sort(asPeopleCount);
    expect(sorted).toEqual(['B', 'a', 'a9', 'a9b', 'a010', 'a10b', 'ä']);
    expect([...names].reverse().sort(asPeopleCount)).toEqual(sorted);
  });
});
