import { describe, expect, test } from 'vitest';
import { calibrateGuide, type GuideReading } from '../../src/calibrate/guide.ts';
import { guideReading } from '../../src/mat/guide-reading.ts';
import { bevel } from '../bench/mats.ts';
import { randomSource } from '../bench/random.ts';

const SETTINGS = [25, 75, 125, 200, 300];
const strips = (measure: (reading: number, i: number) => number): GuideReading[] =>
  SETTINGS.map((reading, i) => ({ reading, measured: measure(reading, i) }));

function solved(list: readonly GuideReading[]) {
  const result = calibrateGuide(list);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return { ...result.value, codes: result.warnings.map((w) => w.code) };
}

describe('guide', () => {
  test('true setting = a + b × reading; the reading that follows from it cuts true', () => {
    const found = solved(strips((r) => 0.4 + 1.003 * r));
    expect(found.a).toBeCloseTo(0.4, 9);
    expect(found.b).toBeCloseTo(1.003, 12);
    expect(found).toMatchObject({ rest: 'none', standOut: [], codes: [] });
    // For a border of 80 mm: (80 − 0.4) / 1.003.
    expect(guideReading({ graduation: 1, a: found.a, b: found.b }, 80, 1.4, bevel())).toBeCloseTo(79.6 / 1.003, 8);
  });

  test('a strip that stands out does not count', () => {
    const found = solved(strips((r, i) => r + (i === 3 ? 3 : 0)));
    expect(found).toMatchObject({ standOut: [3], kept: [0, 1, 2, 4], codes: ['calibrate-reading-stands-out'] });
    expect(found.b).toBeCloseTo(1, 12);
  });

  test('a scale that is true is called another one by chance in one test of twenty, and one that is off hardly ever not', () => {
    const random = randomSource(15);
    const shares = (law: (reading: number) => number): number => {
      const tests = Array.from({ length: 4000 }, () => solved(strips((r) => law(r) + random.normal(0.1))));
      // What stands out and is thrown away makes the rest look better than it is: only whole tests are counted.
      const whole = tests.filter(({ standOut }) => standOut.length === 0);
      expect(whole.length).toBeGreaterThan(3800);
      return whole.filter(({ chance }) => chance < 0.05).length / whole.length;
    };
    expect(shares((r) => r)).toBeGreaterThan(0.04);
    expect(shares((r) => r)).toBeLessThan(0.06);
    expect(shares((r) => 1 + r)).toBeGreaterThan(0.95);
  });

  test('two strips are judged by what can be read, and by the law that was there before', () => {
    const two = (by: number, before?: { a: number; b: number }) => {
      const result = calibrateGuide(
        [50, 250].map((reading) => ({ reading, measured: reading + by })),
        before,
      );
      return result.ok ? result.value.chance : Number.NaN;
    };
    // exp(−2 · 0.2² / (2 · 0.1²)).
    expect(two(0.2)).toBeCloseTo(Math.exp(-4), 9);
    expect(two(0.2, { a: 0.2, b: 1 })).toBeCloseTo(1, 9);
  });

  test('what is left over: play without a pattern, a bend with one', () => {
    const play = solved(strips((r, i) => r + [0.25, -0.25, 0.2, -0.3, 0.2][i]!));
    expect(play).toMatchObject({ rest: 'play', codes: ['calibrate-guide-play'] });
    // A bend of 0.4 mm at the middle, by a parabola.
    const bent = solved(strips((r) => r + 0.8 * (1 - ((r - 160) / 140) ** 2)));
    expect(bent).toMatchObject({ rest: 'uneven', codes: ['calibrate-guide-uneven'] });
  });

  test('read in another unit', () => {
    expect(solved(strips((r) => r * 1.1)).codes).toEqual(['calibrate-guide-scale']);
  });

  test('what cannot be used is refused', () => {
    const codes = (list: readonly GuideReading[]) => {
      const result = calibrateGuide(list);
      return result.ok ? [] : result.problems.map((p) => p.code);
    };
    expect(codes([])).toEqual(['calibrate-readings-few']);
    expect(
      codes([
        { reading: 50, measured: 50 },
        { reading: 50, measured: 51 },
      ]),
    ).toEqual(['calibrate-readings-few']);
    expect(codes([{ reading: -1, measured: Number.NaN }])).toEqual([
      'calibrate-reading-unusable',
      'calibrate-reading-unusable',
    ]);
  });

  test('a thousand simulated guides, one strip in ten grossly wrong: corrected settings within 0.25 mm', () => {
    const random = randomSource(4);
    let good = 0;
    let total = 0;
    const ratios: number[] = [];
    for (let n = 0; n < 1000; n++) {
      const [a, b] = [random.between(-1.5, 1.5), random.between(0.99, 1.01)];
      const list = [...SETTINGS, ...SETTINGS].map((reading) => ({
        reading,
        measured: a + b * reading + random.normal(0.1) + (random.uniform() < 0.1 ? random.between(0.6, 5) : 0),
      }));
      const found = solved(list);
      for (const border of [40, 80, 160, 280]) {
        const reading = guideReading({ graduation: 1, a: found.a, b: found.b }, border, 1.4, bevel());
        total++;
        if (Math.abs(a + b * reading - border) <= 0.25) good++;
      }
      ratios.push((found.b - b) / found.line.slopeError!);
    }
    expect(good / total).toBeGreaterThanOrEqual(0.99);
    const within = (limit: number) => ratios.filter((r) => Math.abs(r) <= limit).length / ratios.length;
    // Student's t with about seven degrees of freedom: 0.65 within one, 0.91 within two.
    expect(within(1)).toBeGreaterThan(0.58);
    expect(within(1)).toBeLessThan(0.72);
    expect(within(2)).toBeGreaterThan(0.87);
  });
});
