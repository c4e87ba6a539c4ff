import { mmFromInches, type Units } from '../units/units.ts';

/** What may be off, in inches and in mm: common practice, no source. */
const MAY_BE_OFF = { size: [1 / 32, 0.8], reveal: [1 / 64, 0.4], diagonal: [1 / 32, 0.8] } as const;

/** What a length on the bench may be off, mm: the round one of the job's unit. */
export function tolerance(of: keyof typeof MAY_BE_OFF, units: Units): number {
  const [inches, mm] = MAY_BE_OFF[of];
  return units === 'in' ? mmFromInches(inches) : mm;
}

/** Of a cut's end on the test corner, mm: common practice, no source. */
export const END_TOLERANCE = 0.25;
