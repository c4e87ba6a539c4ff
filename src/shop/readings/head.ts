import * as z from 'zod/mini';
import { described, id, line, needed, record, yesNo } from '../../read/fields/fields.ts';
import { lengthFields } from '../../read/fields/length-fields.ts';
import type { LengthUnit } from '../../units/units.ts';
import { date, some } from './parts.ts';

export const HEAD_EXAMPLE = { thickness: '1.4 mm', top: { start: '4.2 mm', stop: '2.6 mm' } };

/** How far outside the corners the marks of the jig stand, so that a cut which falls short still crosses the other. */
export const MARKS_BEYOND = 3;

/** Further past a corner than this, something else was measured, mm. */
const FARTHEST = 30;

export function headShape(unit: LengthUnit) {
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
    pieces: some('Test openings', 'A test opening', HEAD_EXAMPLE, piece, 'cut two test openings for each thickness'),
  };
}
