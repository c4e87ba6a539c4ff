import * as z from 'zod/mini';
import { check, described, oneOf, ratio, record, whole, yesNo } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import type { LengthUnit } from '../units/units.ts';

export function arrangeSchema(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const count = (about: string) => whole(about, [2, 3], 1, 100);
  const gapAbout = 'Between neighbours, from face opening to face opening of the top mat';
  const one = z.pipe(
    length(gapAbout, ['3/4']),
    z.transform((gap: number): { across?: number | undefined; down?: number | undefined } => ({
      across: gap,
      down: gap,
    })),
  );
  const two = record(
    {
      across: z.optional(length('Between neighbours in a row', ['3/4'])),
      down: z.optional(length('Between rows', ['1'])),
    },
    'a length, or {across, down}',
  );
  const arrange = record(
    {
      rows: z.optional(
        described(
          z.union(
            [count('How many rows'), z.array(count('Openings in this row'))],
            'a number of rows, or how many openings each row has',
          ),
          'How many rows; or how many openings each row has',
          [2, [3, 4]],
        ),
      ),
      columns: z.optional(count('How many columns')),
      gap: z.optional(
        described(z.union([one, two], 'a length, or {across, down}'), gapAbout, ['3/4', { across: '3/4', down: 1 }]),
      ),
      align: z.optional(oneOf('How the openings of a row lie to each other', ['centre', 'base', 'top'])),
      fill: z.optional(yesNo('Borders as wide as the gaps, so that the group fills the mat evenly')),
      rowWeighting: z.optional(
        described(
          record(
            {
              add: z.optional(length('More below each row than the gap', ['1/4'])),
              ratio: z.optional(ratio('Below each row the gap times this', ['4/3'], 1, 5)),
            },
            '{add: a length} or {ratio: 4/3}',
          ).check(
            check<Readonly<Record<string, unknown>>>(({ add, ratio: times }) =>
              (add === undefined) === (times === undefined)
                ? {
                    code: 'row-weighting-one',
                    message: `the row weighting says ${add === undefined ? 'neither add nor ratio' : 'both add and ratio'}`,
                    hint: 'give one of the two',
                  }
                : undefined,
            ),
          ),
          'Extra below each row',
          [{ add: '1/4' }, { ratio: '4/3' }],
        ),
      ),
    },
    'a map: rows, columns, gap, align, fill, rowWeighting',
  );
  return described(arrange, 'How several openings lie; one row where it is left out', [
    { rows: 2, columns: 2, gap: '3/4' },
    { rows: [3, 3, 1], gap: { across: '3/4', down: 1 } },
    { rows: 1, align: 'base', gap: 1 },
  ]);
}
