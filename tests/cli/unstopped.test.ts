import { afterEach, describe, expect, it, vi } from 'vitest';
import { unstopped } from '../../src/cli/unstopped.ts';
import { run } from './run.ts';

const JOB = 'mat: {outer: 11 x 14}\nopenings: [{artwork: 8 x 10}]\n';

afterEach(() => {
  vi.restoreAllMocks();
  process.exitCode = undefined;
});

describe('Ctrl-C', () => {
  it('waits while files get their names, and then says that they have', async () => {
    let said = '';
    vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
      said += String(text);
      return true;
    });
    const made = await unstopped(async () => {
      process.emit('SIGINT');
      return 'all';
    });
    expect([made, process.exitCode]).toEqual(['all', 130]);
    expect(said).toContain('stopped when all files were written');
  });

  it('is listened for by no one when a command has ended, however it ended', async () => {
    for (const args of [
      ['pattern', '{}/job.yaml'],
      ['pattern', '{}/job.yaml', '--out', '{}/job.yaml'],
      ['stock', '{}/job.yaml', '--effort', '0.005'],
    ])
      await run(args, { 'job.yaml': JOB });
    expect(process.listenerCount('SIGINT')).toBe(0);
  });
});
