import * as z from 'zod/mini';
import { SIDES, type Side } from '../geometry/sides.ts';
import { defined } from '../problems/defined.ts';
import { check, described, needed, oneOf, record } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import { BEVEL } from '../shop/bevel-angle.ts';
import { either } from '../shop/units.ts';
import type { LengthUnit, Units } from '../units/units.ts';

/** A line on the face of the top mat, parallel to an opening. */
export interface DecorRequest {
  readonly kind: 'groove' | 'ink';
  /** Face opening of the top mat to the middle of the line. */
  readonly distance: number;
  /** Of the line as it is seen. */
  readonly width: number;
  /** Degrees from the face, of a groove's two sides. */
  readonly angle: number;
  /** Only along these sides; undefined all round. */
  readonly sides?: readonly Side[];
}

/** Seen width of a groove, and of a line drawn with a ruling pen (common practice, no source). */
const usualWidth = (units: Units, kind: 'groove' | 'ink'): number =>
  kind === 'groove' ? either(units, 1 / 16, 1.5) : 0.5;

export function linesSchema(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const one = record(
    {
      kind: z.optional(oneOf('A groove is cut, an ink line is drawn', ['groove', 'ink'])),
      distance: needed(
        length('Face opening of the top mat to the middle of the line', ['1/2'], { least: 1, most: 1000 }),
      ),
      width: z.optional(length('Width of the line as it is seen', ['1/16', '0.5 mm'], { least: 0.1, most: 20 })),
      sides: z.optional(
        described(
          z.array(oneOf('A straight side', SIDES), 'a list of sides').check(
            check<readonly unknown[]>(({ length: given }) =>
              given > 0
                ? undefined
                : {
                    code: 'line-sides-empty',
                    message: 'the list of sides is empty',
                    hint: 'leave it out for all round',
                  },
            ),
          ),
          'Only along these sides; all round without it',
          [['top', 'bottom']],
          { minItems: 1 },
        ),
      ),
    },
    'a map: kind, distance, width, sides',
  );
  const each = described(one, 'A line round the opening, or along some of its sides', [
    { kind: 'ink', distance: '3/8' },
  ]);
  const list = z
    .array(each, 'a list of lines')
    .check(
      check<readonly unknown[]>(({ length: count }) =>
        count <= 12 ? undefined : { code: 'lines-many', message: `there are ${count} lines`, hint: 'give 12 at most' },
      ),
    );
  return described(list, 'Lines on the face round the opening', [[{ kind: 'groove', distance: '1/2' }]], {
    maxItems: 12,
  });
}

export function decorFrom(
  given: z.output<ReturnType<typeof linesSchema>>[number],
  units: Units,
  bevel: number,
): DecorRequest {
  const kind = given.kind ?? 'groove';
  return {
    kind,
    distance: given.distance,
    width: given.width ?? usualWidth(units, kind),
    // The head that cuts the bevels cuts the grooves; one that stands upright cannot.
    angle: bevel < 90 ? bevel : BEVEL,
    ...defined({ sides: given.sides }),
  };
}
