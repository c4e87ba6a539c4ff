import { SHOP, type Task, task, words } from './task.ts';

const none = { files: {} };
const refused = { files: {}, code: 2, made: [] };

/** The first hour, before there is a job. */
export const STARTING: readonly Task[] = [
  task('see what there is', '--help', ['new', 'check', 'pattern', 'calibrate', 'make'], none),
  task('ask for nothing', '', ['Usage'], { ...none, code: 2 }),
  task('see the version', '--version', ['0.'], none),
  task('mistype a command', 'patern job.yaml', ['did you mean pattern?'], refused),
  task('list the templates', 'new --list', ['row-three', 'hexagon', 'single'], none),
  task('list them for a program', 'new --list --json', ['"name": "single"'], none),
  task('start without a terminal', 'new', ['name a template'], refused),
  task('mistype a template', 'new tripel --yes', ['did you mean triple?'], refused),
  task('start a single mat', 'new single --yes', ['united inches', 'next: matwright pattern single.yaml'], {
    ...none,
    made: ['single.yaml'],
  }),
  task('give it a title with accents', 'new single --yes --title "Möwe, été"', ['written to mowe-ete.yaml'], none),
  task('write it elsewhere', 'new single --yes --out a.yaml', ['next: matwright pattern a.yaml'], {
    ...none,
    made: ['a.yaml'],
  }),
  task('start it twice', 'new single --yes --out a.yaml', ['a.yaml is there already', '--out'], {
    files: { 'a.yaml': 'mine' },
    code: 2,
  }),
  task('count in centimetres', 'new row-three --yes --units cm --json', ['"width": 615.95'], none),
  task('count in millimetres', 'new double --yes --units mm --json', ['"width": 406.4'], none),
  task('turn a metric one to inches', 'new hexagon --yes --units in --json', ['"width": 320,'], none),
  task('say the outer size', 'new single --yes --outer "16 × 20"', ['16 × 20 in outside'], none),
  task('say it with a sign of inches', 'new single --yes --outer "16″ x 20″"', ['16 × 20 in outside'], none),
  task('say the frame', 'new single --yes --frame "16 x 20"', ['15 7/8 × 19 7/8 in outside'], none),
  task(
    'say both',
    'new single --yes --frame "16 x 20" --outer "16 x 20"',
    ['--outer and --frame do not go together'],
    refused,
  ),
  task('say the border', 'new single --yes --border 3', ['sides 3 in'], none),
  task(
    'want no weighting',
    'new single --yes --weighting none',
    ['top 2 1/4 in, sides 1 3/4 in, bottom 2 1/4 in'],
    none,
  ),
  task('mistype the weighting', 'new single --yes --weighting heavy', ['--weighting "heavy"', 'diagonal'], refused),
  task(
    'reveal what is not there',
    'new single --yes --reveal 1/4',
    ['--reveal has no place in the template single'],
    refused,
  ),
  task('one artwork for four', 'new grid-four --yes --artwork "5 x 7"', ['--artwork', '4 artworks', 'Ebb'], refused),
  task('three openings', 'new single --yes --openings 3 --border 2', ['opening 3'], none),
  task('a postcard in inches', 'new single --yes --artwork "120 x 170"', ['did you mean mm?'], refused),
  task('a mat too small', 'new single --yes --outer "5 x 5"', ['beyond the mat'], refused),
  task('no unit of that name', 'new single --yes --units inches', ['write in, mm or cm'], refused),
  task('start a shop', 'new shop', ['written to shop.yaml', 'matwright new'], { ...none, made: ['shop.yaml'] }),
  task('a shop in millimetres', 'new shop --units mm', ['--units belongs to a job'], refused),
  task('a board of the shop', 'new single --yes --board bone', ['bone 1.4 mm'], { files: { 'shop.yaml': SHOP } }),
  task('a board that it has not', 'new single --yes --board bnoe', ['did you mean bone?'], {
    files: { 'shop.yaml': SHOP },
    code: 2,
  }),
  {
    what: 'start, then make the pattern',
    calls: ['new double --yes', 'pattern double.yaml'].map(words),
    sees: ['pattern-1.pdf', 'written to double'],
    made: ['double', 'double.yaml', 'double/pattern-1.pdf', 'double/pattern-2.pdf'],
  },
  task('leave no schema beside it', 'new single --yes', [], { ...none, made: ['single.yaml'] }),
  task('get the schema', 'schema job', ['"title": "Matwright job"'], none),
];
