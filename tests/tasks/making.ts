import { JOB, PAIR, SHOP, type Task, task, words } from './task.ts';

const both = { files: { 'job.yaml': JOB, 'pair.yaml': PAIR } };
const shop = { files: { 'job.yaml': `${JOB}`, 'shop.yaml': SHOP } };

/** From a job to paper. */
export const MAKING: readonly Task[] = [
  task('see the sizes', 'check job.yaml', ['united inches', 'guide, in the order of work']),
  task('no guide for an oval', 'check job.yaml', ['sight'], {
    files: { 'job.yaml': 'mat: {outer: 16 x 20}\nopenings: [{shape: oval, artwork: 10 x 13}]\n' },
    never: ['guide, in the order'],
  }),
  task('sizes for a program', 'check job.yaml --json', ['"jobs": [', '"width": 406.4']),
  task('the same shape for two', 'check job.yaml pair.yaml --json', ['"jobs": [', '"shared"'], both),
  task('make the pattern', 'pattern job.yaml', ['written to job'], { made: ['job', 'job/pattern-1.pdf'] }),
  task('on A4', 'pattern job.yaml --paper a4', ['A4']),
  task('on a paper that there is not', 'pattern job.yaml --paper a44', ['--paper', 'did you mean a4?'], {
    code: 2,
    never: ['job.yaml:'],
    made: [],
  }),
  task('for a printer that there is not', 'pattern job.yaml --printer ofice', ['--printer'], {
    code: 2,
    never: ['job.yaml:'],
  }),
  task('as SVG too', 'pattern job.yaml --svg', ['pattern-1.svg'].slice(1), {
    made: ['job', 'job/pattern-1.pdf', 'job/pattern-1.svg'],
  }),
  task('as a picture', 'proof job.yaml --png --dpi 40', ['proof'], { made: ['job', 'job/proof.pdf', 'job/proof.png'] }),
  task('an option without effect', 'proof job.yaml --dpi 40', ['--dpi', 'no effect on pdf']),
  task('a format that there is not', 'pattern job.yaml --format pfd', ['did you mean pdf?'], { code: 2 }),
  task('quietly', 'pattern job.yaml --quiet', [], { never: ['written'] }),
  task('a pattern for a program', 'pattern job.yaml --json', ['"files": [', '"board"']),
  task('by the corners', 'pattern job.yaml --extent corners', ['written to job']),
  task('a ticket', 'ticket job.yaml --number 41', ['ticket.pdf']),
  task('tickets of two', 'ticket job.yaml pair.yaml', ['written to bench'], both),
  task('everything', 'make job.yaml', ['files in job']),
  task('everything of two', 'make job.yaml pair.yaml --out out', ['files in out/job', 'files in out/pair'], both),
  task('the plan of a day', 'stock job.yaml --effort 0.005', ['written to job'], shop),
  task('a file for a laser', 'cutfile job.yaml --machine laser', ['cut-laser-1.svg']),
  task('in a dialect that the format has not', 'cutfile job.yaml --machine laser --dialect r12', [
    '--dialect',
    'only on dxf',
  ]),
  task('the jigs', 'jig --list', ['printer', 'head']),
  task('a jig', 'jig printer --paper letter', ['jig-printer']),
  task('calibrate without readings', 'calibrate printer', ['name a file of readings'], { code: 2 }),
  task('calibrate what there is not', 'calibrate prnter', ['did you mean printer?'], { code: 2 }),
  task('over the job itself', 'pattern job.yaml --out job.yaml', ['is a file, not a folder'], { code: 2 }),
  {
    what: 'an older pattern of two layers',
    calls: ['new double --yes --out a.yaml', 'pattern a.yaml --out out', 'pattern job.yaml --out out'].map(words),
    files: { 'job.yaml': JOB },
    sees: ['pattern-2.pdf is from an earlier run'],
    made: ['a.yaml', 'out', 'out/pattern-1.pdf', 'out/pattern-2.pdf'],
  },
];
