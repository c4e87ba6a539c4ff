import * as library from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { offsetAt } from '../../src/bench/offsets.ts';
import { strokes } from '../../src/bench/strokes.ts';
import { calibrateHead, type HeadReading } from '../../src/calibrate/head-offsets.ts';
import { lopsidedMat, makeJob } from '../bench/mats.ts';
import { randomSource } from '../bench/random.ts';

const readings = (thickness: number, end: HeadReading['end'], pasts: readonly number[]): HeadReading[] =>
  pasts.map((past) => ({ thickness, end, past }));

function solved(list: readonly HeadReading[], marksBeyond = 0) {
  const result = calibrateHead({ readings: list, marksBeyond });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return { ...result.value, codes: result.warnings.map((w) => w.code) };
}

describe('offsets of a head', () => {
  test('starts 1.2 mm over, stops 0.4 mm short', () => {
    // Marks 3 mm beyond the corners: the starts read 4.2, the stops 2.6.
    const list = [...readings(1.4, 'start', [4.1, 4.2, 4.3, 4.2]), ...readings(1.4, 'stop', [2.6, 2.5, 2.6, 2.7])];
    const head = solved(list, 3);
    const [at] = head.thicknesses;
    expect(at!.start.past).toBeCloseTo(1.2, 12);
    expect(at!.stop.past).toBeCloseTo(-0.4, 12);
    expect(head.start[0]!.offset).toBeCloseTo(-1.2, 12);
    expect(head.stop[0]!.offset).toBeCloseTo(-0.4, 12);
    // Deviations −0.1, 0, 0.1, 0 in both groups: sd = √(0.02/3); pooled √(0.04/6), the same.
    expect(at!.start.standardDeviation).toBeCloseTo(Math.sqrt(0.02 / 3), 12);
    expect(head.spread).toBeCloseTo(Math.sqrt(0.04 / 6), 12);
    expect(at!.start.standardError).toBeCloseTo(Math.sqrt(0.04 / 6) / 2, 12);
    expect(head.overrun).toBeCloseTo(2 * Math.sqrt(0.04 / 6), 12);
    expect(head.codes).toEqual([]);
    // Given to the head, the start mark is at u = 1.2 − x and the stop mark at u = L + 0.4 + x (right side: y 80 to 380).
    const mat = lopsidedMat();
    const cut = strokes(mat, makeJob(mat, { head: { start: head.start, stop: head.stop, overrun: 0.25 } })).strokes;
    const right = cut.find((s) => s.side === 'right')!;
    expect(right.start.y).toBeCloseTo(80 + 1.2 - 0.25, 9);
    expect(right.stop.y).toBeCloseTo(380 + 0.4 + 0.25, 9);
  });

  test('an end that scatters clearly more than the others has an uncertainty of its own', () => {
    // Starts: sd √(8/3) = 1.633, stops 0: pooled √(8/6) = 1.155, within 1.5 of it; with two more quiet groups it is not.
    const wild = [-1, 1, 3, 1];
    const two = solved([...readings(1.4, 'start', wild), ...readings(1.4, 'stop', [0, 0, 0, 0])]);
    expect(two.thicknesses[0]!.start).toMatchObject({ pooled: true });
    expect(two.thicknesses[0]!.start.standardError).toBeCloseTo(Math.sqrt(8 / 6) / 2, 12);
    const quiet = [...readings(3, 'start', [0, 0, 0, 0]), ...readings(3, 'stop', [0, 0, 0, 0])];
    const four = solved([...readings(1.4, 'start', wild), ...readings(1.4, 'stop', [0, 0, 0, 0]), ...quiet]);
    expect(four.thicknesses[0]!.start).toMatchObject({ pooled: false });
    expect(four.thicknesses[0]!.start.standardError).toBeCloseTo(Math.sqrt(8 / 3) / 2, 12);
    expect(four.thicknesses[0]!.stop).toMatchObject({ pooled: true });
    expect(four.thicknesses[0]!.stop.standardError).toBeCloseTo(Math.sqrt(8 / 12) / 2, 12);
  });

  test('a reading that stands out is named and does not count', () => {
    const list = [...readings(1.4, 'start', [1.2, 1.1, 1.2, 1.3, 3.9]), ...readings(1.4, 'stop', [0, 0, 0.1, -0.1])];
    const head = solved(list);
    expect(head.thicknesses[0]!.start).toMatchObject({ kept: 4, standOut: [4] });
    expect(head.thicknesses[0]!.start.past).toBeCloseTo(1.2, 12);
    expect(head.codes).toEqual(['calibrate-reading-stands-out']);
  });

  test('three thicknesses: the line and how good it is', () => {
    const all = (start: readonly number[]) =>
      [1, 2, 3].flatMap((t, i) => [
        ...readings(
          t,
          'start',
          [0, 0, 0, 0].map(() => start[i]!),
        ),
        ...readings(t, 'stop', [0.1, 0.1, 0.1, 0.1]),
      ]);
    // Over by 1.0, 1.2, 1.4: e_start −1.0, −1.2, −1.4 = −0.8 − 0.2·t.
    const straight = solved(all([1, 1.2, 1.4]));
    expect(straight.startLine.intercept).toBeCloseTo(-0.8, 12);
    expect(straight.startLine.slope).toBeCloseTo(-0.2, 12);
    expect(straight.codes).toEqual([]);
    // 1.0, 1.6, 1.0: the best line is level at −1.2; residuals 0.2, −0.4, 0.2.
    const bent = solved(all([1, 1.6, 1]));
    expect(bent.startLine.residuals.map((r) => Math.round(r * 1e9) / 1e9)).toEqual([0.2, -0.4, 0.2]);
    expect(bent.codes).toEqual(['calibrate-fit-poor']);
  });

  test('what is worth a warning', () => {
    expect(solved([...readings(1, 'start', [1, 1]), ...readings(1, 'stop', [1, 1, 1, 1])]).codes).toEqual([
      'calibrate-readings-few',
    ]);
    const loose = [...readings(1, 'start', [0, 1, 0, 1]), ...readings(1, 'stop', [0, 1, 0, 1])];
    expect(solved(loose).codes).toEqual(['calibrate-head-scatters']);
    const bends = [...readings(1, 'start', [0, 0.5, 0, 0.5]), ...readings(1, 'stop', [0, 0, 0, 0])];
    expect(solved(bends).codes).toEqual(['calibrate-ends-unequal']);
    const slack = [...readings(1, 'start', [0, 0, 0, 0]), ...readings(1, 'stop', [0, 0.5, 0, 0.5])];
    expect(solved(slack).codes).toEqual(['calibrate-ends-unequal']);
  });

  test('what cannot be used is refused, all at once', () => {
    const codes = (list: readonly HeadReading[]) => {
      const result = calibrateHead({ readings: list, marksBeyond: 3 });
      return result.ok ? [] : result.problems.map((p) => p.code);
    };
    expect(codes([])).toEqual(['calibrate-readings-none']);
    expect(codes([{ thickness: 0, end: 'start', past: Number.NaN }])).toEqual([
      'calibrate-reading-unusable',
      'calibrate-reading-unusable',
    ]);
    expect(codes(readings(1.4, 'start', [1]))).toEqual(['calibrate-end-missing']);
  });
});

