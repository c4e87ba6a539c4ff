import * as z from 'zod/mini';
import { described, record } from '../../read/fields/fields.ts';
import type { LengthUnit } from '../../units/units.ts';
import { CALIPER, date, lengths, machine } from './parts.ts';

export const LASER_EXAMPLE = {
  machine: 'laser',
  stripsX: ['98.02 mm', '98.00 mm'],
  stripsY: ['97.96 mm', '97.98 mm'],
} as const;

export function laserShape(unit: LengthUnit) {
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
