import * as z from 'zod/mini';
import { check, converted, described, id, line, needed, record } from '../read/fields/fields.ts';
import { lengthFields, type Range } from '../read/fields/length-fields.ts';
import { date } from '../read/fields/readings-parts.ts';
import type { LengthUnit } from '../units/units.ts';

/** What is read from the coupons of machines. */
export const COUPONS = ['laser', 'knife', 'bevel-coupon'] as const;
export type CouponKind = (typeof COUPONS)[number];

/** Of one reading, mm. */
const CALIPER: Range = { least: 1, most: 1000 };
/** Past a corner, as for a head at the bench. */
const PAST: Range = { least: -30, most: 30 };

/** One length, or a list of them where it was measured several times. */
function lengths(unit: LengthUnit, about: string, example: readonly string[], range: Range) {
  const length = lengthFields(unit).length(about, [example[0]!], range);
  const one = converted(length, (mm): readonly number[] => [mm]);
  const list = z
    .array(length, 'a list of lengths')
    .check(
      check((given: readonly unknown[]) =>
        given.length > 0
          ? undefined
          : { code: 'readings-none', message: 'the list of readings is empty', hint: 'measure, or take the key out' },
      ),
    );
  const many = z.pipe(
    list,
    z.transform((given): readonly number[] => given),
  );
  return described(z.union([one, many], 'a length, or a list of lengths'), about, [[...example]]);
}

const machine = (example: string) => needed(id('The machine, by the name that the shop gives it', [example]));

function laserShape(unit: LengthUnit) {
  const part = (about: string, example: string) => lengths(unit, about, [example], CALIPER);
  const square = record(
    {
      pieceX: part('The piece that dropped out, across', '29.8 mm'),
      holeX: part('Its hole, across', '30.2 mm'),
      pieceY: part('The piece, up', '29.8 mm'),
      holeY: part('Its hole, up', '30.2 mm'),
    },
    'a map: pieceX, holeX, pieceY, holeY',
  );
  return {
    machine: machine('laser'),
    stripsX: lengths(unit, 'The upright strips pushed together', ['98.02 mm', '98.00 mm'], CALIPER),
    stripsY: lengths(unit, 'The other strips pushed together', ['97.96 mm', '97.98 mm'], CALIPER),
    square: z.optional(described(square, 'The square that drops out; tells the scale')),
    date: date(),
  };
}

function knifeShape(unit: LengthUnit) {
  return {
    machine: machine('knife'),
    sides: lengths(unit, 'Sides of the squares, at their middle', ['40.01 mm', '39.99 mm'], CALIPER),
    diagonals: lengths(unit, 'Diagonals of the squares, corner to corner', ['56.25 mm', '56.27 mm'], CALIPER),
    blade: z.optional(line('The blade', ['45°, fresh'])),
    date: date(),
  };
}

function bevelCouponShape(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  return {
    machine: machine('bevel'),
    thickness: needed(length('Of the board, measured', ['1.4 mm'], { least: 0.1, most: 25 })),
    starts: lengths(unit, 'How far cuts run past the corner where they start', ['4.2 mm', '4.1 mm'], PAST),
    stops: lengths(unit, 'How far cuts run past the corner where they stop', ['2.6 mm', '2.7 mm'], PAST),
    face: z.optional(lengths(unit, 'The fallout at its face, across and up', ['80.0 mm'], CALIPER)),
    back: z.optional(lengths(unit, 'The fallout at its back, across and up', ['77.2 mm'], CALIPER)),
    blade: z.optional(line('The blade', ['0.3 mm, fresh'])),
    date: date(),
  };
}

export const COUPON_SHAPES = { laser: laserShape, knife: knifeShape, 'bevel-coupon': bevelCouponShape };

export const COUPON_EXAMPLES = {
  laser: { machine: 'laser', stripsX: ['98.02 mm', '98.00 mm'], stripsY: ['97.96 mm', '97.98 mm'] },
  knife: { machine: 'knife', sides: ['40.01 mm', '39.99 mm'], diagonals: ['56.25 mm', '56.27 mm'] },
  'bevel-coupon': { machine: 'bevel', thickness: '1.4 mm', starts: ['4.2 mm', '4.1 mm'], stops: ['2.6 mm', '2.7 mm'] },
} as const;
