import { describe, expect, test } from 'vitest';
import type { Stroke } from '../../src/bench/model.ts';
import { order } from '../../src/bench/order.ts';
import { strokes } from '../../src/bench/strokes.ts';
import { lopsidedMat, makeJob } from './mats.ts';

const plain = strokes(lopsidedMat(), makeJob(lopsidedMat())).strokes[0]!;
const make = (layer: number, guide: number, x: number, y: number): Stroke => ({
  ...plain,
  layer,
  guide,
  direction: { x, y },
});

describe('layers that a setting of the guide joins', () => {
  test('a setting that joins three layers may be shared out between both ends of the middle one', () => {
    // In the middle layer setting 60 has strokes at no turn and at two, 80 one at a quarter turn. Once each: 0, 2, 1 is
    // three quarter turns; 60, 80, 60 in the order 0, 1, 2 is two, with two changes either way.
    const all = [make(1, 60, 0, 1), make(2, 60, 0, 1), make(2, 60, 0, -1), make(2, 80, 1, 0), make(3, 60, 0, 1)];
    const work = order(all, 'together');
    expect([work.guideChanges, work.turns]).toEqual([2, 2]);
    expect(work.strokes.map((s) => s.guide)).toEqual([60, 60, 80, 60, 60]);
  });

  test('of two ways through a layer between two others, the one with more strokes before the board is turned', () => {
    const outer = (layer: number): readonly Stroke[] => [make(layer, 80, 0, 1), make(layer, 60, 0, 1)];
    // So that the settings of 60 and 80 join the layers, the middle one goes from 60 by 90 to 80, with one stroke before
    // its first turn, or from 80 by 90 to 60, with two: by two quarter turns either way.
    const middle = [make(2, 60, 0, 1), make(2, 80, 0, 1), make(2, 80, 0, 1), make(2, 80, 1, 0), make(2, 90, 1, 0)];
    const work = order([...outer(1), ...middle, ...outer(3)], 'together');
    expect([work.guideChanges, work.turns]).toEqual([4, 2]);
    expect(work.strokes.map(({ guide }) => guide)).toEqual([60, 80, 80, 80, 80, 90, 60, 60, 80]);
    expect(work.steps.findIndex(({ turn }) => turn !== 0)).toBe(4);
  });
});
