import { inchesFromMm, type LengthUnit, MM_PER_INCH, mmPer } from './units.ts';

export interface Printed {
  /** Without a unit: `16 1/2`, `419.1`. */
  readonly text: string;
  /** Given − printed, mm. */
  readonly remainder: number;
}

/** The finest graduation of a rule that messages use. */
const FINEST = 64;

function reduced(numerator: number, denominator: number): readonly [number, number] {
  let [a, b] = [numerator, denominator];
  while (b !== 0) [a, b] = [b, a % b];
  return [numerator / a, denominator / a];
}

/** The nearest fraction of an inch on a rule with `denominator` parts to the inch (a whole number); halves round away from zero. A length that is not finite throws. */
export function printFraction(mm: number, denominator: number): Printed {
  if (!Number.isFinite(mm)) throw new RangeError(`${mm} is not a length`);
  const sign = mm < 0 ? '-' : '';
  const parts = Math.round(inchesFromMm(Math.abs(mm)) * denominator + 1e-9);
  const whole = Math.floor(parts / denominator);
  const rest = parts % denominator;
  const printed = ((sign === '-' ? -1 : 1) * parts * MM_PER_INCH) / denominator;
  const remainder = mm - printed;
  if (rest === 0) return { text: `${parts === 0 ? '' : sign}${whole}`, remainder };
  const [top, under] = reduced(rest, denominator);
  return { text: `${sign}${whole === 0 ? '' : `${whole} `}${top}/${under}`, remainder };
}

/** A decimal in `unit` with `digits` after the point, without trailing zeros. */
export function printDecimal(mm: number, unit: LengthUnit, digits: number): Printed {
  const amount = Number((mm / mmPer(unit)).toFixed(digits));
  return { text: String(amount === 0 ? 0 : amount), remainder: mm - amount * mmPer(unit) };
}

/**
 * Without its unit, which stands elsewhere: inches as a fraction where the length lies on a rule of 64ths (within 0.002 mm),
 * else as a decimal of four digits; mm and cm to the hundredth of a millimetre.
 */
export function showAmount(mm: number, unit: LengthUnit): string {
  if (unit !== 'in') return printDecimal(mm, unit, unit === 'mm' ? 2 : 3).text;
  const fraction = printFraction(mm, FINEST);
  return Math.abs(fraction.remainder) <= 0.002 ? fraction.text : printDecimal(mm, 'in', 4).text;
}

/** For messages and lists, unit included. */
export const showLength = (mm: number, unit: LengthUnit): string => `${showAmount(mm, unit)} ${unit}`;

/** `16 × 20 in`. */
export function showSize(size: { readonly width: number; readonly height: number }, unit: LengthUnit): string {
  return `${showAmount(size.width, unit)} × ${showLength(size.height, unit)}`;
}

/** For sizes that come out as they come out: inches to the nearest 64th, with the millimetres where that is not the whole truth. */
export function showNear(mm: number, unit: LengthUnit): string {
  const fraction = printFraction(mm, FINEST);
  if (unit !== 'in' || Math.abs(fraction.remainder) <= 0.002) return showLength(mm, unit);
  return `${fraction.text} in (${printDecimal(mm, 'mm', 2).text} mm)`;
}
