import { describe, expect, it } from 'vitest';
import { progress, timeWords } from '../../src/cli/progress.ts';

describe('how far work is', () => {
  it('is told on one line, at most ten times a second, with the time left', () => {
    let [told, now] = ['', 0];
    const screen = { isTTY: true, columns: 60, write: (text: string) => (told += text) };
    const shown = progress(false, screen, () => now);
    for (const [ms, done] of [
      [1000, 1],
      [1010, 2],
      [4000, 10],
      [20_000, 40],
    ] as const) {
      now = ms;
      shown.step(done, 40, 'jobs');
    }
    expect(told.split('\r').map((line) => line.trimEnd())).toEqual([
      '',
      '1 of 40 jobs, about 40 s left',
      '10 of 40 jobs, about 15 s left',
      '40 of 40 jobs',
    ]);
    shown.end();
    expect(told.endsWith('\r')).toBe(true);
  });

  it('is nothing where nobody looks on', () => {
    let told = '';
    for (const [quiet, isTTY] of [
      [true, true],
      [false, false],
    ] as const) {
      const shown = progress(quiet, { isTTY, write: (text) => (told += text) });
      shown.step(1, 2, 'jobs');
      shown.end();
    }
    expect(told).toBe('');
  });

  it('is as fine as it can be believed', () => {
    expect([400, 9000, 9500, 61_000, 91_000, 3_600_000].map(timeWords)).toEqual([
      '1 s',
      '9 s',
      'about 10 s',
      'about 65 s',
      'about 2 min',
      'about 60 min',
    ]);
  });
});
