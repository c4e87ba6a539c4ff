import { describe, expect, it } from 'vitest';
import { run } from './run.ts';

const job = (outer: string, more = ''): string => `mat: {outer: ${outer}}\nopenings: [{size: 10 x 14}]\n${more}`;
const files = {
  'tern.yaml': job('16 x 20'),
  'heron.yaml': job('16 x 22'),
  'wren.yaml': job('19 x 23'),
};

describe('check of several jobs', () => {
  it('lists the settings that they share, with what each serves', async () => {
    // tern: sides and ends 3; heron: sides 3, ends 4; wren: 4 1/2 all round.
    const { out, code } = await run(['check', '{}/tern.yaml', '{}/heron.yaml', '{}/wren.yaml'], files);
    expect(code).toBe(0);
    const said = out.slice(out.indexOf('set the guide once'));
    expect(said.split('\n').map((line) => line.trim())).toEqual([
      'set the guide once for several jobs (sides named as from the face):',
      '3 in',
      expect.stringMatching(/^tern: (?:top mat (?:left|right|top|bottom)(?:, )?){4}$/),
      expect.stringMatching(/^heron: (?:top mat (?:left|right)(?:, )?){2}$/),
      '',
    ]);
  });

  it('has them in the JSON, jobs counted from 0 as they were given', async () => {
    const { out } = await run(['check', '{}/tern.yaml', '{}/heron.yaml', '--json'], files);
    const { jobs, shared } = JSON.parse(out);
    expect(jobs.map((each: { title: string }) => each.title)).toEqual(['tern', 'heron']);
    expect(shared).toHaveLength(1);
    expect(shared[0]).toMatchObject({ text: '3 in', sense: 'exact', guide: expect.closeTo(76.2, 9) });
    expect(shared[0].uses.map((use: { job: number }) => use.job)).toEqual([0, 0, 0, 0, 1, 1]);
    const one = JSON.parse((await run(['check', '{}/tern.yaml', '--json'], files)).out);
    expect(Object.keys(one)).toEqual(['jobs', 'shared']);
    expect(one.jobs).toHaveLength(1);
  });

  it('says so where they share none, and leaves out what is cut already', async () => {
    const none = await run(['check', '{}/tern.yaml', '{}/wren.yaml'], files);
    expect(none.out).toContain('no setting of the guide serves more than one');
    const cut = { ...files, 'tern.yaml': job('16 x 20', 'asCut: {openings: [{size: 10 x 14}]}\n') };
    const done = await run(['check', '{}/tern.yaml', '{}/heron.yaml'], cut);
    expect(done.out).toContain('no setting of the guide serves more than one');
    expect(done.out).toContain('cut already');
    expect(done.out).toContain('as cut: nothing is changed by it');
  });

  it('marks what was changed by what came off the cutter', async () => {
    const wide = { 'tern.yaml': job('16 x 20', 'asCut: {outer: 16 1/32 x 20}\n') };
    const plain = await run(['check', '{}/tern.yaml'], wide);
    expect(plain.out).toMatch(/left {4}3 in full, changed from 3 in/);
    expect(plain.out).toContain('outer width: 16 1/32 in, planned 16 in');
    const [report] = JSON.parse((await run(['check', '{}/tern.yaml', '--json'], wide)).out).jobs;
    expect(report.asCut.changed[0]).toEqual({ what: 'outer width', from: 406.4, to: 407.194 });
    expect(report.strokes.filter((s: { changed?: boolean }) => s.changed === true)).toHaveLength(2);
  });
});
