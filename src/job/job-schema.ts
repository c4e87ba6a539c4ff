import * as z from 'zod/mini';
import { LENGTH_UNITS, type LengthUnit } from '../units/units.ts';
import { check, described, id, line, oneOf, record, whole, yesNo } from './fields.ts';
import { lengthFields } from './length-fields.ts';
import { matSchema } from './mat-schema.ts';

/** The whole job, bare numbers being in `unit`. A new key is one line here and one in `job.ts`. */
export function jobSchema(unit: LengthUnit) {
  const job = record(
    {
      title: z.optional(
        line('What the piece is called; the name of the file where it is left out', ['Heron, linocut']),
      ),
      customer: z.optional(line('Whom it is for', ['Saltmarsh Print Room'])),
      units: z.optional(oneOf('The unit of bare numbers, and of what documents print; in without it', LENGTH_UNITS)),
      mat: z.optional(matSchema(unit)),
      openings: openingsSchema(unit),
      count: z.optional(whole('How many alike', [1, 40], 1, 999)),
      bench: z.optional(benchSchema(unit)),
      print: z.optional(printSchema(unit)),
    },
    'a map of keys: title, units, mat, openings …',
  );
  return described(job, 'A framed piece: its mat, its opening and how it is made');
}

/** A job as the schema leaves it: lengths in mm, nothing looked up, nothing filled in. */
export type JobInput = z.output<ReturnType<typeof jobSchema>>;

function openingsSchema(unit: LengthUnit) {
  const openings = z.array(openingSchema(unit), 'a list of openings').check(
    check<readonly unknown[]>(({ length }) => {
      if (length === 1) return undefined;
      const message = length === 0 ? 'the list of openings is empty' : `there are ${length} openings`;
      return { code: 'openings-one', message, hint: 'give exactly one opening' };
    }),
  );
  return described(
    openings,
    'The openings of the mat: exactly one',
    [[{ artwork: '10 1/2 x 13 1/2', overlap: '1/4' }]],
    { minItems: 1, maxItems: 1 },
  );
}

/** Those that the solver knows. */
const SHAPES = ['rectangle'] as const;

function openingSchema(unit: LengthUnit) {
  const { size, sides } = lengthFields(unit);
  const least = 0.1;
  const overlaps = ['1/4', { top: '1/4', bottom: '1/4', sides: '1/8' }];
  const floats = ['1/4', { top: '1/4', sides: '1/4', bottom: '1/2' }];
  const artwork = 'Size of the artwork, the smaller where its ends differ';
  const measure = 'Sizes are the face opening of the lowest layer, or the innermost edge of all';
  const opening = record(
    {
      name: z.optional(line('What documents call the opening', ['Heron'])),
      shape: z.optional(oneOf('The shape of the opening', SHAPES)),
      artwork: z.optional(size(artwork, ['10 1/2 x 13 1/2'], { least: 5 })),
      overlap: z.optional(sides('Mat over the edge of the artwork', overlaps, { least, most: 500 })),
      float: z.optional(sides('Paper or backing shown around the artwork', floats, { least, most: 1000 })),
      size: z.optional(size('Size of the opening', ['10 x 13'], { least: 5 })),
      picture: z.optional(line('The artwork’s picture, JPEG or PNG, for proofs: a file beside the job', ['heron.png'])),
      measure: z.optional(oneOf(measure, ['face', 'sight'])),
    },
    'a map: artwork or size, overlap or float, shape, measure, picture, name',
  ).check(
    check<Readonly<Record<string, unknown>>>(({ artwork: art, overlap, float }) => {
      if (overlap !== undefined && float !== undefined) {
        const hint = 'keep overlap where the mat covers the edge of the artwork, float where it does not';
        return { code: 'overlap-or-float', message: 'the opening has both overlap and float', hint };
      }
      if (art !== undefined || (overlap === undefined && float === undefined)) return undefined;
      const message = `the opening has ${overlap === undefined ? 'a float' : 'an overlap'}, but no artwork`;
      return { code: 'artwork-missing', message, hint: 'give the size of the artwork too' };
    }),
  );
  return described(opening, 'An opening', [{ shape: 'rectangle', artwork: '10 1/2 x 13 1/2', overlap: '1/4' }], {
    not: { required: ['overlap', 'float'] },
  });
}

function benchSchema(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const graduation = 'What guide settings are rounded to; that of the guide where it is left out';
  const hinge = 'The edge along which window and backing hinge; the longer one without it';
  const bench = record(
    {
      head: z.optional(id('The head of the shop that cuts the bevels', ['pull-45'])),
      graduation: z.optional(length(graduation, ['1/16', '1 mm'], { least: 0.05, most: 26 })),
      snap: z.optional(yesNo('Move the opening evenly, so that settings lie on the graduation')),
      stack: z.optional(oneOf('Under mats cut on the top mat, or each by itself', ['together', 'apart'])),
      hinge: z.optional(oneOf(hinge, ['top', 'right', 'bottom', 'left'])),
    },
    'a map: head, graduation, snap, stack, hinge',
  );
  return described(bench, 'How it is cut');
}

function printSchema(unit: LengthUnit) {
  const { length, sides } = lengthFields(unit);
  const few = { least: 0, most: 100 };
  const papers = ['letter', 'a4', '13 x 19 in', 'roll:24in'];
  const transfer = 'Corners are pricked through and the paper comes off, or it stays and is cut through';
  const thickness = 'Thickness of the paper, which counts where it is cut through';
  const print = record(
    {
      paper: z.optional(line('A paper by its name, width x height, fit or roll:WIDTH', papers)),
      margin: z.optional(sides('Left blank along the edges of the paper', ['1/4', { top: '1/2', sides: '1/4' }], few)),
      lap: z.optional(length('How far neighbouring sheets lie over one another', ['1/2'], few)),
      join: z.optional(oneOf('Sheets lie over one another, or edge to edge', ['lap', 'butt'])),
      transfer: z.optional(oneOf(transfer, ['prick', 'cut-through'])),
      paperThickness: z.optional(length(thickness, ['0.1 mm'], { least: 0, most: 2 })),
      printer: z.optional(id('The printer of the shop that prints it', ['office'])),
    },
    'a map: paper, margin, lap, join, transfer, paperThickness, printer',
  );
  return described(print, 'How the pattern is printed');
}
