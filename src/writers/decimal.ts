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
  if (digits <= MOST_DIGITS && Math.abs(scaled) < 1e9 && Math.abs(scaled - whole) < 0.499)
    return written(whole, digits, scale);
  const fixed = value.toFixed(digits);
  if (!fixed.includes('.')) return fixed === '-0' ? '0' : fixed;
  let end = fixed.length;
  while (fixed.charCodeAt(end - 1) === 48) end--;
  if (fixed.charCodeAt(end - 1) === 46) end--;
  const text = fixed.slice(0, end);
  return text === '-0' ? '0' : text;
}

/** So many parts of a unit as a decimal: two whole numbers are written, since one that is not takes some ten times as long. */
function written(parts: number, digits: number, scale: number): string {
  const all = Math.abs(parts);
  const units = Math.trunc(all / scale);
  const behind = behindPoint(all - units * scale, digits, scale);
  return parts < 0 ? `-${units}${behind}` : `${units}${behind}`;
}

/** What stands behind the whole units, point and all, by how many of the parts there are; each made when it is first written. */
const BEHIND: (string | undefined)[][] = [];
/** With more digits there are more of them than are worth keeping. */
const MOST_KEPT = 4;

function behindPoint(parts: number, digits: number, scale: number): string {
  if (parts === 0) return '';
  if (digits > MOST_KEPT) return pointAnd(parts, digits);
  BEHIND[digits] ??= new Array<string | undefined>(scale);
  const known = BEHIND[digits];
  const text = known[parts] ?? pointAnd(parts, digits);
  known[parts] = text;
  return text;
}

const pointAnd = (parts: number, digits: number): string =>
  `.${String(parts).padStart(digits, '0').replace(/0+$/, '')}`;
