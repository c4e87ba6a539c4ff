import * as z from 'zod/mini';
import { check, described, id, type Keywords, line, needed, oneOf, record, yesNo } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import { date, some } from '../read/fields/readings-parts.ts';
import type { LengthUnit } from '../units/units.ts';
import { COUPON_EXAMPLES, COUPON_SHAPES, COUPONS } from './coupon-readings-schema.ts';

/** The tools of the bench, in the order in which they are calibrated. */
export const TOOLS = ['printer', 'guide', 'head', 'bevel'] as const;
export type Tool = (typeof TOOLS)[number];
/** Everything that is. */
export const CALIBRATED = [...TOOLS, ...COUPONS] as const;
export type Calibrated = (typeof CALIBRATED)[number];

/** Further past a corner than this, something else was measured, mm. */
const FARTHEST = 30;

const pairOfDiagonals = check(
  (given: { readonly falling?: number | undefined; readonly rising?: number | undefined }) =>
    (given.falling === undefined) === (given.rising === undefined)
      ? undefined
      : {
          code: 'readings-diagonal',
          message: 'one diagonal alone says nothing',
          hint: 'measure both, or leave both out',
        },
);

const SHEET = { across: '199.3 mm', down: '199.6 mm' };
const STRIP = { setting: '2 in', width: '50.9 mm' };
const PIECE = { thickness: '1.4 mm', top: { start: '4.2 mm', stop: '2.6 mm' } };
const BEVELLED = { thickness: '3.2 mm', setback: '3.1 mm' };

function printerShape(unit: LengthUnit) {
  const { length, sides } = lengthFields(unit);
  const long = { least: 20, most: 2000 };
  const sheet = record(
    {
      across: needed(length('The line across the sheet', ['199.3 mm'], long)),
      down: needed(length('The line down the sheet', ['199.6 mm'], long)),
      falling: z.optional(length('Corner to corner, from the top left', ['282.3 mm'], long)),
      rising: z.optional(length('Corner to corner, from the bottom left', ['282.4 mm'], long)),
    },
    'a map: across, down, falling, rising',
  ).check(pairOfDiagonals);
  return {
    printer: needed(id('The printer, by the name that the shop gives it', ['office'])),
    madeFor: z.optional(line('The paper that the sheet says it is made for', ['letter'])),
    paper: z.optional(line('The paper that the print dialogue is set to', ['letter'])),
    line: z.optional(length('What the lines are meant to measure; 200 mm without it', ['200 mm', '6 in'], long)),
    date: date(),
    sheets: some('One or several sheets', 'A sheet', SHEET, sheet, 'measure one sheet at least'),
    blank: z.optional(
      sides('The edge that stayed blank, by the ladders', [{ top: '4 mm', bottom: '5 mm', sides: '3 mm' }], {
        least: 0,
        most: 100,
      }),
    ),
  };
}

function guideShape(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const strip = record(
    {
      setting: needed(length('What the guide was set to', ['2 in', '50 mm'], { least: 0 })),
      width: needed(length('How wide the strip is at its face', ['50.3 mm'], { least: 0 })),
    },
    'a map: setting, width',
  );
  const thickness = 'Of the strips’ board; left out where the bar keeps its height';
  return {
    thickness: z.optional(length(thickness, ['1.4 mm'], { least: 0.1, most: 25 })),
    date: date(),
    strips: some('Strips cut by the guide', 'A strip', STRIP, strip, 'cut strips at five settings'),
  };
}

