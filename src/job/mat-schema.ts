import * as z from 'zod/mini';
import type { LengthUnit } from '../units/units.ts';
import { BOARD_EXPECTED, boardInPlace } from './board-schema.ts';
import { check, described, id, number, oneOf, ratio, record, refuse, yesNo } from './fields.ts';
import { jobFrame } from './frame-schema.ts';
import { lengthFields } from './length-fields.ts';
import type { Weighting } from './model.ts';

const MOST_LAYERS = 8;

export function matSchema(unit: LengthUnit) {
  const { size, sides } = lengthFields(unit);
  const layers = z.array(layerSchema(unit), 'a list of layers, the top mat first').check(
    described(
      'Top mat first; one 4-ply mat where it is left out',
      [[{ board: 'bone-4' }, { board: 'slate-4', reveal: '1/4' }]],
      { minItems: 1, maxItems: MOST_LAYERS },
    ),
    check<readonly unknown[]>(({ length }) => {
      if (length >= 1 && length <= MOST_LAYERS) return undefined;
      const message = length === 0 ? 'the list of layers is empty' : `there are ${length} layers`;
      const hint = `give 1 to ${MOST_LAYERS}, or leave the key out for one top mat`;
      return { code: 'layers-count', message, hint };
    }),
  );
  return record(
    {
      outer: z.optional(size('Width x height of the whole mat', ['16 x 20', [16, 20]], { least: 25 })),
      frame: z.optional(jobFrame(unit)),
      border: z.optional(
        sides('Mat edge to the face opening of the top mat', [3, { top: 3, bottom: '3 1/2', sides: '2 3/4' }], {
          least: 1,
        }),
      ),
      weighting: z.optional(weightingSchema(unit)),
      layers: z.optional(layers),
    },
    'a map: outer, frame, border, weighting, layers',
  ).check(described('The mat: its size, its borders and its layers'));
}

function weightingSchema(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const expected = 'none, diagonal, {add: a length} or {ratio: 4/3}';
  const word = z.pipe(
    z.enum(['none', 'diagonal'], expected),
    z.transform((kind): Weighting => ({ kind })),
  );
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
      const message = `the weighting says ${add === undefined ? 'neither' : 'both'} add ${add === undefined ? 'nor' : 'and'} ratio`;
      return refuse(context, given, { code: 'weighting-one', message, hint: 'give one of the two' });
    }),
  );
  return z
    .union([word, map], expected)
    .check(described('Extra border at the bottom', ['none', 'diagonal', { add: '1/2' }, { ratio: '4/3' }]));
}

function layerSchema(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const board = z
    .union([id('A board of the shop'), boardInPlace(unit)], BOARD_EXPECTED)
    .check(
      described('What the layer is made of: a board of the shop, or one described in place', [
        'bone-4',
        { thickness: '1.4 mm', colour: '#efe9dc', name: 'Bone' },
      ]),
    );
  return record(
    {
      board: z.optional(board),
      bevel: z.optional(bevelSchema()),
      reveal: z.optional(
        length('Face edge of the layer above to the face edge of this one', ['1/4'], { least: 0.1, most: 500 }),
      ),
      trimBack: z.optional(length('Taken off each edge of an under mat', ['1/8'], { least: 0, most: 100 })),
    },
    'a map: board, bevel, reveal, trimBack',
  ).check(described('A layer of the mat', [{ board: 'slate-4', reveal: '1/4' }]));
}

/** Flatter bevels are none that a head cuts; 90 is square. */
export const BEVELS = { least: 20, most: 90, expected: 'an angle from 20 to 90 degrees' };

export const bevelAngle = () =>
  number(
    'Degrees between the bevel and the face of the board; 90 is square',
    [45, 60, 90],
    BEVELS.least,
    BEVELS.most,
    BEVELS.expected,
  );

export interface BevelInput {
  readonly angle?: number | undefined;
  readonly reverse?: boolean | undefined;
}

function bevelSchema() {
  const expected = `${BEVELS.expected}, or {angle, reverse}`;
  const plain = z.pipe(
    bevelAngle(),
    z.transform((angle): BevelInput => ({ angle })),
  );
  const map = z.pipe(
    record(
      {
        angle: z.optional(bevelAngle()),
        reverse: z.optional(yesNo('True where it slopes the other way: the core is hidden')),
      },
      expected,
    ),
    z.transform((given): BevelInput => given),
  );
  return z
    .union([plain, map], expected)
    .check(
      described('The angle of the bevel; that of the head where it is left out', [
        45,
        90,
        { angle: 45, reverse: true },
      ]),
    );
}

export const sideOf = (about: string) => oneOf(about, ['top', 'right', 'bottom', 'left']);
