import { JOB, SHOP, type Task, task, wrong } from './task.ts';

const O = 'openings:\n  - artwork: 10 x 13\n';
const outer = (size: string) => `mat: {outer: ${size}}\n${O}`;
const reads = (what: string, size: string): Task =>
  task(what, 'check job.yaml', ['16 × 20 in outside'], { files: { 'job.yaml': outer(size) } });

/** What is written, and what is said of it. */
export const BEING_UNDERSTOOD: readonly Task[] = [
  reads('the sign that it prints itself', '16 × 20'),
  reads('a size with by', '16 by 20'),
  reads('a unit after the height', '16 x 20 in'),
  reads('signs of inches', `'16" x 20"'`),
  reads('typographic signs', '16″ × 20″'),
  reads('feet and inches', `"1' 4\\" x 1' 8\\""`),
  reads('millimetres in a job of inches', '406.4 x 508 mm'),
  reads('centimetres', '40.64 x 50.8 cm'),
  reads('a list', '[16, 20]'),
  reads('ready-made fractions', '16 x 19 2/2'.replace('19 2/2', '20')),
  wrong('a decimal comma', outer('"16,5 x 20"'), ['decimal comma', '16.5']),
  wrong('one side alone', outer('16'), ['a size such as 16 x 20']),
  wrong('a negative length', `mat: {border: -3}\n${O}`, ['negative']),
  wrong('a key that there is not', `mat: {outer: 16 x 20, boarder: 3}\n${O}`, ['did you mean border?', 'job.yaml:1:']),
  wrong('a wrong indent', `mat:\n  outer: 16 x 20\n    border: 3\n${O}`, ['job.yaml:3:5', 'indented']),
  wrong('no space behind a colon', `mat:\n  outer:16 x 20\n${O}`, ['put a space after the colon: outer: 16 x 20']),
  wrong('no space, and another key', `mat:\n  outer:16 x 20\n  border: 3\n${O}`, [
    'a space is missing after the colon',
  ]),
  wrong('a tab', `mat:\n\touter: 16 x 20\n${O}`, ['tab', 'indent with spaces']),
  wrong('a bracket left open', `mat: {outer: 16 x 20\n${O}`, ['not closed']),
  wrong('a quote left open', `title: "Heron\n${O}`, ['never closed']),
  wrong('a colour without quotes', `mat: {layers: [{board: {thickness: 1 mm, colour: #fff}}]}\n${O}`, [
    'a colour in quotes',
  ]),
  wrong('an empty key', `mat:\n${O}`, ['a value is missing']),
  wrong('no openings', 'mat: {outer: 16 x 20}\n', ['openings is missing']),
  wrong('a key twice', `title: a\ntitle: b\n${O}`, ['stands twice']),
  wrong('sizes that contradict', `mat: {outer: 16 x 20, border: 1}\n${O.replace('13', '13\n    overlap: 1/4')}`, [
    'is given, but the other sizes make',
  ]),
  wrong('overlap and float', 'mat: {outer: 16 x 20}\nopenings: [{artwork: 9 x 9, overlap: 1, float: 1}]\n', [
    'both overlap and float',
  ]),
  wrong('a shape that there is not', 'mat: {outer: 16 x 20}\nopenings: [{shape: ovall, artwork: 9 x 9}]\n', [
    'did you mean oval?',
  ]),
  wrong('a board that there is not', `mat: {outer: 16 x 20, layers: [{board: bone}]}\n${O}`, ['board']),
  task('a number sign in a title', 'check job.yaml', ['warning: what follows this # is a comment'], {
    files: { 'job.yaml': `title: Cat #3\n${outer('16 x 20')}` },
  }),
  task('a title in quotes', 'check job.yaml', ['Cat #3'], {
    files: { 'job.yaml': `title: "Cat #3"\n${outer('16 x 20')}` },
    never: ['warning'],
  }),
  task('a job from a pipe', 'check -', ['16 × 20 in outside'], { files: {}, stdin: JOB }),
  task('a wrong job from a pipe', 'check -', ['stdin:1:'], { files: {}, stdin: 'mta: {}\n', code: 2 }),
  task('a job that is not there', 'check jop.yaml', ['there is no such job'], { code: 2 }),
  task('a folder', 'check .', ['is a folder; name the job in it'], { code: 2 }),
  task('a shop that is wrong', 'check job.yaml', ['shop.yaml:1:'], {
    files: { 'job.yaml': JOB, 'shop.yaml': 'bords: {}\n' },
    code: 2,
  }),
  task('a shop in the folder', 'check job.yaml', ['16 × 20 in outside'], {
    files: { 'job.yaml': JOB, 'shop.yaml': SHOP },
  }),
];
