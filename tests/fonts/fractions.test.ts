import { expect, test } from 'vitest';
import { missing } from '../../src/fonts/coverage.ts';
import { fraction } from '../../src/fonts/fractions.ts';
import { FONTS } from './loaded.ts';

test.each([
  ['16 1/2', '16½'],
  ['16-1/2 in', '16½ in'],
  ['16\u00a01/2', '16½'],
  ['3/8"', '⅜"'],
  ['3 1/16 scant', '3\u2009¹⁄₁₆ scant'],
  ['11 31/32 × 13 7/8', '11\u2009³¹⁄₃₂ × 13⅞'],
  ['1/64', '¹⁄₆₄'],
  ['1/2 x 3/4', '½ x ¾'],
  ['set to 12 1/4.', 'set to 12¼.'],
  ['(5/8)', '(⅝)'],
  ['2/4', '²⁄₄'],
])('%s becomes %s', (text, set) => {
  expect(fraction(text)).toBe(set);
  expect(missing([fraction(text)], FONTS)).toEqual([]);
});

test.each(['1/2/2024', 'a/2', '4.1/2', '1/2.5', 'n1/2', '1/2nd', 'x/y', '16', '½', 'TCP/IP', '2024/1'])(
  '%s stays as it is',
  (text) => {
    expect(fraction(text)).toBe(text);
  },
);
