import { describe, expect, test } from 'vitest';
import { offsetAt } from '../../src/bench/offsets.ts';
import { strokes } from '../../src/bench/strokes.ts';
import { lopsidedMat, makeJob } from './mats.ts';

describe('offsets over thickness', () => {
  test('none is 0, one serves for all', () => {
    expect(offsetAt([], 1.4)).toEqual({ offset: 0 });
    expect(offsetAt([{ offset: 1.2 }], 9)).toEqual({ offset: 1.2 });
  });

  test('two thicknesses give the exact line', () => {
    // 1.0 at 1 mm and 1.6 at 3 mm: 0.3 a mm; at 1.5 mm 1.15.
    const two = [
      { thickness: 1, offset: 1 },
      { thickness: 3, offset: 1.6 },
    ];
    expect(offsetAt(two, 1.5).offset).toBeCloseTo(1.15, 12);
    expect(offsetAt(two, 1.5).outside).toBeUndefined();
    expect(offsetAt(two, 3.1).outside).toBeUndefined();
    expect(offsetAt(two, 3.3)).toMatchObject({ outside: { from: 1, to: 3 } });
    expect(offsetAt(two, 3.3).offset).toBeCloseTo(1.69, 12);
  });

  test('three or more give the line of least squares', () => {
    // Points (1, 1), (2, 3), (3, 2): means 2 and 2, slope ((−1)(−1) + 0 + (1)(0)) / 2 = 0.5, intercept 1.
    const three = [
      { thickness: 1, offset: 1 },
      { thickness: 2, offset: 3 },
      { thickness: 3, offset: 2 },
    ];
    expect(offsetAt(three, 1).offset).toBeCloseTo(1.5, 12);
    expect(offsetAt(three, 2.5).offset).toBeCloseTo(2.25, 12);
  });

  test('one thickness given twice is their mean; one without a thickness counts only alone', () => {
    const twice = [
      { thickness: 1.4, offset: 1 },
      { thickness: 1.4, offset: 1.4 },
    ];
    expect(offsetAt(twice, 1.4).offset).toBeCloseTo(1.2, 12);
    expect(offsetAt([...twice, { offset: 9 }], 1.4).offset).toBeCloseTo(1.2, 12);
  });

  test('the marks use the offset at the thickness of the board', () => {
    const start = [
      { thickness: 1, offset: 1 },
      { thickness: 3, offset: 1.6 },
    ];
    const mat = lopsidedMat(2);
    // e = 1.3 at 2 mm: start mark at u = −1.3 on the right side, which runs down from y = 80.
    const right = strokes(mat, makeJob(mat, { head: { start } })).strokes.find((s) => s.side === 'right')!;
    expect(right.start.y).toBeCloseTo(80 - 1.3, 9);
  });
});

describe('warnings', () => {
  const codes = (mat = lopsidedMat(), bench = {}) => strokes(mat, makeJob(mat, bench)).warnings.map((w) => w.code);

  test('nothing to say about a plain mat', () => {
    expect(codes()).toEqual([]);
  });

  test('a board outside the calibrated thicknesses', () => {
    expect(codes(lopsidedMat(3), { head: { start: [{ thickness: 1.4, offset: 1 }] } })).toEqual([
      'head-thickness-outside',
    ]);
    expect(codes(lopsidedMat(1.45), { head: { stop: [{ thickness: 1.4, offset: 1 }] } })).toEqual([]);
  });

  test('a mark off the board, and an offset that none has', () => {
    // The face right side starts at y = 80 in the back view: an offset of 81 puts its start mark at y = −1.
    const found = codes(lopsidedMat(), { head: { start: [{ offset: 81 }] } });
    expect(found.filter((code) => code === 'head-offset-absurd')).toHaveLength(1);
    // Left side starts at the bottom, 120 from the edge: stays on. Bottom starts at x = 90, top at 330: 70 from the edge.
    expect(found.filter((code) => code === 'mark-off-board')).toHaveLength(2);
  });

  test('a side too short for the head', () => {
    // 240 wide: the start mark at u = 121, the stop mark at u = 240 − 121 = 119.
    const found = codes(lopsidedMat(), { head: { start: [{ offset: -121 }], stop: [{ offset: 121 }] } });
    expect(found.filter((code) => code === 'stroke-too-short')).toHaveLength(2);
  });
});
