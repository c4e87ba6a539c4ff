import { describe, expect, it } from 'vitest';
import { solve } from '../../src/mat/solve.ts';
import { all, inch, sampleJob } from './job.ts';

describe('the double mat of the job format, 16 × 20 in', () => {
  const solved = solve(sampleJob());

  it('derives sides 2 3/4, top 3 and bottom 3 1/2 in', () => {
    if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
    const { border } = solved.value;
    expect(border.left).toBeCloseTo(inch(2.75), 9);
    expect(border.right).toBeCloseTo(inch(2.75), 9);
    expect(border.top).toBeCloseTo(inch(3), 9);
    expect(border.bottom).toBeCloseTo(inch(3.5), 9);
    expect(solved.warnings).toEqual([]);
  });

  it('refuses a border of 3 in and names 16 1/2 against 16', () => {
    const refused = solve(sampleJob({ mat: { border: { left: inch(3), right: inch(3), top: inch(3) } } }));
    expect(refused).toMatchObject({
      ok: false,
      problems: [
        {
          code: 'sizes-contradict',
          path: ['mat', 'outer'],
          message: 'outer width 16 in is given, but the other sizes make 16 1/2 in (difference 1/2 in)',
        },
      ],
    });
  });

  it('names the bottom border too where all four are 3 in against the weighting', () => {
    const refused = solve(sampleJob({ mat: { border: all(inch(3)) } }));
    expect(refused).toMatchObject({
      problems: [{ path: ['mat', 'border', 'bottom'] }, { path: ['mat', 'outer'] }],
    });
  });
});
