import { describe, expect, it } from 'vitest';
import { BAD_JOBS } from './bad-jobs.ts';
import { run } from './run.ts';

describe('wrong input: exit 2, the place, what to do, and nothing written', () => {
  it('knows at least forty kinds of it', () =>
    expect(new Set(BAD_JOBS.map((bad) => bad.what)).size).toBeGreaterThanOrEqual(40));

  for (const { what, job, shop, place, words } of BAD_JOBS) {
    it(what, async () => {
      const files = { 'job.yaml': job, 'shop.yaml': shop ?? '' };
      const ran = await run(
        ['pattern', '{}/job.yaml', '--out', '{}/out'],
        shop === undefined ? { 'job.yaml': job } : files,
      );
      expect(ran.code).toBe(2);
      expect(ran.made).toEqual([]);
      expect(ran.out).toBe('');
      const lines = ran.err.trim().split('\n');
      const told = lines.filter((line) => line.startsWith(`{}/${place}`));
      expect(told.length, ran.err.slice(0, 2000)).toBeGreaterThan(0);
      expect(
        told.some((line) => words.every((word) => line.includes(word))),
        ran.err.slice(0, 2000),
      ).toBe(true);
      for (const line of lines) {
        expect(line).toMatch(/^\{\}\/(job|shop)\.yaml:\d+:\d+ {2}/u);
        expect(line).not.toMatch(/\bat .*\.ts:|Error:/u);
        // What to do follows after a semicolon, or the message says what is allowed.
        expect(line.length).toBeGreaterThan(40);
      }
      const json = await run(['check', '{}/job.yaml', '--json'], shop === undefined ? { 'job.yaml': job } : files);
      expect(json.code === 2 || place.includes(':3:'), 'only paper is left to the pattern').toBe(true);
      if (json.code === 2) {
        const { problems } = JSON.parse(json.out) as { problems: { line: number; column: number; code: string }[] };
        expect(problems.length).toBeGreaterThan(0);
        for (const problem of problems) {
          expect(problem).toMatchObject({
            code: expect.stringMatching(/^[a-z]+(-[a-z]+)*$/u),
            line: expect.any(Number),
            column: expect.any(Number),
          });
        }
      }
    });
  }
});

describe('wrong calls', () => {
  const job = 'mat: {outer: 16 x 20}\nopenings: [{artwork: 10 x 12}]';
  const calls: readonly (readonly [string, readonly string[], string])[] = [
    ['no such job', ['check', '{}/jb.yaml'], 'there is no such job'],
    ['a folder as a job', ['check', '{}'], 'folder'],
    ['no such shop', ['check', '{}/job.yaml', '--shop', '{}/shp.yaml'], "no such shop's file"],
    ['no such command', ['chek', '{}/job.yaml'], 'did you mean check'],
    ['no such option', ['check', '{}/job.yaml', '--jsn'], '--jsn'],
    ['no job', ['check'], 'job'],
    ['an extent that is none', ['pattern', '{}/job.yaml', '--extent', 'edges'], 'corners'],
    ['a part that is none', ['pattern', '{}/job.yaml', '--show', 'cuts'], 'did you mean cut'],
    ['a printer that is none', ['pattern', '{}/job.yaml', '--printer', 'office'], 'office'],
    ['a paper that is none', ['pattern', '{}/job.yaml', '--paper', 'letr'], 'letter'],
    ['a paper that every object knows', ['pattern', '{}/job.yaml', '--paper', 'constructor'], 'not a known paper'],
    ['a date of two lines', ['proof', '{}/job.yaml', '--date', 'a\nb'], 'the date that was asked for'],
    ['no date', ['make', '{}/job.yaml', '--date', ''], 'the date that was asked for'],
    ['a number without end', ['ticket', '{}/job.yaml', '--number', '9'.repeat(99)], 'keep it to 24'],
    ['no number', ['stock', '{}/job.yaml', '--number', ''], 'the number that was asked for'],
    ['a file in the way of the folder', ['pattern', '{}/job.yaml', '--out', '{}/job.yaml'], 'not a folder'],
  ];
  for (const [what, args, words] of calls) {
    it(what, async () => {
      const ran = await run(args, { 'job.yaml': job });
      expect(ran.code).toBe(2);
      expect(ran.made).toEqual([]);
      expect(ran.err).toContain(words);
      expect(ran.err).not.toMatch(/\n {4}at /u);
    });
  }
});
