import * as z from 'zod/mini';
import { described, needed, record, whole } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import type { LengthUnit } from '../units/units.ts';

export function asCutSchema(unit: LengthUnit) {
  const { size, sides } = lengthFields(unit);
  const blank = record(
    { blank: z.optional(size('Width x height of the blank of this layer', ['15 25/32 x 19 3/4'], { least: 25 })) },
    'a map: blank',
  );
  const blanks = z.array(
    described(blank, 'A layer; {} where its blank is as planned, or still to do', [{ blank: '15 25/32 x 19 3/4' }]),
    'a list of layers, the top mat first',
  );
  const opening = record(
    {
      opening: z.optional(whole('Which opening, from 1', [1], 1, 400)),
      layer: z.optional(whole('In which layer, 1 being the top mat', [1, 2], 1, 8)),
      size: needed(size('Width x height of the opening on the face of that layer', ['10 9/16 x 13 1/2'], { least: 1 })),
      border: z.optional(
        sides(
          'Mat edge to that opening where it was measured; else what is off lies evenly on both sides',
          ['2 11/16', { left: '2 11/16' }],
          { least: 0.1 },
        ),
      ),
    },
    'a map: opening, layer, size, border',
  );
  const openings = z.array(
    described(opening, 'An opening that was cut; the layers above it count as cut too', [
      { layer: 1, size: '10 9/16 x 13 1/2' },
    ]),
    'a list of openings as they were cut',
  );
  const map = record(
    {
      outer: z.optional(
        size('Width x height of the mat: of the blank of the top mat', ['16 1/32 x 20'], { least: 25 }),
      ),
      layers: z.optional(
        described(blanks, 'Blanks of the layers, the top mat first', [[{}, { blank: '15 25/32 x 19 3/4' }]]),
      ),
      openings: z.optional(
        described(openings, 'Openings that are cut already', [[{ opening: 1, layer: 1, size: '10 9/16 x 13 1/2' }]]),
      ),
    },
    'a map: outer, layers, openings',
  );
  return described(map, 'What really came off the cutter: everything still to do is worked out again from it', [
    { outer: '16 1/32 x 20' },
    { openings: [{ layer: 1, size: '10 9/16 x 13 1/2' }] },
  ]);
}
