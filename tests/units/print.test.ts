import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseLength, parseSize } from '../../src/units/parse.ts';
import { printDecimal, printFraction, showLength, showSize } from '../../src/units/print.ts';
import { inchesFromMm, LENGTH_UNITS, type LengthUnit, mmFromInches, mmPer } from '../../src/units/units.ts';

const parsed = (text: string, unit: LengthUnit): number => {
  const result = parseLength(text, unit);
  if (!result.ok) throw new Error(`${text}: ${result.message}`);
  return result.value;
};

describe('printing', () => {
  it.each<[number, number, string, number]>([
    [mmFromInches(16.5), 16, '16 1/2', 0],
    [mmFromInches(0.625), 16, '5/8', 0],
    [mmFromInches(3), 16, '3', 0],
    [0, 16, '0', 0],
    [mmFromInches(-0.5), 16, '-1/2', 0],
    [mmFromInches(3 + 1 / 16) - 0.4, 16, '3 1/16', -0.4],
    [mmFromInches(1 / 32), 16, '1/16', -mmFromInches(1 / 32)],
    [mmFromInches(0.999), 16, '1', mmFromInches(-0.001)],
    [-0.1, 16, '0', -0.1],
  ])('%d mm on a rule of %d parts is %s', (mm, parts, text, remainder) => {
    const printed = printFraction(mm, parts);
    expect(printed.text).toBe(text);
    expect(printed.remainder).toBeCloseTo(remainder, 9);
  });

  it('prints decimals without trailing zeros', () => {
    expect(printDecimal(419.1, 'mm', 2).text).toBe('419.1');
    expect(printDecimal(419.1, 'cm', 2).text).toBe('41.91');
    expect(printDecimal(-0.001, 'mm', 2).text).toBe('0');
    expect(printDecimal(419.123, 'mm', 1).remainder).toBeCloseTo(0.023, 9);
  });

  it('shows lengths and sizes with their unit', () => {
    expect(showLength(419.1, 'in')).toBe('16 1/2 in');
    expect(showLength(1.4, 'in')).toBe('0.0551 in');
    expect(showLength(419.128, 'mm')).toBe('419.13 mm');
    expect(showLength(419.128, 'cm')).toBe('41.913 cm');
    expect(showSize({ width: 406.4, height: 508 }, 'in')).toBe('16 × 20 in');
  });
});

/** 10,000 lengths up to 5 m, each printed in every form that the parser takes. */
describe('what is printed is read back', () => {
  const runs = { numRuns: 10_000 };
  const length = fc.double({ min: 0, max: 5000, noNaN: true });

  it('as fractions of any rule, to the remainder that is told', () => {
    const rule = fc.constantFrom(1, 2, 4, 8, 10, 12, 16, 32, 64, 100);
    fc.assert(
      fc.property(
        length,
        rule,
        fc.boolean(),
        fc.nat(),
        fc.constantFrom(...TAILS),
        (mm, parts, negative, pick, tail) => {
          const given = negative ? -mm : mm;
          const printed = printFraction(given, parts);
          expect(Math.abs(printed.remainder)).toBeLessThanOrEqual(mmFromInches(0.5 / parts) + 1e-6);
          const all = forms(printed.text);
          const back = parsed(`${all[pick % all.length]}${tail}`, tail === '' ? 'in' : 'mm');
          expect(Math.abs(back + printed.remainder - given)).toBeLessThan(1e-9);
        },
      ),
      runs,
    );
  });

  it('as decimals of any unit', () => {
    fc.assert(
      fc.property(length, fc.constantFrom(...LENGTH_UNITS), fc.nat({ max: 6 }), (mm, unit, digits) => {
        const printed = printDecimal(mm, unit, digits);
        expect(Math.abs(printed.remainder)).toBeLessThanOrEqual(mmPer(unit) * 0.5 * 10 ** -digits + 1e-9);
        expect(Math.abs(parsed(printed.text, unit) + printed.remainder - mm)).toBeLessThan(1e-9);
        expect(Math.abs(parsed(`${printed.text} ${unit}`, 'in') + printed.remainder - mm)).toBeLessThan(1e-9);
      }),
      runs,
    );
  });

  it('as messages and documents show it', () => {
    fc.assert(
      fc.property(length, length, fc.constantFrom(...LENGTH_UNITS), (width, height, unit) => {
        expect(Math.abs(parsed(showLength(width, unit), 'mm') - width)).toBeLessThan(0.0051);
        const size = parseSize(showSize({ width, height }, unit), 'mm');
        expect(size.ok).toBe(true);
        if (size.ok) expect(Math.abs(size.value.width - width)).toBeLessThan(0.0051);
        if (size.ok) expect(Math.abs(size.value.height - height)).toBeLessThan(0.0051);
      }),
      runs,
    );
  });

  it('in inches and in mm alike', () => {
    fc.assert(
      fc.property(fc.nat({ max: 200 * 64 }), (parts) => {
        const { text } = printFraction((parts * mmFromInches(1)) / 64, 64);
        const mm = parsed(text, 'in');
        expect(inchesFromMm(mm) * 64).toBeCloseTo(parts, 9);
        expect(parsed(`${mm} mm`, 'in')).toBeCloseTo(mm, 9);
      }),
      runs,
    );
  });
});

const TAILS = ['', ' in', 'in', '"', '″', '”', ' inches', "''"];

const READY: Readonly<Record<string, string>> = {
  '1/4': '¼',
  '1/2': '½',
  '3/4': '¾',
  '1/8': '⅛',
  '3/8': '⅜',
  '5/8': '⅝',
  '7/8': '⅞',
  '1/10': '⅒',
  '1/5': '⅕',
  '2/5': '⅖',
  '3/5': '⅗',
  '4/5': '⅘',
  '1/3': '⅓',
  '2/3': '⅔',
  '1/6': '⅙',
  '5/6': '⅚',
};

/** The ways to write a printed fraction. */
function forms(text: string): readonly string[] {
  const all = [text, text.replace('/', '⁄'), text.replace('/', ' / '), text.replace('-', '−')];
  if (text.includes(' ')) all.push(text.replace(' ', '-'), text.replace(' ', '\u00a0'));
  const fraction = text.split(' ').at(-1)!.replace('-', '');
  const ready = READY[fraction];
  if (ready !== undefined) all.push(text.replace(fraction, ready), text.replace(` ${fraction}`, ready));
  return all;
}

it('refuses a length that is none instead of looking for its fraction for ever', () => {
  for (const none of [Number.NaN, Number.POSITIVE_INFINITY]) expect(() => printFraction(none, 64)).toThrow(RangeError);
});
