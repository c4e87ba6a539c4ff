import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../../src/cli/commands.ts';
import { run } from './run.ts';

const job = 'mat: {outer: 16 x 20}\nopenings: [{artwork: 10 1/2 x 13 1/2}]\n';

describe('the commands', () => {
  it('check prints sizes in plain words and in mm', async () => {
    const plain = await run(['check', '{}/job.yaml'], { 'job.yaml': job });
    expect(plain.code).toBe(0);
    expect(plain.out).toContain('16 × 20 in outside, 36 united inches');
    expect(plain.out).toContain('top 3 1/2 in, sides 3 in');
    const { out, err, code } = await run(['check', '{}/job.yaml', '--json'], { 'job.yaml': job });
    expect([code, err]).toEqual([0, '']);
    const [report] = JSON.parse(out).jobs;
    expect(report.outer).toEqual({ width: 406.4, height: 508 });
    expect(report.strokes).toHaveLength(4);
    for (const stroke of report.strokes) {
      expect(stroke).toMatchObject({ layer: 1, opening: 1, order: expect.any(Number), guide: expect.any(Number) });
      expect(Object.keys(stroke.start)).toEqual(['x', 'y']);
    }
  });

  it('pattern writes beside the job, whole files only, and replaces its own', async () => {
    const files = { 'job.yaml': job, 'mine.txt': 'kept' };
    const ran = await run(['pattern', '{}/job.yaml', '--svg'], files);
    expect(ran.code).toBe(0);
    expect(ran.made).toEqual(['job', 'job/pattern-1.pdf', 'job/pattern-1.svg']);
    expect(ran.out).toContain('written to {}/job');
  });

  it('pattern --json gives one document on standard output', async () => {
    const ran = await run(['pattern', '{}/job.yaml', '--json', '--out', '{}/out'], { 'job.yaml': job });
    const made = JSON.parse(ran.out);
    expect(made.files).toEqual(['pattern-1.pdf']);
    expect(made.board).toMatchObject({ width: 16 * 25.4, height: 20 * 25.4 });
    for (const page of made.pages) expect(page).toMatchObject({ file: 'pattern-1.pdf', name: expect.any(String) });
    expect(ran.made).toEqual(['out', 'out/pattern-1.pdf']);
  });

  it('--quiet says nothing', async () => {
    const ran = await run(['pattern', '{}/job.yaml', '--quiet'], { 'job.yaml': job });
    expect([ran.code, ran.out, ran.err]).toEqual([0, '', '']);
  });

  it('a character that no font has is named in a warning and the pattern is made all the same', async () => {
    const ran = await run(['pattern', '{}/job.yaml'], { 'job.yaml': `title: "Heron 鷺"\n${job}` });
    expect(ran.code).toBe(0);
    expect(ran.err).toMatch(/job\.yaml:1:8 {2}title {2}warning: no font has the character 鷺 \(U\+9DFA\)/u);
  });

  for (const { name } of COMMANDS) {
    it(`${name} --help shows an example`, async () => {
      const ran = await run([name, '--help']);
      expect(ran.code).toBe(0);
      expect(ran.out).toMatch(new RegExp(`Examples?:\\n +matwright ${name} `, 'u'));
    });
  }
});
