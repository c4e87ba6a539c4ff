import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { THICKNESS_PLAY } from '../../bench/offsets.ts';
import { READING } from '../../calibrate/statistics.ts';
import { flattened } from '../../geometry/flatten.ts';
import { distanceTo, outlineOf } from '../../geometry/near.ts';
import { setback } from '../../mat/bevel.ts';
import { leastStay, soundStay } from '../../mat/checks/must-stay.ts';
import { LEAST_OVERLAP } from '../../mat/checks/opening.ts';
import { type Solved, solveJob } from '../../outputs/solve-job.ts';
import { showProblem } from '../../problems/show.ts';
import { oval } from '../../shapes/oval.ts';
import { MARKS_BEYOND } from '../../shop/readings/head.ts';
import { mmFromInches } from '../../units/units.ts';
import { fitted } from './papers-fitted.ts';

const TOP = join(import.meta.dirname, '../../..');

function example(folder: string, job: string): Solved {
  const [text, shop] = [job, 'shop'].map((name) => readFileSync(join(TOP, 'examples', folder, `${name}.yaml`), 'utf8'));
  const solved = solveJob(text!, { file: `${job}.yaml`, shop: { text: shop!, file: 'shop.yaml' } });
  if (!solved.ok) throw new Error(solved.problems.map(showProblem).join('\n'));
  return solved.value;
}

const MONDAY = ['curlew', 'samphire', 'sea-wall', 'tide-mill'];

/** How far the printer's error of a quarter of a millimetre in 200 grows over a length, mm. */
const grown = (length: number): number => (0.25 / 200) * length;

/** The most that a parallel curve inside of an oval lies from the oval with axes as much shorter. */
function fromEllipse(width: number, height: number, inwards: number): number {
  const curve = flattened(oval.parallel({ x: 0, y: 0, width, height }, -inwards)!, 1e-5);
  const inner = { x: inwards, y: inwards, width: width - 2 * inwards, height: height - 2 * inwards };
  const ellipse = outlineOf(oval.outline(inner));
  return Math.max(...curve.map((at) => distanceTo(ellipse, at)));
}

const mm = (value: number, digits = 2): string => `${Number(value.toFixed(digits))} mm`;

/** Numbers in the running words of the guide, by their names. */
const NUMBERS: Readonly<Record<string, () => string>> = {
  setback: () => mm(setback(1.4, { angle: 45, reverse: false })),
  strip: () => mm(example('heron', 'job').mat.openings[0]!.layers[1]!.strip.left),
  overrun: () => {
    const job = solveJob('openings: [{artwork: 5 x 7}]\nmat: {border: 2}\n');
    if (!job.ok) throw new Error(job.problems.map(showProblem).join('\n'));
    return mm(job.value.job.bench.head.overrun);
  },
  'least-overlap': () => mm(LEAST_OVERLAP),
  'least-stay': () => mm(leastStay(0)),
  'sound-stay': () => mm(soundStay(0)),
  'marks-beyond': () => mm(MARKS_BEYOND),
  'thickness-play': () => mm(THICKNESS_PLAY),
  'least-reading': () => mm(READING),
  'monday-mats': () => String(MONDAY.reduce((sum, job) => sum + example('monday', job).job.count, 0)),
  'letter-on-a4': () => mm(100 * fitted('letter', 'a4'), 1),
  'a4-on-letter': () => mm(100 * fitted('a4', 'letter'), 1),
  'grown-board': () => mm(grown(mmFromInches(32)), 1),
  'grown-sheet': () => mm(grown(150)),
  'oval-gap': () => mm(fromEllipse(mmFromInches(8), mmFromInches(10), 1.5), 3),
  'flat-oval-gap': () => mm(fromEllipse(200, 100, 3)),
};

export function numberOf(name: string): string {
  const number = NUMBERS[name];
  if (number === undefined) throw new Error(`there is no number ${name}, only ${Object.keys(NUMBERS).join(', ')}`);
  return number();
}
