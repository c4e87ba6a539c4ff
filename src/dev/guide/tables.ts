import { beyondCorners } from '../../bench/offsets.ts';
import { diagonal, diagonalDifference } from '../../geometry/shear.ts';
import { bevelFace, setback } from '../../mat/bevel.ts';
import { solveJob } from '../../outputs/solve-job.ts';
import { showProblem } from '../../problems/show.ts';
import { archRadius } from '../../shapes/arch.ts';
import { pinsAndLoop } from '../../shapes/by-hand.ts';
import { mmPer, plotterUnitsFromMm, pointsFromMm } from '../../units/units.ts';
import { fitted } from './papers-fitted.ts';

/** A value that the world has fixed, beside what the program makes of the same input. */
interface Check {
  readonly input: string;
  /** What is worked out, each as its source prints it. */
  readonly published: readonly string[];
  readonly made: readonly number[];
  readonly unit: string;
  readonly source: string;
}

const TRIGONOMETRY = 'trigonometry';
const DIAGONAL = 'the diagonal method, as taught in darkroom classes; recomputed from its rule';

const bevel = (angle: number) => ({ angle, reverse: false });

const TABLES: Readonly<Record<string, () => readonly Check[]>> = {
  setback: () => [
    one('setback, 1.5 mm at 45°', '1.5', setback(1.5, bevel(45)), 'mm', TRIGONOMETRY),
    one('setback, 1.5 mm at 60°', '0.86603', setback(1.5, bevel(60)), 'mm', TRIGONOMETRY),
    one('setback, 3.0 mm at 60°', '1.73205', setback(3, bevel(60)), 'mm', TRIGONOMETRY),
    one('face of the bevel, 1.5 mm at 45°', '2.12132', bevelFace(1.5, bevel(45)), 'mm', TRIGONOMETRY),
    one('setback of a square cut', '0', setback(1.5, bevel(90)), 'mm', TRIGONOMETRY),
  ],
  sizes: () => [
    {
      input: 'artwork 8 × 10 in, overlap 1/4 in, outer 11 × 14 in: opening, borders',
      published: ['7.5', '9.5', '1.75', '2.25'],
      made: sizes('{mat: {outer: 11 x 14}, openings: [{artwork: 8 x 10, overlap: 1/4}]}', 'in'),
      unit: 'in',
      source: 'D. Kelly, How to frame (1998)',
    },
    {
      input: 'artwork 216 × 279 mm, overlap 2 mm, outer 413 × 476 mm: opening, borders',
      published: ['212', '275', '100.5', '100.5'],
      made: sizes('{units: mm, mat: {outer: 413 x 476}, openings: [{artwork: 216 x 279, overlap: 2}]}', 'mm'),
      unit: 'mm',
      source: 'a published worked example (opening); borders derived',
    },
  ],
  weighting: () => [
    weighted(
      'ratio 4 : 3, top and sides 3 in',
      '{mat: {border: {top: 3, sides: 3}, weighting: {ratio: 4/3}}, openings: [{size: 8 x 10}]}',
      'in',
      ['3', '4', '3'],
      'US Navy NAVEDTRA 14066, Matting; US Army subcourse SS0509, Matting',
    ),
    weighted(
      'window 160 × 240 mm in 280 × 360 mm, raised 2 mm',
      '{units: mm, mat: {outer: 280 x 360, weighting: {add: 4}}, openings: [{size: 160 x 240}]}',
      'mm',
      ['58', '62', '60'],
      'camera-club notes, Learning how to mount photographs (2009)',
    ),
    weighted(
      'diagonal, 11 × 14 in, window 7 1/2 × 9 1/2 in',
      diagonally('11 x 14', '7 1/2 x 9 1/2'),
      'in',
      ['1.89205', '2.60795', '1.75'],
      DIAGONAL,
    ),
    weighted(
      'diagonal, 16 × 20 in, window 11 × 14 in',
      diagonally('16 x 20', '11 x 14'),
      'in',
      ['2.53125', '3.46875', '2.5'],
      DIAGONAL,
    ),
    weighted(
      'diagonal, 20 × 16 in, window 12 × 8 in',
      diagonally('20 x 16', '12 x 8'),
      'in',
      ['3.2', '4.8', '4'],
      DIAGONAL,
    ),
  ],
  marks: () => {
    const { before, after } = beyondCorners({ start: 1.2, stop: -0.4 }, 0.25);
    return [
      {
        input:
          'blade 1.2 mm ahead of the scribe at the start, 0.4 mm behind it at the stop, overrun 0.25 mm: S before the corner, E past the corner',
        published: ['1.45', '0.65'],
        made: [before, after],
        unit: 'mm',
        source: 'worked out from the rule above',
      },
    ];
  },
  printing: () => [
    one('100 mm on the page', '283.4646', pointsFromMm(100), 'pt', 'W3C CSS Values and Units Level 3'),
    one(
      'a 100 mm line, A4 fitted to Letter',
      '94.0741',
      100 * fitted('a4', 'letter'),
      'mm',
      'ISO 216 and PWG 5101.1 sizes; derived',
    ),
    one(
      'a 100 mm line, Letter fitted to A4',
      '97.2673',
      100 * fitted('letter', 'a4'),
      'mm',
      'ISO 216 and PWG 5101.1 sizes; derived',
    ),
    one(
      'a plotter’s 11 in',
      '11176',
      plotterUnitsFromMm(11 * mmPer('in')),
      'units',
      'HP PCL 5 Technical Reference Manual, part II: 40 units a millimetre',
    ),
  ],
  curves: () => [
    {
      input: 'oval 10 × 8: pins from the middle, loop',
      published: ['3', '16'],
      made: [pinsAndLoop(10, 8).pin, pinsAndLoop(10, 8).loop],
      unit: '',
      source: 'Fine Woodworking, A precise method for drawing an ellipse; J. Rose, Mechanical Drawing Self-Taught',
    },
    one(
      'oval 16 × 10: pins from the middle',
      '6.2450',
      pinsAndLoop(16, 10).pin,
      '',
      'the same tip, recomputed (the 7.5 in print is wrong)',
    ),
    one('arch, span 96, rise 12: radius', '102', archRadius(96, 12), '', 'Davis, arch radius tip'),
  ],
  square: () => [
    one(
      'diagonal of 11 × 14 in',
      '17.80449',
      diagonal({ width: 11, height: 14 }),
      'in',
      'Mainwaring, How to mat; recomputed',
    ),
    one(
      '400 × 500 mm sheared by 1 mm: the diagonals differ by',
      '1.2494',
      diagonalDifference({ width: 400, height: 500 }, 1),
      'mm',
      'derived',
    ),
  ],
};

