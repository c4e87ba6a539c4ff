import type { Point, Size } from '../geometry/point.ts';
import type { Guide } from '../shop/guide.ts';
import { showAmount } from '../units/print.ts';
import type { Units } from '../units/units.ts';
import { inchesFromMm } from '../units/units.ts';
import type { Setting } from './model.ts';

/** Within this a setting is said without "scant" or "full": half the width of a fine scale line. Common practice, no source. */
const EXACT_WITHIN = 0.05;

/** True where the guide cannot be set so: below its zero or its shortest setting, or beyond its longest. */
export const offScale = ({ longest = Infinity, shortest = 0 }: Guide, reading: number): boolean =>
  reading < Math.max(0, shortest - 1e-9) || reading > longest + 1e-9;

/** How far the board reaches beyond the line through `at`, in the direction `towards` (a unit vector): to its edge, or to its farthest corner. */
export function reach(board: Size, at: Point, towards: Point): number {
  const farthest = Math.max(0, board.width * towards.x) + Math.max(0, board.height * towards.y);
  return farthest - (at.x * towards.x + at.y * towards.y);
}

/** The finest rule that marks of 1/64 in or half a millimetre make. */
const PER_INCH = 64;
const PER_MM = 2;

const whole = (parts: number): boolean => Math.abs(parts - Math.round(parts)) < 1e-6;

/** The unit that a scale of this graduation has its figures in: the job's, unless it is plainly one of the other kind. */
export function scaleUnits(graduation: number, units: Units): Units {
  const inches = whole(inchesFromMm(graduation) * PER_INCH);
  if (units === 'in') return !inches && whole(graduation * PER_MM) ? 'mm' : 'in';
  return inches && !whole(graduation * PER_MM) ? 'in' : units;
}

/**
 * A reading on the nearest graduation. "Scant": the true setting is a little less than the printed one; "full": a little
 * more; `exact` within 0.05 mm.
 */
export function settingOf(reading: number, graduation: number, units: Units): Setting {
  const value = Math.round(reading / graduation + 1e-9) * graduation;
  const remainder = reading - value;
  const sense = Math.abs(remainder) <= EXACT_WITHIN ? 'exact' : remainder < 0 ? 'scant' : 'full';
  const amount = showAmount(value, units);
  return { value, amount, text: `${amount} ${units}`, unit: units, sense, remainder };
}
