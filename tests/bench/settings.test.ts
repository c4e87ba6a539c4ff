import { describe, expect, test } from 'vitest';
import { GUIDE_OFF, settingNumbers, sharedSettings } from '../../src/bench/settings.ts';
import { strokes } from '../../src/bench/strokes.ts';
import { box } from '../../src/geometry/box.ts';
import { bevel, lopsidedMat, makeJob, makeMat } from './mats.ts';

describe('settings', () => {
  test('readings within 0.15 mm of the smallest are one setting; beyond the guide is its own', () => {
    const at = (guide: number, beyondGuide = false) => ({ guide, beyondGuide });
    expect(settingNumbers([at(60.14), at(60), at(60.16), at(300, true), at(10)])).toEqual([1, 1, 2, GUIDE_OFF, 0]);
  });

  test('settings shared by several jobs, those that serve most jobs first', () => {
    const even = makeMat(300, 300, [{ thickness: 1.4, bevel: bevel(), faces: [box(70, 70, 160, 160)] }]);
    const wide = makeMat(300, 300, [{ thickness: 1.4, bevel: bevel(), faces: [box(70, 90, 160, 120)] }]);
    // Lopsided: 70, 90, 80, 120. Even: 70 four times. Wide: 70 twice, 90 twice.
    const shared = sharedSettings([lopsidedMat(), even, wide].map((mat) => strokes(mat, makeJob(mat)).strokes));
    expect(shared.map((s) => [s.text, s.sense, s.uses.length])).toEqual([
      ['70 mm', 'exact', 7],
      ['90 mm', 'exact', 3],
    ]);
    expect(shared[1]!.uses.map((use) => [use.job, use.side])).toEqual([
      [0, 'right'],
      [2, 'top'],
      [2, 'bottom'],
    ]);
  });
});
