import * as z from 'zod/mini';
import { defined } from '../problems/defined.ts';
import { described, line, record } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import { nearOne } from '../read/fields/near-one.ts';
import type { LengthUnit, Units } from '../units/units.ts';
import { either } from './units.ts';

export interface Guide {
  readonly graduation: number;
  readonly longest?: number;
  readonly shortest?: number;
  /** Thickness it was set at; undefined switches the thickness term off. */
  readonly setAt?: number;
  /** True setting = a + b × reading. */
  readonly a: number;
  readonly b: number;
}

/** A scale of sixteenths, or of millimetres, that reads true (common practice, no source). */
export const usualGuide = (units: Units): Guide => ({ graduation: either(units, 1 / 16, 1), a: 0, b: 1 });

export function guideSchema(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const law = 'True setting = a + b x reading';
  const setAt = 'Thickness of the board it was set at; left out where the bar keeps its height';
  const guide = record(
    {
      graduation: z.optional(length('The finest division of its scale', ['1/16 in'], { least: 0.05, most: 26 })),
      longest: z.optional(length('The longest distance that it can be set to', ['12 in'], { least: 10 })),
      shortest: z.optional(length('The shortest distance that it can be set to', ['1/2 in'], { least: 0, most: 500 })),
      setAt: z.optional(length(setAt, ['1.4 mm'], { least: 0.1, most: 25 })),
      a: z.optional(length(law, [0, '0.3 mm'], { least: -50, most: 50 })),
      b: z.optional(nearOne(law, 1)),
      date: z.optional(line('The day that it was calibrated', ['2026-03-01'])),
    },
    'a map: graduation, longest, shortest, setAt, a, b',
  );
  return described(guide, 'The guide that sets the border', [
    { graduation: '1/16 in', longest: '12 in', setAt: '1.4 mm' },
  ]);
}

export function guideFrom(given: z.output<ReturnType<typeof guideSchema>>, units: Units): Guide {
  const usual = usualGuide(units);
  return {
    graduation: given.graduation ?? usual.graduation,
    a: given.a ?? usual.a,
    b: given.b ?? usual.b,
    ...defined({ longest: given.longest, shortest: given.shortest, setAt: given.setAt }),
  };
}
