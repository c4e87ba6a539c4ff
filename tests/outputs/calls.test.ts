import { beforeAll, describe, expect, it } from 'vitest';
import type { Solved } from '../../src/index.ts';
import * as library from '../../src/index.ts';

const JOB = 'units: mm\nmat: {outer: 300 x 400}\nopenings: [{artwork: 100 x 150}]\n';

/** As from a caller without types. */
const untyped = <T>(value: unknown): T => JSON.parse(JSON.stringify({ value })).value;

let solved: Solved;
beforeAll(() => {
  const made = library.solveJob(JOB);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  solved = made.value;
});

type Call = () => library.Result<unknown> | Promise<library.Result<unknown>>;

/** Wrong in every way in which a call can be: of another kind, too few, too many, misspelt, nothing at all. */
const CALLS: readonly (readonly [what: string, call: Call, words: string])[] = [
  ['a shop that is a text', () => library.readShop(untyped('boards: {}')), '{text, file}'],
  ['a shop that is nothing', () => library.readShop(untyped(undefined)), '{text, file}'],
  ['a shop without a file', () => library.readShop(untyped({ text: '' })), '{text, file}'],
  ['a job that is nothing', () => library.solveJob(untyped(undefined)), 'jobText is to be text, not undefined'],
  ['a job that is a list', () => library.solveJob(untyped([JOB])), 'jobText is to be text'],
  ['options that are nothing', () => library.solveJob(JOB, untyped(null)), 'options is to be an object, not null'],
  ['a misspelt option', () => library.solveJob(JOB, untyped({ shp: {} })), 'options has no key shp'],
  ['a shop in words', () => library.solveJob(JOB, untyped({ shop: 'shop.yaml' })), 'options.shop is to be'],
  ['a change in words', () => library.solveLoading(JOB, untyped({ change: 'a=b' })), 'options.change is to be'],
  ['a build of nothing', () => library.build(untyped(undefined)), 'jobText is to be text'],
  ['a paper that is a number', () => library.build(JOB, untyped({ paper: 4 })), 'options.paper is to be text, not 4'],
  ['an old option', () => library.build(JOB, untyped({ svg: true })), 'options has no key svg'],
  ['an odd extent', () => library.build(JOB, untyped({ extent: 'half' })), 'whole or corners'],
  ['documents in words', () => library.build(JOB, untyped({ documents: 'ticket' })), 'a list of texts'],
  ['an unknown document', () => library.build(JOB, untyped({ documents: ['tickte'] })), 'no output "tickte"'],
  ['an unknown output', () => library.make(untyped<'ticket'>('tickte'), { jobs: [solved] }), 'no output "tickte"'],
  [
    'an output that is nothing',
    () => library.make(untyped<'ticket'>(undefined), { jobs: [solved] }),
    'no output "undefined"',
  ],
  ['an inherited name', () => library.make(untyped<'ticket'>('toString'), { jobs: [solved] }), 'no output "toString"'],
  ['a ticket of no job', () => library.make('ticket', { jobs: [] }), 'one job or more, not of none'],
  ['a pattern of two', () => library.make('pattern', { jobs: [solved, solved] }), 'one job, not of 2'],
  ['work that is a list', () => library.make('ticket', untyped([])), 'work is to be an object'],
  ['work without jobs', () => library.make('ticket', untyped({})), 'work.jobs is to be a list of solved jobs'],
  ['jobs in words', () => library.make('ticket', untyped({ jobs: [JOB] })), 'work.jobs is to be a list of solved jobs'],
  ['a wish of another kind', () => library.make('labels', { jobs: [solved] }, untyped({ rows: '8' })), 'a number'],
  ['one length of two', () => library.make('labels', { jobs: [solved] }, untyped({ gap: [1] })), 'two lengths'],
  ['a jig without a name', () => library.make('jig', { jobs: [] }), 'there is no jig ""'],
  [
    'pictures in words',
    () => library.make('proof', { jobs: [solved] }, {}, untyped({ pictures: 'a.png' })),
    'a function',
  ],
  ['nothing to prepare', () => library.prepare('stock', untyped(null)), 'work is to be an object, not null'],
  ['nothing to write', () => library.write(untyped(undefined)), 'something that prepare has made'],
  ['a record to write', () => library.write(untyped({ id: 'ticket' })), 'something that prepare has made'],
  ['everything of nothing', () => library.everything(untyped(undefined), 0), 'a solved job'],
  ['readings of nothing', () => library.calibrate(untyped(undefined)), 'request is to be an object'],
  ['readings without a text', () => library.calibrate(untyped({ kind: 'head' })), 'request.text is to be text'],
  [
    'readings of an odd tool',
    () => library.calibrate(untyped({ kind: 'heads', text: '', file: 'r.yaml', date: '' })),
    'request.kind is to be one of some words',
  ],
  ['a plan of nothing', () => library.planStock(untyped(undefined)), 'input is to be an object'],
  [
    'booking nothing',
    () => library.bookPlan({ text: '', file: 'shop.yaml' }, untyped({}), ''),
    'a plan, as the record',
  ],
  ['noting a plan’s number', () => library.notePlan(undefined, untyped('4127-0936'), ''), 'a plan, as the record'],
  ['cutting in no shop', () => library.cutPlan(untyped(undefined), undefined, '4127-0936', ''), '{text, file}'],
  ['taking back by a number', () => library.undoPlan({ text: '', file: 'shop.yaml' }, undefined, untyped(41)), 'text'],
  ['cuts of nothing', () => library.cutSequence(untyped(undefined)), 'a plan of cuts'],
  ['settings of one job’s strokes', () => library.sharedSettings(untyped([{}])), 'a list of strokes for each job'],
  ['the work of one job without a list', () => library.orderOfWork(untyped({})), 'a list of solved jobs'],
  ['reasons of nothing', () => library.reasons(untyped(undefined)), 'a job that was read'],
  ['a face of nothing', () => library.face(untyped(undefined)), 'a job that was solved'],
  ['a face of a text', () => library.faceSvg(untyped(JOB)), 'a job that was solved'],
  [
    'a table of nothing',
    () => library.jobsFromTable(untyped(undefined), { text: JOB, file: 'a.yaml' }),
    '{text, file}',
  ],
  ['a template of nothing', () => library.jobsFromTable({ text: '', file: 'a.csv' }, untyped({})), 'template is to be'],
  ['a row of no table', () => library.atCells(untyped({}), [], 'a.yaml'), 'a row that jobsFromTable has made'],
  ['a table of texts', () => library.tableFromJobs(untyped([JOB])), 'a list of texts with the names of their files'],
  ['a list of nothing', () => library.readDayList(untyped(undefined)), '{text, file}'],
  ['a mark that is none', () => library.markDayList('', [], untyped('sold'), undefined), 'mark is to be one of'],
  ['rows of texts', () => library.dayRows(untyped([JOB]), new Map()), 'a list of jobs with files and titles'],
  ['a limit in words', () => library.everything(solved, 0, {}, {}, untyped({ sheets: 'few' })), 'a number'],
  ['a paper of nothing', () => library.findPaper(untyped(undefined)), 'text is to be text'],
  ['a paper in an odd unit', () => library.findPaper('a4', untyped({ unit: 'ft' })), 'in, mm or cm'],
  ['an odd schema', () => library.jsonSchema(untyped('jobs')), 'did you mean job?'],
  ['a field of no text', () => library.setField(untyped(undefined), ['title'], 'Heron'), 'text is to be text'],
  ['a field without a path', () => library.clearField(JOB, untyped('title')), 'keys and places in lists'],
];

describe('a wrong call is a problem that says what is wrong, and throws nothing', () => {
  it.each(CALLS)('%s', async (_, call, words) => {
    const made = await call();
    expect(made.ok).toBe(false);
    const problems = made.ok ? [] : made.problems;
    const codes = ['call-wrong', 'output-unknown', 'output-jobs', 'jig-unknown', 'field-not-editable'];
    expect(problems.every(({ code, severity }) => codes.includes(code) && severity === 'error')).toBe(true);
    expect(problems.map(({ message, hint }) => `${message}; ${hint}`).join('\n')).toContain(words);
  });

  it('every function of the face is among them', () => {
    const functions = Object.entries(library).flatMap(([name, value]) => (typeof value === 'function' ? [name] : []));
    const tried = CALLS.map(([, call]) => call.toString()).join('\n');
    // What hands a DOM in gives nothing back, what loads a writer takes nothing, and a problem is shown as it is.
    const others = ['buildSvgIn', 'loadSvg', 'showProblem'];
    expect(functions.filter((name) => !others.includes(name) && !tried.includes(`.${name}(`))).toEqual([]);
  });
});
