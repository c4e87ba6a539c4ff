/** With more of them a small number would be written with an exponent. */
const MOST_DIGITS = 6;

/**
 * The one place where a writer rounds. A plain decimal of at most `digits` digits after the point: no exponent, no
 * trailing zeros, no "-0". Beyond 1e15 and for what is no number it throws, since no drawing holds such a length.
 */
export function decimal(value: number, digits: number): string {
  if (!(Math.abs(value) <= 1e15)) throw new RangeError(`${value} is no length that can be written`);
  const scale = 10 ** digits;
  const scaled = value * scale;
  const whole = Math.round(scaled);
  // Away from the middle between two, whatever way of rounding gives the same; nine digits come back as they are written.
  if (digits <= MOST_DIGITS && Math.abs(scaled) < 1e9 && Math.abs(scaled - whole) < 0.499) return String(whole / scale);
  const fixed = value.toFixed(digits);
  if (!fixed.includes('.')) return fixed === '-0' ? '0' : fixed;
  let end = fixed.length;
  while (fixed.charCodeAt(end - 1) === 48) end--;
  if (fixed.charCodeAt(end - 1) === 46) end--;
  const text = fixed.slice(0, end);
  return text === '-0' ? '0' : text;
}
