import { describe, expect, it } from 'vitest';
import { inFolder } from './run.ts';

const job = (title: string, more: string): string =>
  `title: ${title}\n${more}units: mm\nmat: {outer: 120 x 150}\nopenings: [{size: 60 x 80}]\nmake: [ticket]\n`;
const FILES = {
  'heron.yaml': job('Heron', 'number: 41\ndue: 2031-03-14\n'),
  'terns.yaml': job('Terns', 'number: 42\ncustomer: Print Room\n'),
};

describe('day', () => {
  it('shows the jobs, notes what was done with them, and takes it back', () =>
    inFolder(FILES, async ({ run, text }) => {
      expect((await run('day', '--in', '{}')).out.split('\n')[1]).toMatch(/^41 {6}Heron +2031-03-14$/u);
      const cut = await run('day', 'cut', '42', 'heron', '--in', '{}', '--on', '2031-03-12');
      expect([cut.code, cut.err, cut.out]).toEqual([0, '', expect.stringMatching(/Terns +Print Room +2031-03-12/u)]);
      expect(text('day.yaml').split('\n').slice(1)).toEqual([
        'heron.yaml: {cut: 2031-03-12}',
        'terns.yaml: {cut: 2031-03-12}',
        '',
      ]);
      await run('day', 'cut', 'terns.yaml', '--undo', '--in', '{}');
      const { jobs } = JSON.parse((await run('day', '--in', '{}', '--json')).out);
      expect(jobs.map(({ number, cut: day }: { number: string; cut?: string }) => [number, day])).toEqual([
        ['41', '2031-03-12'],
        ['42', undefined],
      ]);
    }));

  it('is told by make what it made, where there is a list', () =>
    inFolder(FILES, async ({ run, put, text, at }) => {
      await run('make', '{}', '--out', at('out'));
      expect(await run('day', '--in', '{}').then(({ out }) => out)).not.toMatch(/\d{4}-\d\d-\d\d +\d{4}/u);
      put('day.yaml', '# ours\nheron.yaml: {made: 2031-03-01}\n');
      await run('make', '{}', '--out', at('out'), '--force');
      expect(text('day.yaml')).toMatch(
        /^# ours\nheron\.yaml: \{made: 2031-03-01\}\nterns\.yaml: \{made: \d{4}-\d\d-\d\d\}\n$/u,
      );
    }));

  it('says what it cannot do', () =>
    inFolder({ ...FILES, 'bad.yaml': 'openings: 3\n' }, async ({ run, put }) => {
      for (const [args, words] of [
        [['cutt', '41'], 'cutt: did you mean cut?'],
        [['cut'], 'say which jobs'],
        [['cut', '43'], '43: no job here has that number'],
        [['cut', '41', '--on', 'today'], '--on today: write year-month-day'],
      ] as const) {
        const ran = await run('day', ...args, '--in', '{}');
        expect([ran.code, ran.err]).toEqual([2, expect.stringContaining(words)]);
      }
      const listed = await run('day', '--in', '{}');
      expect([listed.code, listed.err]).toEqual([2, expect.stringContaining('bad.yaml:1:11')]);
      put('day.yaml', 'heron.yaml: {sold: 2031-03-01}\n');
      const wrong = await run('day', 'cut', '41', '--in', '{}', '--json');
      expect([wrong.code, JSON.parse(wrong.out).problems[0]]).toMatchObject([2, { code: 'day-list', line: 1 }]);
    }));
});

describe('table', () => {
  it('writes jobs as rows, from which make makes the same', () =>
    inFolder(FILES, async ({ run, text, at }) => {
      const ran = await run('table', at('heron.yaml'), at('terns.yaml'), '--out', at('prints.csv'));
      expect([ran.code, ran.out]).toEqual([0, '2 jobs written to {}/prints.csv, over {}/prints-template.yaml\n']);
      expect(text('prints.csv').split('\n')).toEqual([
        'file,number,title,customer,due',
        'heron,41,Heron,-,2031-03-14',
        'terns,42,Terns,Print Room,-',
        '',
      ]);
      const table = ['--table', at('prints.csv'), '--template', at('prints-template.yaml')];
      expect((await run('make', ...table, '--out', at('rows'))).code).toBe(0);
      await run('make', at('heron.yaml'), at('terns.yaml'), '--out', at('files'));
      for (const name of ['heron/ticket.pdf', 'terns/ticket.pdf', 'tickets.pdf'])
        expect([name, text(`rows/${name}`)]).toEqual([name, text(`files/${name}`)]);
      const again = await run('table', at('heron.yaml'), '--out', at('prints.csv'));
      expect([again.code, again.err]).toEqual([2, expect.stringContaining('is there already')]);
    }));
});
