import { expect, it } from 'vitest';
import { turnsIntoAnother } from '../../src/text/numerals.ts';

it('numbers that are others upside down are told from those that are not', () => {
  const turned = Array.from({ length: 120 }, (_, i) => `${i + 1}`).filter(turnsIntoAnother);
  // 60 is 09 upside down and 69 is 69; 2, 3, 4, 5 and 7 are nothing.
  expect(turned.map(Number)).toEqual([
    6, 9, 16, 18, 19, 61, 66, 68, 81, 86, 89, 91, 98, 99, 106, 108, 109, 116, 118, 119,
  ]);
  for (const text of ['', '0', '06', '6 in', 'S6', '-9']) expect(turnsIntoAnother(text)).toBe(false);
});
