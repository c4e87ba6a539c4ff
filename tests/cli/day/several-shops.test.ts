import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { put } from '../files/shelf.ts';
import { fromSources } from '../program.ts';

const JOB = 'units: mm\nmat: {outer: 120 x 150}\nopenings: [{size: 60 x 80}]\nmake: [labels]\n';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'matwright-'));
  put(folder, { 'a/one.yaml': JOB, 'a/shop.yaml': 'units: mm\n', 'b/two.yaml': JOB, 'b/shop.yaml': 'units: mm\n' });
});
afterEach(() => {
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true, force: true });
});

async function said(...jobs: readonly string[]): Promise<string> {
  let all = '';
  for (const stream of [process.stdout, process.stderr])
    vi.spyOn(stream, 'write').mockImplementation((text) => {
      all += String(text);
      return true;
    });
  const names = jobs.map((name) => join(folder, name));
  await fromSources(['make', ...names, '--out', join(folder, 'out')]);
  return all;
}

describe('a day', () => {
  it('of several shops has no plan of their boards together, and says so', async () => {
    expect(await said('a/one.yaml', 'b/two.yaml')).toContain('left out: the jobs are of several shops');
    expect(await said('a/one.yaml')).not.toContain('several shops');
  });

  it('tells of a job that is not there, and makes the others', async () => {
    const all = await said('a/one.yaml', 'a/none.yaml');
    expect(all).toContain('none.yaml  there is no such job');
    expect(readdirSync(join(folder, 'out/one'))).toContain('labels.pdf');
  });
});
