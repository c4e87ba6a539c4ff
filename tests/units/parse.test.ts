import { describe, expect, it } from 'vitest';
import { parseLength, parseSize } from '../../src/units/parse.ts';
import type { LengthUnit } from '../../src/units/units.ts';

const mm = (text: string, unit: LengthUnit = 'in'): number | string => {
  const parsed = parseLength(text, unit);
  return parsed.ok ? parsed.value : parsed.code;
};

describe('a length', () => {
  it.each<[string, LengthUnit, number]>([
    ['16', 'in', 406.4],
    ['16', 'mm', 16],
    ['16', 'cm', 160],
    ['16 1/2', 'in', 419.1],
    ['16-1/2', 'in', 419.1],
    ['16-1/2 in', 'mm', 419.1],
    ['16 1/2in', 'mm', 419.1],
    ['16+1/2"', 'mm', 419.1],
    ['16½', 'in', 419.1],
    ['16 ½ in', 'mm', 419.1],
    ['½', 'in', 12.7],
    ['⅜"', 'mm', 9.525],
    ['5/8"', 'mm', 15.875],
    ['5/8″', 'mm', 15.875],
    ['5/8”', 'mm', 15.875],
    ["5/8''", 'mm', 15.875],
    ['5/8 inch', 'mm', 15.875],
    ['5⁄8', 'in', 15.875],
    ['5 / 8', 'in', 15.875],
    ['41.9 cm', 'in', 419],
    ['419 mm', 'in', 419],
    ['419MM', 'in', 419],
    ['.5', 'in', 12.7],
    ['0.25', 'mm', 0.25],
    ['0', 'in', 0],
    ['-1/2', 'in', -12.7],
    ['−0.4 mm', 'in', -0.4],
    ["2'", 'mm', 609.6],
    ['2\' 6"', 'mm', 762],
    ['2\'-6 1/2"', 'mm', 774.7],
    ['2 ft 6', 'mm', 762],
    [' 16  1/2 ', 'in', 419.1],
    ['16\u00a01/2', 'in', 419.1],
    ['16\u20111/2', 'in', 419.1],
    ['31 63/64', 'in', 812.403125],
  ])('%s (in %s) is %d mm', (text, unit, expected) => {
    expect(mm(text, unit)).toBeCloseTo(expected, 9);
  });

  it.each([
    ['', 'length-empty'],
    ['   ', 'length-empty'],
    ['1,5', 'length-decimal-comma'],
    ['16 1/0', 'length-zero-denominator'],
    ['16 3/2', 'length-improper'],
    ['2\' 12"', 'length-improper'],
    ['2\' -6"', 'length-unreadable'],
    ["2' 3'", 'length-unreadable'],
    ["2' 6 mm", 'length-unreadable'],
    ['abc', 'length-unreadable'],
    ['1e3', 'length-unreadable'],
    ['NaN', 'length-unreadable'],
    ['Infinity', 'length-unreadable'],
    ['0x10', 'length-unreadable'],
    ['5.', 'length-unreadable'],
    ['1/2/3', 'length-unreadable'],
    ['1 2', 'length-unreadable'],
    ['16 in 1/2', 'length-unreadable'],
    ['16 1/2 1/4', 'length-unreadable'],
    ['16 m', 'length-unreadable'],
    ['16 px', 'length-unreadable'],
    ['--1', 'length-unreadable'],
    ['1\n', 'length-control'],
    ['1\u0000', 'length-control'],
    ['1\u200b2', 'length-control'],
    ['1'.repeat(65), 'length-too-long'],
    ['٣', 'length-unreadable'],
  ])('%j is refused as %s', (text, code) => {
    expect(mm(text)).toBe(code);
  });

  it('says what to write instead of a decimal comma', () => {
    const parsed = parseLength('16,5 cm', 'in');
    expect(parsed).toMatchObject({ ok: false, hint: 'write a decimal point: 16.5 cm' });
  });

  it('shows of a hostile text no more than its start, and no control characters', () => {
    const parsed = parseLength(`${'z'.repeat(50)}`, 'in');
    expect(parsed).toMatchObject({ ok: false, message: `"${'z'.repeat(40)}…" is not a length` });
    const control = parseLength('\u001b[31m', 'in');
    expect(control.ok ? '' : control.message).toContain('\\u001b');
  });
});

describe('a size', () => {
  it.each<[string, LengthUnit, number, number]>([
    ['16 x 20', 'in', 406.4, 508],
    ['16x20', 'in', 406.4, 508],
    ['16 X 20', 'in', 406.4, 508],
    ['16 × 20', 'in', 406.4, 508],
    ['16 * 20', 'in', 406.4, 508],
    ['16 by 20', 'in', 406.4, 508],
    ['10 1/2 x 13 1/2', 'in', 266.7, 342.9],
    ['32 x 40 in', 'mm', 812.8, 1016],
    ['32 in x 40 in', 'mm', 812.8, 1016],
    ['32 in x 40', 'in', 812.8, 1016],
    ['270 x 340 mm', 'in', 270, 340],
    ['10" x 340 mm', 'in', 254, 340],
    ["2' x 3'", 'mm', 609.6, 914.4],
  ])('%s (in %s) is %d × %d mm', (text, unit, width, height) => {
    const parsed = parseSize(text, unit);
    expect(parsed.ok).toBe(true);
    if (!parsed.ok) return;
    expect(parsed.value.width).toBeCloseTo(width, 9);
    expect(parsed.value.height).toBeCloseTo(height, 9);
  });

  it.each([
    ['16', 'size-unreadable'],
    ['16 x 20 x 2', 'size-unreadable'],
    ['16 x', 'length-empty'],
    ['x 20', 'length-empty'],
    ['16 x 20,5', 'length-decimal-comma'],
    ['32 cm x 40', 'size-unit'],
    ['1 x 2\u0007', 'length-control'],
    ['x'.repeat(129), 'size-too-long'],
    ['x'.repeat(128), 'size-unreadable'],
  ])('%j is refused as %s', (text, code) => {
    expect(parseSize(text, 'in')).toMatchObject({ ok: false, code });
  });
});

it('knows every ready-made fraction of Unicode, as its compatibility decomposition has it', () => {
  // U+00BC to U+00BE and U+2150 to U+215E: ¼ ½ ¾, ⅐ to ⅞.
  const ready = [...Array.from({ length: 3 }, (_, i) => 0xbc + i), ...Array.from({ length: 15 }, (_, i) => 0x2150 + i)];
  for (const code of ready) {
    const sign = String.fromCodePoint(code);
    const [above, below] = sign.normalize('NFKD').split('\u2044').map(Number) as [number, number];
    expect(mm(`2${sign}`, 'mm'), sign).toBeCloseTo(2 + above / below, 12);
    expect(mm(sign, 'in'), sign).toBeCloseTo((25.4 * above) / below, 12);
  }
});