const one = (input: string, published: string, made: number, unit: string, source: string): Check => ({
  input,
  published: [published],
  made: [made],
  unit,
  source,
});

const diagonally = (outer: string, size: string): string =>
  `{mat: {outer: ${outer}, weighting: diagonal}, openings: [{size: ${size}}]}`;

function solvedBy(text: string) {
  const solved = solveJob(text);
  if (!solved.ok) throw new Error(solved.problems.map(showProblem).join('\n'));
  return solved.value.mat;
}

function sizes(text: string, unit: 'in' | 'mm'): readonly number[] {
  const { border, openings } = solvedBy(text);
  const { faceBox } = openings[0]!.layers[0]!;
  return [faceBox.width, faceBox.height, border.left, border.top].map((mm) => mm / mmPer(unit));
}

function weighted(input: string, text: string, unit: 'in' | 'mm', published: readonly string[], source: string): Check {
  const { border } = solvedBy(text);
  const made = [border.top, border.bottom, border.left].map((mm) => mm / mmPer(unit));
  return { input: `${input}: top, bottom, sides`, published, made, unit, source };
}

const digitsOf = (text: string): number => text.split('.')[1]?.length ?? 0;

/** A table of the guide: what the program makes is printed, and must be what is published. */
export function tableOf(name: string): string {
  const checks = TABLES[name]?.();
  if (checks === undefined) throw new Error(`there is no table ${name}, only ${Object.keys(TABLES).join(', ')}`);
  const rows = checks.map(({ input, published, made, unit, source }) => {
    const shown = made.map((value, i) => String(Number(value.toFixed(digitsOf(published[i]!)))));
    const expected = published.map((value) => String(Number(value)));
    if (shown.join() !== expected.join()) throw new Error(`${input}: ${shown.join()} instead of ${expected.join()}`);
    return `| ${input} | ${published.join(', ')} ${unit} | ${source} |`.replaceAll(' |', ' |').replace('  |', ' |');
  });
  return ['| what | value | source |', '|---|---|---|', ...rows].join('\n');
}
