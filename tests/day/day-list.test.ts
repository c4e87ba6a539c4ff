import { describe, expect, it } from 'vitest';
import { dayLines } from '../../src/day/list/rows.ts';
import { dayRows, markDayList, readDayList, showProblem } from '../../src/index.ts';

const LIST = `# Monday.
heron.yaml: {made: 2031-03-11} # for the show
a b/terns.yaml:
  made: 2031-03-11
  cut: 2031-03-12
`;

async function marked(
  text: string,
  ...args: readonly [readonly string[], 'made' | 'cut' | 'shelved', string | undefined]
) {
  const made = await markDayList(text, ...args);
  if (!made.ok) throw new Error(made.problems.map(showProblem).join('\n'));
  return made.value;
}
const read = async (text: string) => {
  const list = await readDayList({ text, file: 'day.yaml' });
  return list.ok ? Object.fromEntries(list.value) : list.problems.map(({ code, line, column }) => [code, line, column]);
};

describe('the list of a day', () => {
  it('is marked line by line, all else as it was written', async () => {
    expect(await marked(LIST, ['heron.yaml'], 'cut', '2031-03-12')).toBe(
      LIST.replace('{made: 2031-03-11}', '{made: 2031-03-11, cut: 2031-03-12}'),
    );
    const more = await marked('# Mine.\n', ['b.yaml', 'a: 1.yaml'], 'made', '2031-03-11');
    expect(await read(more)).toEqual({ 'a: 1.yaml': { made: '2031-03-11' }, 'b.yaml': { made: '2031-03-11' } });
    expect(more.split('\n')).toHaveLength(4);
    expect(await read(await marked(LIST, ['a b/terns.yaml', 'none.yaml'], 'cut', undefined))).toEqual({
      'heron.yaml': { made: '2031-03-11' },
      'a b/terns.yaml': { made: '2031-03-11' },
    });
  });

  it('says where it cannot be read', async () => {
    expect(await read('heron.yaml: {cutt: 2031-03-12}\nterns.yaml: {cut: 12.3.}\nx: 3\n')).toEqual([
      ['day-list', 1, 20],
      ['day-unreadable', 2, 19],
      ['day-list', 3, 4],
    ]);
    expect(await read('- heron\n')).toEqual([['day-list', 1, 1]]);
    expect(await read('')).toEqual({});
  });

  it('shows what is due first, then by number, and what is gone last', async () => {
    const jobs = [
      { file: 'a.yaml', title: 'A', number: '10' },
      { file: 'b.yaml', title: 'B', number: '9' },
      { file: 'heron.yaml', title: 'Heron', number: 'A-07', due: '2031-03-14', customer: 'Print Room' },
      { file: 'c.yaml', title: 'C', due: '2031-03-13' },
    ];
    const list = await readDayList({ text: LIST, file: 'day.yaml' });
    const rows = await dayRows(jobs, list.ok ? list.value : new Map());
    const all = rows.ok ? rows.value : [];
    expect(all.map(({ file }) => file)).toEqual(['c.yaml', 'heron.yaml', 'b.yaml', 'a.yaml', 'a b/terns.yaml']);
    expect(all[1]).toEqual({ ...jobs[2], made: '2031-03-11' });
    expect(dayLines(all)).toEqual([
      'number  title                  customer    due         made        cut         shelved',
      '        C                                  2031-03-13',
      'A-07    Heron                  Print Room  2031-03-14  2031-03-11',
      '9       B',
      '10      A',
      '        a b/terns.yaml (gone)                          2031-03-11  2031-03-12',
    ]);
  });
});
