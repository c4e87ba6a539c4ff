import { describe, expect, test } from 'vitest';
import { checkStacking } from '../../src/bench/stacking.ts';
import { strokes } from '../../src/bench/strokes.ts';
import { box } from '../../src/geometry/box.ts';
import { bevel, makeJob, makeMat } from './mats.ts';

const double = (reveal: number, reverse = false, trimBack = 3) =>
  makeMat(400, 500, [
    { thickness: 1.4, bevel: bevel(45, reverse), faces: [box(70, 80, 240, 300)] },
    {
      thickness: 1.4,
      bevel: bevel(),
      faces: [box(70 + reveal, 80 + reveal, 240 - 2 * reveal, 300 - 2 * reveal)],
      reveal,
      trimBack,
    },
  ]);

const found = (mat: ReturnType<typeof double>, stack: 'together' | 'apart' = 'together') =>
  checkStacking(mat, makeJob(mat, { stack })).map((p) => [p.severity, p.code]);

describe('cut together', () => {
  test('the under opening must lie inside the fallout: the reveal more than the setback', () => {
    expect(found(double(1.5))).toEqual([]);
    expect(found(double(1.4))).toEqual([['error', 'together-outside-fallout']]);
    expect(found(double(1.3))).toEqual([['error', 'together-outside-fallout']]);
    expect(found(double(1.3), 'apart')).toEqual([]);
  });

  test('one under opening across two fallouts', () => {
    const mat = makeMat(400, 300, [
      { thickness: 1.4, bevel: bevel(), faces: [box(50, 50, 140, 200), box(210, 50, 140, 200)] },
      { thickness: 1.4, bevel: bevel(), faces: [box(56, 56, 128, 188), box(180, 56, 160, 188)], trimBack: 3 },
    ]);
    const [problem, ...rest] = checkStacking(mat, makeJob(mat));
    expect(rest).toEqual([]);
    expect(problem).toMatchObject({ code: 'together-outside-fallout', path: ['openings', 1] });
    expect(problem!.hint).toContain('stack: apart');
  });

  test('a reverse bevel above holds its fallout back', () => {
    expect(found(double(6, true))).toEqual([['warning', 'together-reverse-fallout']]);
    expect(strokes(double(6, true), makeJob(double(6, true))).warnings.map((w) => w.code)).toContain(
      'together-reverse-fallout',
    );
  });

  test('hardly trimmed back', () => {
    expect(found(double(6, false, 0.5))).toEqual([['warning', 'together-barely-short']]);
  });
});
