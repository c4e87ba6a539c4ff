import fc from 'fast-check';
import { expect, test } from 'vitest';
import { decimal } from '../../src/writers/decimal.ts';

test('plain decimals, rounded once', () => {
  expect(decimal(0, 4)).toBe('0');
  expect(decimal(-0, 4)).toBe('0');
  expect(decimal(-0.00004, 4)).toBe('0');
  expect(decimal(-0.4, 0)).toBe('0');
  expect(decimal(1e-7, 4)).toBe('0');
  expect(decimal(0.00006, 4)).toBe('0.0001');
  expect(decimal(100, 0)).toBe('100');
  expect(decimal(100, 4)).toBe('100');
  expect(decimal(12.5, 4)).toBe('12.5');
  expect(decimal(-2.00011, 4)).toBe('-2.0001');
  expect(decimal(2834.6456692913, 6)).toBe('2834.645669');
});

test('any length comes back within half of its last digit, never with an exponent', () => {
  fc.assert(
    fc.property(fc.double({ min: -1e7, max: 1e7, noNaN: true }), fc.integer({ min: 0, max: 9 }), (value, digits) => {
      const text = decimal(value, digits);
      expect(text).toMatch(/^(?:0|-?(?:[1-9]\d*|0)(?:\.\d*[1-9])?)$/);
      expect(text).not.toBe('-0');
      expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(0.5 * 10 ** -digits + Math.abs(value) * 1e-15);
    }),
  );
});

test('what is no length is refused', () => {
  for (const value of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 1e16]) {
    expect(() => decimal(value, 4)).toThrow(/no length that can be written/);
  }
});
