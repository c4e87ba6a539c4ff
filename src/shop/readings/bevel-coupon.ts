import * as z from 'zod/mini';
import { line, needed } from '../../read/fields/fields.ts';
import { lengthFields, type Range } from '../../read/fields/length-fields.ts';
import type { LengthUnit } from '../../units/units.ts';
import { CALIPER, date, lengths, machine } from './parts.ts';

export const BEVEL_COUPON_EXAMPLE = {
  machine: 'bevel',
  thickness: '1.4 mm',
  starts: ['4.2 mm', '4.1 mm'],
  stops: ['2.6 mm', '2.7 mm'],
} as const;

/** Past a corner, as for a head at the bench. */
const PAST: Range = { least: -30, most: 30 };

export function bevelCouponShape(unit: LengthUnit) {
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
