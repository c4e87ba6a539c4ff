import { printDecimal } from '../../units/print.ts';
import type { Units } from '../../units/units.ts';

/** Digits that come to a hundredth of a millimetre, or near it: what a caliper reads and a head is set by. */
const DIGITS: Readonly<Record<Units, number>> = { mm: 2, cm: 3, in: 3 };

/** A small length: a thickness, a depth, how far a scribe is off a corner. */
export const fine = (mm: number, units: Units = 'mm'): string =>
  `${printDecimal(mm, units, DIGITS[units]).text} ${units}`;
