import fc from 'fast-check';
import * as library from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { fitLine } from '../../src/bench/fit.ts';
import { mean, median, standardDeviation, standingOut, standingOutOfLine } from '../../src/bench/statistics.ts';

/**
 * NIST Statistical Reference Datasets, linear regression, "Norris": calibration of ozone monitors, [y, x]. Data and
 * certified values are given from memory; that the one gives the other to ten digits is what confirms both.
 */
const NORRIS: readonly (readonly [number, number])[] = [
  [0.1, 0.2],
  [338.8, 337.4],
  [118.1, 118.2],
  [888.0, 884.6],
  [9.2, 10.1],
  [228.1, 226.5],
  [668.5, 666.3],
  [998.5, 996.3],
  [449.1, 448.6],
  [778.9, 777.0],
  [559.2, 558.2],
  [0.3, 0.4],
  [0.1, 0.6],
  [778.1, 775.5],
  [668.8, 666.9],
  [339.3, 338.0],
  [448.9, 447.5],
  [10.8, 11.6],
  [557.7, 556.0],
  [228.3, 228.1],
  [998.0, 995.8],
  [888.8, 887.6],
  [119.6, 120.2],
  [0.3, 0.3],
  [0.6, 0.3],
  [557.6, 556.8],
  [339.3, 339.1],
  [888.0, 887.2],
  [998.5, 999.0],
  [778.9, 779.0],
  [10.2, 11.1],
  [117.6, 118.3],
  [228.9, 229.2],
  [668.4, 669.1],
  [449.2, 448.9],
  [0.2, 0.5],
];

const digits = (actual: number, certified: number): void => {
  expect(Math.abs(actual / certified - 1)).toBeLessThan(1e-10);
};

describe('least squares', () => {
  test('the certified values of the Norris data', () => {
    const line = fitLine(NORRIS.map(([y, x]) => ({ x, y })));
    digits(line.intercept, -0.262323073774029);
    digits(line.slope, 1.00211681802045);
    digits(line.interceptError!, 0.232818234301152);
    digits(line.slopeError!, 0.000429796848199937);
    digits(line.residualDeviation!, 0.884796396144373);
    digits(line.determination, 0.999993745883712);
  });

  const sample = fc.record({
    x: fc.double({ min: -500, max: 500, noNaN: true }),
    y: fc.double({ min: -500, max: 500, noNaN: true }),
  });

  test('agrees with a general statistics library', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(sample, { minLength: 3, maxLength: 30, selector: (s) => Math.round(s.x) }),
        (samples) => {
          const ours = fitLine(samples);
          const theirs = library.linearRegression(samples.map((s) => [s.x, s.y]));
          expect(ours.slope).toBeCloseTo(theirs.m, 6);
          expect(ours.intercept).toBeCloseTo(theirs.b, 4);
        },
      ),
    );
  });

  test('two samples are met exactly, alike x give the mean', () => {
    const two = fitLine([
      { x: 1, y: 1 },
      { x: 3, y: 1.6 },
    ]);
    expect(two.slope).toBeCloseTo(0.3, 12);
    expect(two.residuals.every((r) => Math.abs(r) < 1e-12)).toBe(true);
    expect(two.residualDeviation).toBeUndefined();
    expect(
      fitLine([
        { x: 2, y: 1 },
        { x: 2, y: 4 },
      ]),
    ).toMatchObject({ intercept: 2.5, slope: 0, residuals: [-1.5, 1.5] });
  });
});

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