describe('a thousand simulated heads', () => {
  // Each: offsets that follow the thickness, readings good to 0.1 mm, one in ten grossly wrong; at each of three
  // thicknesses two test openings, which give eight starts and eight stops. Marks stand 3 mm beyond the corners.
  const THICKNESSES = [1.0, 1.5, 3.0];
  const random = randomSource(8);
  const heads = Array.from({ length: 1000 }, () => {
    const truth = {
      start: { at0: random.between(-3, 3), slope: random.between(-0.5, 0.5) },
      stop: { at0: random.between(-3, 3), slope: random.between(-0.5, 0.5) },
    };
    const list = THICKNESSES.flatMap((thickness) =>
      (['start', 'stop'] as const).flatMap((end) =>
        Array.from({ length: 8 }, (): HeadReading => {
          const e = truth[end].at0 + truth[end].slope * thickness;
          const gross = random.uniform() < 0.1 ? random.between(0.5, 5) * (random.uniform() < 0.5 ? -1 : 1) : 0;
          return { thickness, end, past: 3 + (end === 'start' ? -e : e) + random.normal(0.1) + gross };
        }),
      ),
    );
    return { truth, list, found: solved(list, 3) };
  });
  const errors = heads.flatMap(({ truth, found }) =>
    THICKNESSES.flatMap((t) =>
      (['start', 'stop'] as const).map((end) => offsetAt(found[end], t).offset - truth[end].at0 - truth[end].slope * t),
    ),
  );
  const within = (list: readonly number[], limit: number): number =>
    list.filter((v) => Math.abs(v) <= limit).length / list.length;

  test('99 % of the corners end within 0.25 mm of where they should', () => {
    // A corner cut without scatter is off by exactly what the offset is off.
    expect(within(errors, 0.25)).toBeGreaterThanOrEqual(0.99);
  });

  test('the stated standard errors are honest', () => {
    const ratios = heads.flatMap(({ truth, found }) =>
      found.thicknesses.flatMap((at) =>
        (['start', 'stop'] as const).map(
          (end) => (at[end].offset - truth[end].at0 - truth[end].slope * at.thickness) / at[end].standardError,
        ),
      ),
    );
    // Student's t with 3 × 2 × 7 degrees of freedom: 0.677 within one and 0.948 within two; a gross error that is small
    // enough to pass for scatter takes a little from both.
    expect(within(ratios, 1)).toBeGreaterThan(0.64);
    expect(within(ratios, 1)).toBeLessThan(0.72);
    expect(within(ratios, 2)).toBeGreaterThan(0.93);
    expect(within(ratios, 2)).toBeLessThan(0.97);
  });

  test('without rejection far fewer corners end within 0.25 mm', () => {
    const plain = heads.flatMap(({ truth, list }) =>
      (['start', 'stop'] as const).flatMap((end) => {
        const means = THICKNESSES.map((thickness) => {
          const pasts = list.filter((r) => r.end === end && r.thickness === thickness).map((r) => r.past - 3);
          return { thickness, offset: library.mean(pasts) * (end === 'start' ? -1 : 1) };
        });
        return THICKNESSES.map((t) => offsetAt(means, t).offset - truth[end].at0 - truth[end].slope * t);
      }),
    );
    expect(within(plain, 0.25)).toBeLessThan(0.8);
    expect(within(errors, 0.25) - within(plain, 0.25)).toBeGreaterThan(0.2);
  });
});
