import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { diagonal, diagonalDifference, shearOf } from '../../src/geometry/shear.ts';

/** After Mainwaring, How to mat (MATTING.TXT): a rectangle is square where its diagonals are alike. */
describe('diagonals', () => {
  test('of 11 × 14 and 16 × 20 in (check value 46)', () => {
    expect(diagonal({ width: 11, height: 14 })).toBeCloseTo(17.80449, 5);
    expect(diagonal({ width: 16, height: 20 })).toBeCloseTo(25.6125, 4);
  });

  test('400 × 500 mm sheared by 1 mm: they differ by 1.2494 mm, and back (check value 47)', () => {
    const mat = { width: 400, height: 500 };
    expect(diagonalDifference(mat, 1)).toBeCloseTo(1.2494, 4);
    expect(shearOf(mat, diagonalDifference(mat, 1))).toBeCloseTo(1, 12);
    expect(shearOf(mat, 0)).toBe(0);
  });

  test('any shear comes back from the difference that it makes', () => {
    const side = fc.double({ min: 20, max: 2000, noNaN: true });
    fc.assert(
      fc.property(side, side, fc.double({ min: -10, max: 10, noNaN: true }), (width, height, shear) => {
        const back = shearOf({ width, height }, diagonalDifference({ width, height }, shear));
        expect(Math.abs(back - shear)).toBeLessThan(1e-6 * Math.max(1, Math.abs(shear)));
      }),
    );
  });
});
