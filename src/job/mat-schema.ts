import * as z from 'zod/mini';
import { BEVEL_EXPECTED, bevelAngle } from '../read/fields/bevel-angle.ts';
import { check, converted, described, id, oneOf, ratio, record, refuse, yesNo } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import { BOARD_EXPECTED, boardInPlace } from '../shop/board-schema.ts';
import { jobFrame } from '../shop/frame-schema.ts';
import type { LengthUnit } from '../units/units.ts';
import type { Weighting } from './mat.ts';

const MOST_LAYERS = 8;

export function matSchema(unit: LengthUnit) {
  const { length, size, sides } = lengthFields(unit);
  const borders = [3, { top: 3, bottom: '3 1/2', sides: '2 3/4' }];
  const mat = record(
    {
      outer: z.optional(size('Width x height of the whole mat', ['16 x 20', [16, 20]], { least: 25 })),
      frame: z.optional(jobFrame(unit)),
      border: z.optional(sides('Mat edge to the face opening of the top mat', borders, { least: 1 })),
      weighting: z.optional(weightingSchema(unit)),
      leastBar: z.optional(length('Board between neighbouring openings, at least', ['1/4'], { least: 0, most: 500 })),
      layers: z.optional(layersSchema(unit)),
    },
    'a map: outer, frame, border, weighting, leastBar, layers',
  );
  return described(mat, 'The mat: its size, its borders and its layers');
}

function layersSchema(unit: LengthUnit) {
  const layers = z.array(layerSchema(unit), 'a list of layers, the top mat first').check(
    check<readonly unknown[]>(({ length }) => {
      if (length >= 1 && length <= MOST_LAYERS) return undefined;
      const message = length === 0 ? 'the list of layers is empty' : `there are ${length} layers`;
      const hint = `give 1 to ${MOST_LAYERS}, or leave the key out for one top mat`;
      return { code: 'layers-count', message, hint };
    }),
  );
  return described(
    layers,
    'Top mat first; one 4-ply mat where it is left out',
    [[{ board: 'bone-4' }, { board: 'slate-4', reveal: '1/4' }]],
    { minItems: 1, maxItems: MOST_LAYERS },
  );
}

function weightingSchema(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const expected = 'none, diagonal, {add: a length} or {ratio: 4/3}';
  const kinds = oneOf('No extra at the bottom, or by the diagonal', ['none', 'diagonal'], expected);
  const one = converted(kinds, (kind): Weighting => ({ kind }));
  const map = z.pipe(
    record(
      {
        add: z.optional(length('Bottom border = top + this', ['1/2'])),
        ratio: z.optional(ratio('Bottom border = this x top', ['4/3', 1.25], 1, 5)),
      },
      expected,
    ),
    z.transform((given, context): Weighting => {
      const { add, ratio: times } = given;
      if (add !== undefined && times === undefined) return { kind: 'add', length: add };
      if (times !== undefined && add === undefined) return { kind: 'ratio', ratio: times };
      const which = add === undefined ? 'neither add nor ratio' : 'both add and ratio';
      const hint = 'give one of the two';
      return refuse(context, given, { code: 'weighting-one', message: `the weighting says ${which}`, hint });
    }),
  );
  return described(z.union([one, map], expected), 'Extra border at the bottom', [
    'none',
    'diagonal',
    { add: '1/2' },
    { ratio: '4/3' },
  ]);
}

function layerSchema(unit: LengthUnit) {
  const { length, sides } = lengthFields(unit);
  const board = z.union([id('A board of the shop'), boardInPlace(unit)], BOARD_EXPECTED);
  const boards = ['bone-4', { thickness: '1.4 mm', colour: '#efe9dc', name: 'Bone' }];
  const reveal = 'Face edge of the layer above to the face edge of this one';
  const layer = record(
    {
      board: z.optional(
        described(board, 'What the layer is made of: a board of the shop, or one described in place', boards),
      ),
      bevel: z.optional(bevelSchema()),
      reveal: z.optional(
        sides(reveal, ['1/4', { top: '1/4', sides: '1/4', bottom: '1/2' }], { least: 0.1, most: 500 }),
      ),
      spacer: z.optional(length('Lifts this layer off the one above', ['3 mm'], { least: 0.5, most: 50 })),
      trimBack: z.optional(length('Taken off each edge of an under mat', ['1/8'], { least: 0, most: 100 })),
    },
    'a map: board, bevel, reveal, spacer, trimBack',
  );
  return described(layer, 'A layer of the mat', [{ board: 'slate-4', reveal: '1/4' }]);
}

export interface BevelInput {
  readonly angle?: number | undefined;
  readonly reverse?: boolean | undefined;
}

function bevelSchema() {
  const expected = `${BEVEL_EXPECTED}, or {angle, reverse}`;
  const plain = converted(bevelAngle(), (angle): BevelInput => ({ angle }));
  const shape = {
    angle: z.optional(bevelAngle()),
    reverse: z.optional(yesNo('True where it slopes the other way: the core is hidden')),
  };
  const map = z.pipe(
    record(shape, expected),
    z.transform((given): BevelInput => given),
  );
  return described(z.union([plain, map], expected), 'The angle of the bevel; that of the head where it is left out', [
    45,
    90,
    { angle: 45, reverse: true },
  ]);
}
