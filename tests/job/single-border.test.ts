import { describe, expect, it } from 'vitest';
import { solveJob } from '../../src/index.ts';

const IN = 25.4;
const job = (border: string, outer = '', artwork = '9 1/2 x 13 1/2') => `
mat: {${outer}border: ${border}, weighting: {add: 1/2}, layers: [{board: {thickness: 1.4 mm}}, {board: {thickness: 1.4 mm}, reveal: 1/4}]}
openings: [{artwork: ${artwork}, overlap: 1/4}]`;

describe('one border length with a weighting', () => {
  it('is the narrower border: the outer size grows by the weight', () => {
    const solved = solveJob(job('3'));
    if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
    const { border, outer } = solved.value.mat;
    expect(border.top).toBeCloseTo(3 * IN, 9);
    expect(border.bottom).toBeCloseTo(3.5 * IN, 9);
    expect(outer.width).toBeCloseTo((9 + 0.5 + 6) * IN, 9);
    expect(outer.height).toBeCloseTo((13 + 0.5 + 6.5) * IN, 9);
  });

  it('is named with both values where it contradicts the outer size, and nothing else is', () => {
    const solved = solveJob(job('3', 'outer: 16 x 20, ', '10 1/2 x 13 1/2'));
    expect(solved.ok ? [] : solved.problems.map((problem) => problem.message)).toEqual([
      expect.stringMatching(/outer width 16 in .* 16 1\/2 in \(difference 1\/2 in\)/u),
    ]);
  });

  it('given side by side contradicts the weighting', () => {
    const solved = solveJob(job('{top: 3, bottom: 3, sides: 3}'));
    expect(solved.ok ? [] : solved.problems.map((problem) => problem.code)).toEqual(['sizes-contradict']);
  });
});
