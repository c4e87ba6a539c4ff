import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { FOUND } from './found.ts';
import { grammarJob, mutated, random } from './generate.ts';
import { trial } from './trial.ts';

describe('jobs of no particular sense', () => {
  it.each(FOUND)('does no harm: %j', async (job) => {
    expect((await trial(job, true)).found).toEqual([]);
  });

  it('a few hundred made by chance are solved or refused, each in its place', async () => {
    const next = random(20260301);
    const text = readFileSync('templates/single.yaml', 'utf8');
    let solved = 0;
    for (let i = 0; i < 300; i++) {
      const job = i % 3 === 0 ? mutated(text, next) : grammarJob(next);
      const tried = await trial(job, false);
      expect([job, tried.found]).toEqual([job, []]);
      if (tried.solved) solved++;
    }
    expect(solved).toBeGreaterThan(30);
  });
});
