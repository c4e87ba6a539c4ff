import type { CutPicture, FacePicture, SheetPicture } from './sheets.ts';

const HERON = ['examples/heron/job.yaml'];
const MONDAY = ['curlew', 'samphire', 'sea-wall', 'tide-mill'].map((name) => `examples/monday/${name}.yaml`);
const LETTER = { paper: 'letter' };

/** Pages of what the commands of the guide print. */
export const PRINTED: readonly SheetPicture[] = [
  { name: 'check-sheet', output: 'pattern', jobs: HERON, options: LETTER, page: 'check', dpi: 70 },
  { name: 'corner-sheet', output: 'pattern', jobs: HERON, options: { extent: 'corners', ...LETTER }, page: 1, dpi: 70 },
  {
    name: 'check-corners',
    output: 'pattern',
    jobs: HERON,
    options: { extent: 'corners', ...LETTER },
    page: 'check',
    dpi: 70,
  },
  { name: 'tile', output: 'pattern', jobs: HERON, options: { paper: 'a4' }, page: 1, dpi: 70 },
  { name: 'row-sheet', output: 'pattern', jobs: ['templates/row-three.yaml'], options: LETTER, page: 1, dpi: 70 },
  { name: 'oval-sheet', output: 'pattern', jobs: ['templates/oval-portrait.yaml'], options: LETTER, page: 1, dpi: 70 },
  { name: 'ticket', output: 'ticket', jobs: HERON, options: { number: '41', ...LETTER }, dpi: 72 },
  { name: 'jig-printer', output: 'jig', jobs: [], options: { kind: 'printer', ...LETTER }, dpi: 70 },
  {
    name: 'proof',
    output: 'proof',
    jobs: HERON,
    options: { dimensions: true, date: '12 March 2031', ...LETTER },
    dpi: 72,
    colour: true,
  },
  { name: 'stock', output: 'stock', jobs: MONDAY, options: { effort: 0.1, ...LETTER }, page: 1, dpi: 60 },
];

const TERNS = ['examples/terns/job.yaml'];

/** Files for machines. */
export const CUT: readonly CutPicture[] = [
  { name: 'laser', output: 'cutfile', jobs: TERNS, options: { machine: 'laser' } },
  { name: 'coupon', output: 'cutfile', jobs: TERNS, options: { machine: 'laser', coupon: true } },
];

/** Pieces as they hang. */
export const FACES: readonly FacePicture[] = [
  { name: 'heron', job: 'templates/double.yaml' },
  { name: 'row', job: 'templates/row-three.yaml' },
  { name: 'arch', job: 'templates/arched-print.yaml' },
];
