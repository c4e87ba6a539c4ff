import { describe, expect, it } from 'vitest';
import { FOUND } from './found.ts';
import { anyJob, random } from './generate.ts';
import { trial } from './trial.ts';

/** `npm run fuzz` tries as many as are asked for, from any seed. */
const COUNT = 10_000;

describe('jobs of no particular sense', () => {
  it.each(FOUND)('does no harm: %j', async (job) => {
    expect((await trial(job, true)).found).toEqual([]);
  });

  // A file for each thousand would start ten times; tests of a thousand let the worker breathe.
  it.each(Array.from({ length: COUNT / 1000 }, (_, i) => i + 1))(
    'thousand %i made by chance: solved or refused, each in its place, and no cut leaves its board',
    async (part) => {
      const next = random(20260301 + part);
      let [solved, strokes] = [0, 0];
      for (let i = 0; i < 1000; i++) {
        const job = anyJob(next);
        const tried = await trial(job, false);
        if (tried.found.length > 0) expect([job, tried.found]).toEqual([job, []]);
        if (tried.solved) solved++;
        strokes += tried.strokes;
      }
      expect(solved).toBeGreaterThan(100);
      expect(strokes).toBeGreaterThan(500);
    },
    60_000,
  );
});
