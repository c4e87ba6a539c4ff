import * as z from 'zod/mini';
import { defined } from '../problems/defined.ts';
import { check, described, oneOf, ratio, record, whole, yesNo } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import type { LengthUnit } from '../units/units.ts';

/** How several openings lie on the mat. Lengths are mm, between face openings of the top mat. */
export interface ArrangeRequest {
  /** How many openings each row has, from the top; their sum is the number of openings that are arranged. */
  readonly rows: readonly number[];
  /** True where the openings of all rows stand in common columns, as wide as the widest of them. */
  readonly columns: boolean;
  /** Between neighbours in a row, and between rows. */
  readonly across?: number;
  readonly down?: number;
  /** How the openings of a row lie to each other in height. */
  readonly align: 'centre' | 'base' | 'top';
  /** Borders and gaps all alike in each direction, but for a weighting. */
  readonly fill: boolean;
  /** More below a row than the gap: a length added, or the gap times a ratio. */
  readonly rowWeighting?: { readonly add: number } | { readonly ratio: number };
}

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

/** `free` is the number of openings that have no place of their own. */
export function arrangeFrom(
  given: z.output<ReturnType<typeof arrangeSchema>> | undefined,
  free: number,
): ArrangeRequest | undefined {
  if (given === undefined) return undefined;
  const { rows, columns, gap, align, fill, rowWeighting } = given;
  const { add, ratio } = rowWeighting ?? {};
  return {
    rows: rowsFrom(rows, columns, free),
    columns: !Array.isArray(rows) && (columns ?? 1) > 1,
    align: align ?? 'centre',
    fill: fill ?? false,
    ...defined({
      across: gap?.across,
      down: gap?.down,
      rowWeighting: add !== undefined ? { add } : ratio !== undefined ? { ratio } : undefined,
    }),
  };
}

function rowsFrom(
  rows: number | readonly number[] | undefined,
  columns: number | undefined,
  free: number,
): readonly number[] {
  if (typeof rows === 'object') return rows;
  if (rows !== undefined && columns !== undefined) return Array.from({ length: rows }, () => columns);
  const each = columns ?? Math.max(1, Math.ceil(free / (rows ?? 1)));
  const full = Array.from({ length: Math.floor(free / each) }, () => each);
  return free % each === 0 ? full : [...full, free % each];
}
