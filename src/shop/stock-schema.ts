import * as z from 'zod/mini';
import type { Size } from '../geometry/point.ts';
import { converted, described, id, line, needed, number, record, whole, yesNo } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import type { LengthUnit } from '../units/units.ts';

/** The narrowest thing that is called a sheet or an offcut, mm. */
const LEAST = 50;

/** The sizes of sheet that something is bought in, each alone or with its price and how many are left. */
export function sheetSizes(unit: LengthUnit) {
  const { size } = lengthFields(unit);
  const range = { least: LEAST };
  const expected = 'a size, or a map: size, price, count';
  const sheet = record(
    {
      size: needed(size('Width x height, the board’s direction being up', ['32 x 40 in'], range)),
      price: z.optional(number('Price of one, instead of the board’s', [9.5], 0, 1e6, 'a price')),
      count: z.optional(whole('How many are left; as many as are needed without it', [12], 0, 1e6)),
    },
    expected,
  );
  const alone = converted(
    size('A stock sheet', ['32 x 40 in'], range),
    (of: Size): z.output<typeof sheet> => ({ size: of }),
  );
  const list = z.array(described(z.union([alone, sheet], expected), 'A size of sheet'), 'a list of sheet sizes');
  return described(list, 'The sizes of sheet that it is bought in', [
    ['32 x 40 in', '40 x 60 in'],
    [{ size: '32 x 40 in', price: 9.5, count: 12 }],
  ]);
}

/** What lies on the shelf. */
export function shelfSchema(unit: LengthUnit) {
  const { size } = lengthFields(unit);
  const offcut = record(
    {
      id: needed(id('What is written on it; each has its own', ['S7'])),
      board: needed(id('The board or backing of this file', ['bone-4'])),
      size: needed(size('Width x height, the board’s direction being up', ['11 1/2 x 32 in'], { least: 10 })),
      note: z.optional(line('Where it comes from, or what is odd about it', ['one corner bruised'])),
    },
    'a map: id, board, size, note',
  );
  return described(
    z.array(described(offcut, 'An offcut'), 'a list of offcuts'),
    'Offcuts that lie on the shelf; stock uses them before it opens a sheet, and can write them',
    [[{ id: 'S7', board: 'bone-4', size: '11 1/2 x 32 in' }]],
  );
}

/** How sheets are broken down. */
export function stockSchema(unit: LengthUnit) {
  const { length, size, sides } = lengthFields(unit);
  const few = { least: 0, most: 200 };
  const longest = 'The longest cut that the trimming head makes; without it every cut can be made';
  const least = 'What is smaller, either way round, is not kept';
  const margin = 'Comes off each side of what drops out of an opening, beside its bevel, before it is stock';
  const stock = record(
    {
      trim: z.optional(sides('Comes off each edge of a new sheet before anything else', ['1/4 in'], few)),
      kerf: z.optional(length('Width of a cut: 0 for a knife', [0, '3 mm'], { least: 0, most: 20 })),
      leastOffcut: z.optional(size(least, ['5 x 7 in'], { least: 10 })),
      longestCut: z.optional(length(longest, ['40 in'], { least: 100 })),
      factoryEdge: z.optional(yesNo('True where every blank must have an edge of its sheet, untrimmed')),
      falloutMargin: z.optional(length(margin, ['1/8 in'], { least: 0, most: 100 })),
      backing: z.optional(
        id('A board of this file: each piece gets another blank of it, behind the artwork', ['bone-4']),
      ),
    },
    'a map: trim, kerf, leastOffcut, longestCut, factoryEdge, falloutMargin, backing',
  );
  return described(stock, 'How sheets of board are broken down', [{ trim: '1/4 in', longestCut: '40 in' }]);
}
