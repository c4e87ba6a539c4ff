import { describe, expect, it } from 'vitest';
import { report } from '../../src/bench/report.ts';
import { strokes } from '../../src/bench/strokes.ts';
import type { AsCutRequest } from '../../src/job/as-cut.ts';
import { type Changes, inch, inches, sampleJob, solvedMat } from '../mat/job.ts';

const made = (asCut: Partial<AsCutRequest>, bench: Changes['bench'] = {}) => {
  const job = {
    ...sampleJob({ bench: { snap: false, ...bench } }),
    asCut: { blanks: [], openings: [], ...asCut },
  };
  const mat = solvedMat(job);
  return { job, mat, work: strokes(mat, job) };
};

describe('strokes after something was cut otherwise', () => {
  it('marks the settings that are others now, with the planned one', () => {
    const { job, mat, work } = made({ outer: inches(16 + 1 / 32, 20) });
    const changed = work.strokes.filter((s) => s.planned !== undefined);
    expect(changed.map((s) => `${s.layer} ${s.side}`).sort()).toEqual(['1 left', '1 right', '2 left', '2 right']);
    const first = changed.find((s) => s.layer === 1)!;
    expect(first.planned).toMatchObject({ text: '2 3/4 in', sense: 'exact' });
    expect(first.guide - inch(2.75)).toBeCloseTo(inch(1 / 64), 9);
    const told = report(job, mat, work.strokes);
    expect(told.asCut?.changed.map((each) => each.what)).toContain('left border');
    expect(told.strokes.filter((s) => s.changed === true)).toHaveLength(4);
  });

  it('marks what is cut already', () => {
    const { work } = made({
      openings: [{ opening: 0, layer: 0, size: inches(10.5 + 1 / 16, 13.5), border: {} }],
    });
    expect(work.strokes.map((s) => [s.layer, s.cut === true])).toEqual(
      work.strokes.map((s) => [s.layer, s.layer === 1]),
    );
  });

  it('measures a board that is cut apart from its own edges', () => {
    const { work, mat } = made({ blanks: [undefined, inches(16 + 1 / 16, 20)] }, { stack: 'apart' });
    const side = (layer: number, name: string) => work.strokes.find((s) => s.layer === layer && s.side === name)!;
    expect(side(2, 'left').distance).toBeCloseTo(inch(3 + 1 / 32), 9);
    expect(side(2, 'top').distance).toBeCloseTo(inch(3.25), 9);
    expect(side(1, 'left').distance).toBeCloseTo(inch(2.75), 9);
    // From the top left of its own board, as it is seen from the back.
    expect(side(2, 'right').face.from.x).toBeCloseTo(inch(3 + 1 / 32), 9);
    expect(mat.openings[0]!.layers[1]!.border.left).toBeCloseTo(inch(3), 9);
    expect(side(2, 'left').planned).toMatchObject({ text: '3 in' });
  });
});