function headShape(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const range = { least: -FARTHEST, most: FARTHEST };
  const past = (about: string, example: number) => z.optional(length(about, [`${example} mm`], range));
  const side = record(
    {
      start: past('How far the cut runs past the corner where it starts; negative where it stops short', 4.2),
      stop: past('How far it runs past the corner where it stops; negative where it stops short', 2.6),
      startPrick: past('How far it runs past the pricked start mark, away from the opening', 1.2),
      stopPrick: past('How far it runs past the pricked stop mark, away from the opening', -0.4),
    },
    'a map: start, stop, startPrick, stopPrick',
  );
  described(side, 'The side, named as seen from the face');
  const piece = record(
    {
      thickness: needed(length('Of its board, measured', ['1.4 mm'], { least: 0.1, most: 25 })),
      top: z.optional(side),
      right: z.optional(side),
      bottom: z.optional(side),
      left: z.optional(side),
    },
    'a map: thickness, top, right, bottom, left',
  );
  return {
    head: needed(id('The head, by the name that the shop gives it', ['pull-45'])),
    proof: z.optional(yesNo('True where the test was cut with the corrected marks')),
    marks: z.optional(
      length('How far outside the corners the marks stood; 3 mm without it', ['3 mm'], { least: 0, most: 20 }),
    ),
    blade: z.optional(line('The blade', ['0.3 mm, fresh'])),
    depth: z.optional(line('Its depth', ['just scratches the slip sheet'])),
    date: date(),
    pieces: some('Test openings', 'A test opening', PIECE, piece, 'cut two test openings for each thickness'),
  };
}

function bevelShape(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const strip = record(
    {
      thickness: needed(length('Of its board, measured', ['3.2 mm'], { least: 0.1, most: 25 })),
      setback: needed(
        length('The width of the bevel seen from above, by the wedge', ['3.1 mm'], { least: 0, most: 60 }),
      ),
    },
    'a map: thickness, setback',
  );
  return {
    head: needed(id('The head, by the name that the shop gives it', ['pull-45'])),
    date: date(),
    strips: some('Strips with a bevel', 'A strip', BEVELLED, strip, 'cut a strip of thick board'),
  };
}

const SHAPES = { printer: printerShape, guide: guideShape, head: headShape, bevel: bevelShape, ...COUPON_SHAPES };

/** The readings of one kind as a file of their own. */
export function readingsSchema<K extends Calibrated>(kind: K, unit: LengthUnit) {
  const shape = SHAPES[kind](unit) as ReturnType<(typeof SHAPES)[K]>;
  const units = z.optional(oneOf('The unit of bare numbers; mm without it', ['in', 'mm', 'cm']));
  const whole = { units, ...shape };
  return record(whole, `a map: ${Object.keys(shape).join(', ')}`);
}

/** What the shop's file keeps of its calibrations: the readings of each, and what came of them. */
export function calibrationsSchema(unit: LengthUnit) {
  const result = z.optional(line('What came of the readings', ['x 0.9965 ± 0.0012, y 0.9980 ± 0.0012']));
  const kept = <S extends z.core.$ZodLooseShape>(what: string, example: Keywords, shape: S) => {
    const one = record({ ...shape, result }, `a map: ${Object.keys(shape).join(', ')}, result`);
    const list = z.array(described(one, `One calibration of ${what}`), 'a list of calibrations');
    return z.optional(described(list, `Calibrations of ${what}`, [[example]]));
  };
  const sheets = { printer: 'office', date: '2026-03-01', sheets: [SHEET] };
  const every = record(
    {
      printer: kept('printers', sheets, printerShape(unit)),
      guide: kept('the guide', { strips: [STRIP] }, guideShape(unit)),
      head: kept('heads', { head: 'pull-45', pieces: [PIECE] }, headShape(unit)),
      bevel: kept('bevels', { head: 'pull-45', strips: [BEVELLED] }, bevelShape(unit)),
      laser: kept('lasers', COUPON_EXAMPLES.laser, COUPON_SHAPES.laser(unit)),
      knife: kept('drag knives', COUPON_EXAMPLES.knife, COUPON_SHAPES.knife(unit)),
      'bevel-coupon': kept(
        'bevel heads of machines',
        COUPON_EXAMPLES['bevel-coupon'],
        COUPON_SHAPES['bevel-coupon'](unit),
      ),
    },
    `a map: ${CALIBRATED.join(', ')}`,
  );
  return described(every, 'The readings that calibrations were made from, the latest last', [{ printer: [sheets] }]);
}
