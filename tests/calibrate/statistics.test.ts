import fc from 'fast-check';
import * as library from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { mean, median, standardDeviation, standingOut, standingOutOfLine } from '../../src/calibrate/statistics.ts';

describe('statistics', () => {
  const values = fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: 2, maxLength: 30 });

  test('agree with a general statistics library', () => {
    fc.assert(
      fc.property(values, (list) => {
        expect(mean(list)).toBeCloseTo(library.mean(list), 9);
        expect(median(list)).toBeCloseTo(library.median(list), 12);
        expect(standardDeviation(list)!).toBeCloseTo(library.sampleStandardDeviation(list), 9);
        const middle = library.median(list);
        const limit = 3 * Math.max(1.4826 * library.medianAbsoluteDeviation(list), 0.1);
        expect(standingOut(list)).toEqual(list.map((v) => Math.abs(v - middle) > limit + 1e-9));
      }),
    );
  });

  test('the scale never falls below 0.1 mm', () => {
    // All alike but one: MAD is 0, so the limit is 3 × 0.1.
    expect(standingOut([1, 1, 1, 1, 1.3])).toEqual([false, false, false, false, false]);
    expect(standingOut([1, 1, 1, 1, 1.31])).toEqual([false, false, false, false, true]);
    // With a wider scatter the limit widens: deviations 0, 0.2, 0.2, 0.4, 0.4 about 1: MAD 0.2, limit 0.88956.
    expect(standingOut([0.6, 0.8, 1, 1.2, 1.4, 1.85])).toEqual([false, false, false, false, false, false]);
  });

  test('a wild sample stands out of a line that it would have pulled along', () => {
    const line = [100, 150, 200, 250, 300].map((x) => ({ x, y: 0.5 + 1.002 * x }));
    const wild = line.map((p, i) => (i === 4 ? { ...p, y: p.y + 4 } : p));
    expect(standingOutOfLine(line)).toEqual([false, false, false, false, false]);
    expect(standingOutOfLine(wild)).toEqual([false, false, false, false, true]);
  });
});
