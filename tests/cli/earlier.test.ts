import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { run } from './run.ts';

const ONE = 'mat: {outer: 11 x 14}\nopenings: [{artwork: 8 x 10}]\n';
const TWO = 'mat: {outer: 11 x 14, layers: [{}, {reveal: 1/4}]}\nopenings: [{artwork: 8 x 10}]\n';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'matwright-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const of = (command: string, job: string, ...more: readonly string[]) => {
  writeFileSync(join(folder, 'job.yaml'), job);
  return run([command, join(folder, 'job.yaml'), '--out', join(folder, 'out'), ...more]);
};
const there = (name: string): boolean => existsSync(join(folder, command(name)));
const command = (name: string): string => join('out', name);

describe('what an earlier state of the job has left', () => {
  it('is told by make, and taken away by --prune where the manifest lists it', async () => {
    await run(['make', write(TWO), '--out', join(folder, 'all')]);
    const out = join(folder, 'all', 'job');
    writeFileSync(join(out, 'pattern-9.pdf'), 'mine');
    writeFileSync(join(out, 'notes.pdf'), 'mine');
    const told = await run(['make', write(ONE), '--out', join(folder, 'all')]);
    expect(told.out).toContain('pattern-2.pdf is from an earlier run and does not belong to what was made now');
    expect(told.out).toContain('pattern-9.pdf is from an earlier run');
    expect(told.out).not.toContain('notes.pdf');
    await run(['make', write(TWO), '--out', join(folder, 'all')]);
    const pruned = await run(['make', write(ONE), '--out', join(folder, 'all'), '--prune']);
    expect(pruned.out).toContain('pattern-2.pdf is from an earlier run and was taken away');
    const left = ['pattern-2.pdf', 'pattern-2.svg', 'pattern-9.pdf', 'notes.pdf', 'pattern-1.pdf'];
    expect(left.map((name) => existsSync(join(out, name)))).toEqual([false, false, true, true, true]);
  });

  it('stays where no manifest says that it is ours', async () => {
    await of('pattern', TWO);
    const ran = await of('pattern', ONE, '--prune');
    expect(ran.out).toContain('pattern-2.pdf is from an earlier run and does not belong');
    expect(there('pattern-2.pdf')).toBe(true);
  });

  it('is never looked for outside of the folder', async () => {
    await of('pattern', TWO);
    writeFileSync(
      join(folder, 'out', 'manifest.json'),
      '{"files": ["../job.yaml", "pattern-2.pdf", "/etc/passwd", 7]}',
    );
    await of('pattern', ONE, '--prune');
    expect([there('pattern-2.pdf'), existsSync(join(folder, 'job.yaml'))]).toEqual([false, true]);
  });
});

function write(job: string): string {
  writeFileSync(join(folder, 'job.yaml'), job);
  return join(folder, 'job.yaml');
}
