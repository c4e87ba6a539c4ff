import fc from 'fast-check';
import * as library from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { fitLine } from '../../src/bench/fit.ts';

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
