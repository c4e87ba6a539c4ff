import * as z from 'zod/mini';
import { check, id, line, needed, record } from '../../read/fields/fields.ts';
import { lengthFields } from '../../read/fields/length-fields.ts';
import type { LengthUnit } from '../../units/units.ts';
import { date, some } from './parts.ts';

export const PRINTER_EXAMPLE = { across: '199.3 mm', down: '199.6 mm' };

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

export function printerShape(unit: LengthUnit) {
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
    sheets: some('One or several sheets', 'A sheet', PRINTER_EXAMPLE, sheet, 'measure one sheet at least'),
    blank: z.optional(
      sides('The edge that stayed blank, by the ladders', [{ top: '4 mm', bottom: '5 mm', sides: '3 mm' }], {
        least: 0,
        most: 100,
      }),
    ),
  };
}
