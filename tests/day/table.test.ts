import { describe, expect, it } from 'vitest';
import {
  atCells,
  jobsFromTable,
  type Problem,
  type Source,
  showProblem,
  solveJob,
  tableFromJobs,
} from '../../src/index.ts';

/** The linocuts of the travelling show. */
const TEMPLATE = `# A double mat.
title: Print
units: in
mat:
  outer: 16 x 20 # of the frames
  layers: [{board: {thickness: 1.4 mm}}, {board: {thickness: 1.4 mm}, reveal: 1/4}]
openings:
  - {artwork: 10 x 13, overlap: 1/4}
`;
const template: Source = { text: TEMPLATE, file: 'double.yaml' };

async function jobs(text: string, over = template) {
  const made = await jobsFromTable({ text, file: 'prints.csv' }, over);
  if (!made.ok) throw new Error(made.problems.map(showProblem).join('\n'));
  return made.value;
}

async function refused(text: string, over = template): Promise<readonly unknown[]> {
  const made = await jobsFromTable({ text, file: 'prints.csv' }, over);
  return (made.ok ? made.value.problems : made.problems).map(({ code, line, column }) => [code, line, column]);
}

describe('a table of jobs', () => {
  it('puts the values of a row into the places of the template, and leaves all else as it is', async () => {
    const { jobs: made, problems } = await jobs(
      'Title,Artwork,number\n"Heron, low water",10 1/2 x 13 1/2,41\nTerns,,\n',
    );
    expect(problems).toEqual([]);
    expect(made.map(({ name, row }) => [name, row])).toEqual([
      ['heron-low-water', 2],
      ['terns', 3],
    ]);
    expect(made[0]!.text).toBe(
      `${TEMPLATE.replace('title: Print', 'title: "Heron, low water"').replace('artwork: 10 x 13', 'artwork: 10 1/2 x 13 1/2')}number: 41\n`,
    );
    expect(made[1]!.text).toBe(TEMPLATE.replace('title: Print', 'title: Terns'));
    for (const { text } of made) expect(solveJob(text)).toMatchObject({ ok: true });
  });

  it('is the same with commas, semicolons, and the tabs of a spreadsheet, with any ends of lines', async () => {
    const rows = [
      ['title', 'mat.outer', 'openings[0].artwork', 'mat.layers[1].reveal'],
      ['Heron', '11 x 14', '8" x 10"', '3/8'],
      ['Terns', '16 x 20', '[9, 12]', ''],
    ];
    const written = [',', ';', '\t'].map((sign) => rows.map((row) => row.join(sign)));
    written[0]![2] = 'Terns,16 x 20,"[9, 12]",';
    const [commas, ...others] = await Promise.all(
      written.flatMap((lines) => [lines.join('\n'), `\ufeff${lines.join('\r\n')}\r\n\r\n`]).map((text) => jobs(text)),
    );
    for (const other of others) expect(other).toEqual(commas);
    expect(commas!.jobs[0]!.text).toContain('{board: {thickness: 1.4 mm}, reveal: 3/8}');
  });

  it('takes out what a hyphen stands for, and keeps digits that begin with a nought', async () => {
    const { jobs: made } = await jobs('number,title,overlap,float\n007,Heron,-,1/4\n8,Terns,,\n', {
      ...template,
      text: TEMPLATE.replace('overlap: 1/4', 'overlap: 1/4, float: 0'),
    });
    expect(made[0]!.text).toContain('- {artwork: 10 x 13, float: 1/4}');
    expect(made[0]!.text).toContain('number: "007"');
    expect(made[1]!.text).toContain('overlap: 1/4, float: 0');
    expect(made[1]!.text).toContain('number: 8');
  });

  it('writes into JSON as into YAML', async () => {
    const json = '{"title": "Print", "mat": {"outer": "16 x 20"}, "openings": [{"size": "10 x 12"}]}';
    const { jobs: made } = await jobs('title,size,count\n"Heron ""low"" #2",9 x 12,3\n', {
      text: json,
      file: 'one.json',
    });
    expect(JSON.parse(made[0]!.text)).toEqual({
      title: 'Heron "low" #2',
      mat: { outer: '16 x 20' },
      openings: [{ size: '9 x 12' }],
      count: 3,
    });
  });

  it('says which row and which column is wrong', async () => {
    expect(await refused('title,board\nHeron,bone\n')).toEqual([['table-column-which', 1, 2]]);
    expect(await refused('title,ti tle\nHeron,bone\n')).toEqual([['table-column', 1, 2]]);
    expect(await refused('title,TITLE,file,File\nHeron,bone,a,b\n')).toEqual([
      ['table-column-twice', 1, 2],
      ['table-column-twice', 1, 4],
    ]);
    expect(await refused('title,count\n')).toEqual([['table-empty', undefined, undefined]]);
    expect(await refused('title,count\nHeron,1,2\n')).toEqual([['table-row', 2, 3]]);
    expect(await refused('title,count\n"Heron,1\n')).toEqual([['table-quotes', 2, undefined]]);
    expect(await refused('file,count\na,1\nA,2\n')).toEqual([['table-name-twice', 3, 1]]);
    expect(await refused(`title\n${'a\n'.repeat(10_001)}`)).toEqual([['table-long', undefined, undefined]]);
    expect(await refused('title,mat.outer.x\nHeron,1\nTerns,\n')).toEqual([['field-not-editable', 2, 2]]);
    expect(await refused('title\nHeron\n', { ...template, text: 'title: [' })).toHaveLength(1);
  });

  it('puts the problems of a solved row back into the table', async () => {
    const { jobs: made } = await jobs(
      'title,artwork,mat.layers[1].reveal,framed\nHeron,10 x,1/4,yes\nTerns,10 x 30,,yes\n',
    );
    const told = await Promise.all(
      made.map(async (job): Promise<readonly Problem[]> => {
        const solved = solveJob(job.text, { file: `${job.name}.yaml` });
        const put = await atCells(job, solved.ok ? [] : solved.problems, `${job.name}.yaml`);
        return put.ok ? put.value : put.problems;
      }),
    );
    const lines = told.flat().map(showProblem);
    expect(lines[0]).toMatch(/^prints\.csv:2:2 {2}openings\[0\]\.artwork {2}/u);
    // A heading that is no key is the same for every row.
    expect(lines.filter((line) => line.startsWith('prints.csv:1:4  framed  '))).toHaveLength(2);
    expect(new Set(lines.filter((line) => line.includes('framed'))).size).toBe(1);
  });
});

