import * as z from 'zod/mini';
import { line } from '../../read/fields/fields.ts';
import type { LengthUnit } from '../../units/units.ts';
import { CALIPER, date, lengths, machine } from './parts.ts';

export const KNIFE_EXAMPLE = {
  machine: 'knife',
  sides: ['40.01 mm', '39.99 mm'],
  diagonals: ['56.25 mm', '56.27 mm'],
} as const;

export function knifeShape(unit: LengthUnit) {
  return {
    machine: machine('knife'),
    sides: lengths(unit, 'Sides of the squares, at their middle', ['40.01 mm', '39.99 mm'], CALIPER),
    diagonals: lengths(unit, 'Diagonals of the squares, corner to corner', ['56.25 mm', '56.27 mm'], CALIPER),
    blade: z.optional(line('The blade', ['45°, fresh'])),
    date: date(),
  };
}
