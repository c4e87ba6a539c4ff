import { existsSync, mkdirSync, writeFileSync as put, rmSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { inFolder, type Ran } from './run.ts';

const ONE = 'mat: {outer: 11 x 14}\nopenings: [{artwork: 8 x 10}]\n';
const TWO = 'mat: {outer: 11 x 14, layers: [{}, {reveal: 1/4}]}\nopenings: [{artwork: 8 x 10}]\n';
const SHOP = 'machines: {laser: {kind: laser}}\n';
const SAID = 'is from an earlier run and does not belong to what was made now';

/** Commands one after the other, each on the job as it is then. */
type Command = (job: string, ...args: readonly string[]) => Promise<Ran>;

const within = (work: (command: Command, at: (name: string) => string) => Promise<void>) =>
  inFolder({ 'shop.yaml': SHOP }, (folder) =>
    work(
      (job, name, ...args) => {
        folder.put('job.yaml', job);
        return folder.run(name!, '{}/job.yaml', '--out', '{}/out', ...args);
      },
      (name) => folder.at(`out/${name}`),
    ),
  );

describe('what an earlier state of the job has left', () => {
  /** Command, its options, and a file that only the first state has. */
  const ROWS: readonly (readonly [args: readonly string[], file: string, first: string, second: string])[] = [
    [['pattern'], 'pattern-2.pdf', TWO, ONE],
    [['pattern', '--svg'], 'pattern-2.svg', TWO, ONE],
    [['cutfile', '--machine', 'laser'], 'cut-laser-2.svg', TWO, ONE],
    [['make'], 'job/pattern-2.pdf', TWO, ONE],
    [['make'], 'job/cut-laser-2.svg', TWO, ONE],
  ];

  it.each(ROWS)('is told by %j, of %s, and taken away where that is wished', async (args, file, first, second) =>
    within(async (command, at) => {
      const name = file.split('/').at(-1)!;
      await command(first, ...args);
      expect(existsSync(at(file))).toBe(true);
      const told = await command(second, ...args);
      expect(told.out).toContain(`${name} ${SAID}`);
      expect(told.out).toContain('--prune takes away what is as it was made: ');
      const json = JSON.parse((await command(second, ...args, '--json')).out);
      expect((json.jobs?.[0] ?? json).earlier).toContainEqual({ name, was: 'made', gone: false });
      const pruned = await command(second, ...args, '--prune');
      expect(pruned.out).toContain(`${name} was from an earlier run and was taken away`);
      expect([existsSync(at(file)), existsSync(at(file.replace('-2', '-1')))]).toEqual([false, true]);
      expect((await command(second, ...args)).out).not.toContain(name);
    }),
  );

  it('is told of formats that were not asked for again', () =>
    within(async (command, at) => {
      await command(ONE, 'ticket', '--svg');
      const pruned = await command(ONE, 'ticket', '--prune', '--quiet');
      expect([pruned.out, existsSync(at('ticket.svg')), existsSync(at('ticket.pdf'))]).toEqual(['', false, true]);
    }));

  it('stays where somebody has changed it, or nothing says that it is ours', () =>
    within(async (command, at) => {
      await command(TWO, 'make');
      put(at('job/pattern-2.pdf'), 'by hand');
      put(at('job/pattern-9.pdf'), 'mine');
      put(at('job/notes.pdf'), 'mine');
      const ran = await command(ONE, 'make', '--prune');
      expect(ran.out).toContain('pattern-2.pdf is from an earlier run, was changed since');
      expect(ran.out).toContain('pattern-2.svg was from an earlier run and was taken away');
      expect(ran.out).toContain('pattern-9.pdf does not belong to what was made now, and nothing says who made it');
      expect(ran.out).not.toContain('notes.pdf');
      const left = ['pattern-2.pdf', 'pattern-2.svg', 'pattern-9.pdf', 'notes.pdf', 'pattern-1.pdf'];
      expect(left.map((name) => existsSync(at(`job/${name}`)))).toEqual([true, false, true, true, true]);
    }));

  it('leaves what other commands made in the same folder', () =>
    within(async (command, at) => {
      await command(TWO, 'pattern');
      await command(TWO, 'ticket');
      await command(ONE, 'ticket', '--prune');
      expect(existsSync(at('pattern-2.pdf'))).toBe(true);
      await command(ONE, 'pattern', '--prune');
      expect([existsSync(at('pattern-2.pdf')), existsSync(at('ticket.pdf'))]).toEqual([false, true]);
    }));

  it('is never looked for outside of the folder, and no list but a whole one is believed', () =>
    within(async (command, at) => {
      await command(TWO, 'pattern');
      for (const list of [
        '{"made": {"../job.yaml": {"by": "pattern", "sha256": ""}, "pattern-2.pdf": {"by": "pattern"}}}',
        '{"made": 7}',
        '{',
        '[]',
      ]) {
        put(at('.matwright.json'), list);
        const ran = await command(ONE, 'pattern', '--prune');
        expect([list, ran.code, existsSync(at('pattern-2.pdf')), existsSync(at('../job.yaml'))]).toEqual([
          list,
          0,
          true,
          true,
        ]);
      }
      rmSync(at('.matwright.json'));
      mkdirSync(at('.matwright.json'));
      const barred = await command(ONE, 'pattern');
      expect([barred.code, barred.err]).toEqual([2, expect.stringContaining('.matwright.json is a folder')]);
    }));
});