describe('jobs as a table', () => {
  const one = { text: TEMPLATE, file: 'prints/heron.yaml' };
  const two = {
    text: TEMPLATE.replace('title: Print', 'title: "-1, or \\"so\\""')
      .replace(', overlap: 1/4', '')
      .replace('units: in\n', 'units: in\ncount: 2\n'),
    file: 'prints/terns.yaml',
  };

  it('come out as they were when the table is read again', async () => {
    const written = await tableFromJobs([one, two]);
    if (!written.ok) throw new Error('not written');
    expect(written.value.table.split('\n')[0]).toBe('file,title,openings[0].overlap,count');
    const { jobs: made } = await jobs(written.value.table, { text: written.value.template, file: 'heron.yaml' });
    expect(made.map(({ name }) => name)).toEqual(['heron', 'terns']);
    expect(made[0]!.text).toBe(TEMPLATE);
    const data = (text: string) => {
      const solved = solveJob(text);
      return solved.ok ? solved.value.job : solved.problems;
    };
    expect(data(made[1]!.text)).toEqual(data(two.text));
  });

  it('are refused where one is built otherwise', async () => {
    const single = { text: TEMPLATE.replace(/, \{board[^}]*\}, reveal: 1\/4\}/u, ''), file: 'single.yaml' };
    const written = await tableFromJobs([one, single]);
    expect(written).toMatchObject({ ok: false, problems: [{ code: 'table-unlike', file: 'single.yaml' }] });
    expect(await tableFromJobs([])).toMatchObject({ ok: false, problems: [{ code: 'table-empty' }] });
  });
});
