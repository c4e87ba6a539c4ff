import * as z from 'zod/mini';
import { count, described, id, line, oneOf, record, whole, yesNo } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import { LENGTH_UNITS, type LengthUnit } from '../units/units.ts';
import { arrangeSchema } from './arrange-schema.ts';
import { asCutSchema } from './as-cut-schema.ts';
import { letteringSchema } from './lettering-schema.ts';
import { matSchema } from './mat-schema.ts';
import { openingsSchema } from './opening-schema.ts';

const MADE = new Map<LengthUnit, ReturnType<typeof madeSchema>>();

/** The whole job, bare numbers being in `unit`; made when it is first asked for. */
export function jobSchema(unit: LengthUnit): ReturnType<typeof madeSchema> {
  const known = MADE.get(unit) ?? madeSchema(unit);
  MADE.set(unit, known);
  return known;
}

/** A new key is one line here and one in `job.ts`. */
function madeSchema(unit: LengthUnit) {
  // Few jobs have these: made when there is one.
  const arrange = z.lazy(() => arrangeSchema(unit));
  const lettering = z.lazy(() => letteringSchema(unit));
  const print = z.lazy(() => printSchema(unit));
  const asCut = z.lazy(() => asCutSchema(unit));
  const job = record(
    {
      title: z.optional(
        line('What the piece is called; the name of the file where it is left out', ['Heron, linocut']),
      ),
      number: z.optional(count('Its number in the shop’s own count, for ticket, labels and lists', ['A-07', 41])),
      customer: z.optional(line('Whom it is for', ['Saltmarsh Print Room'])),
      units: z.optional(oneOf('The unit of bare numbers, and of what documents print; in without it', LENGTH_UNITS)),
      mat: z.optional(matSchema(unit)),
      openings: openingsSchema(unit),
      arrange: z.optional(arrange),
      lettering: z.optional(lettering),
      count: z.optional(whole('How many alike', [1, 40], 1, 999)),
      bench: z.optional(benchSchema(unit)),
      print: z.optional(print),
      asCut: z.optional(asCut),
    },
    'a map of keys: title, units, mat, openings …',
  );
  return described(job, 'A framed piece: its mat, its opening and how it is made');
}

/** A job as the schema leaves it: lengths in mm, nothing looked up, nothing filled in. */
export type JobInput = z.output<ReturnType<typeof jobSchema>>;

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
