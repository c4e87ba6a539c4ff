import { describe, expect, it } from 'vitest';
import { solve } from '../../src/mat/solve.ts';
import { all, inch, inches, jobOf, layer, opening, solvedMat } from './job.ts';
import { expectExact, expectSize } from './near.ts';

const mm = (width: number, height: number) => ({ width, height });
const art = (more = {}) => [opening({ artwork: inches(8, 10), ...more })];

describe('what is assumed where the job says nothing', () => {
  it('left = right and top = bottom', () => {
    const { border } = solvedMat(jobOf({ openings: art(), mat: { outer: inches(12, 16) } }));
    expectExact(border.left, border.right);
    expectExact(border.top, border.bottom);
  });

  it('an overlap and a reveal of 1/4 in, or of 6 mm where the job is metric', () => {
    const layers = [layer(), layer()];
    const imperial = solvedMat(jobOf({ openings: art(), mat: { outer: inches(12, 16), layers } }));
    expectExact(imperial.openings[0]!.artwork!.overlap.left, inch(1 / 4) + 1.4);
    expectExact(imperial.openings[0]!.layers[1]!.reveal.left, inch(1 / 4));
    for (const units of ['mm', 'cm'] as const) {
      const metric = solvedMat(jobOf({ units, openings: art(), mat: { outer: inches(12, 16), layers } }));
      expectExact(metric.openings[0]!.artwork!.overlap.left, 7.4);
      expectExact(metric.openings[0]!.layers[1]!.reveal.left, 6);
    }
  });

  it('a float of 1/4 in at the sight', () => {
    const floated = solvedMat(
      jobOf({ openings: art({ float: {}, measure: 'sight' }), mat: { outer: inches(12, 16) } }),
    );
    for (const overlap of Object.values(floated.openings[0]!.artwork!.overlap)) expectExact(overlap, -inch(1 / 4));
    expectSize(floated.openings[0]!.sight, inches(8.5, 10.5));
  });

  it('an overlap given for one side holds for all four, unless another says otherwise', () => {
    const one = solvedMat(
      jobOf({ openings: art({ overlap: { left: inch(1 / 8) }, measure: 'sight' }), mat: { border: all(inch(2)) } }),
    );
    for (const overlap of Object.values(one.openings[0]!.artwork!.overlap)) expectExact(overlap, inch(1 / 8));
    const two = { left: inch(1 / 8), bottom: inch(1 / 2) };
    const both = solvedMat(jobOf({ openings: art({ overlap: two, measure: 'sight' }), mat: { border: all(inch(2)) } }));
    const { overlap } = both.openings[0]!.artwork!;
    expectExact(overlap.right, inch(1 / 8));
    expectExact(overlap.top, inch(1 / 2));
  });

  it('missing reveals alike where their sum is settled', () => {
    const layers = [layer(), layer(), layer(), layer({ reveal: 4 })];
    const job = jobOf({
      openings: [opening({ size: mm(200, 300) })],
      mat: { outer: mm(330, 430), border: all(50), layers },
    });
    const [, first, second, third] = solvedMat(job).openings[0]!.layers;
    expectExact(first!.reveal.left, 5.5);
    expectExact(second!.reveal.left, 5.5);
    expectExact(third!.reveal.left, 4);
  });

  it('the reveal before the overlap: where both are open, the overlap takes up the rest', () => {
    const layers = [layer(), layer()];
    const job = jobOf({ openings: art(), mat: { outer: inches(12, 14), border: all(inch(2)), layers } });
    const [only] = solvedMat(job).openings;
    expectExact(only!.layers[1]!.reveal.left, inch(1 / 4));
    expectExact(only!.artwork!.overlap.left, inch(1 / 4) + 1.4);
  });

  it('sides = top where the outer size is open', () => {
    const size = [opening({ size: inches(8, 10) })];
    const job = jobOf({
      openings: size,
      mat: { border: { top: inch(3) }, weighting: { kind: 'add', length: inch(1) } },
    });
    expectSize(solvedMat(job).outer, inches(14, 17));
    const sides = jobOf({ openings: size, mat: { border: { left: inch(2) } } });
    expectSize(solvedMat(sides).outer, inches(12, 14));
  });

  it('the diagonal with a top border alone: the sides are as wide, the outer size grows', () => {
    const job = jobOf({
      openings: [opening({ size: mm(200, 300) })],
      mat: { border: { top: 80 }, weighting: { kind: 'diagonal' } },
    });
    const { border, outer } = solvedMat(job);
    expectExact(outer.width, 360);
    expectExact(((outer.height - 300) * (360 + 200)) / (4 * 360), border.top);
    expectExact(border.left, 80);
  });

  it('the diagonal with the overlap left open, which hangs on the heights', () => {
    const openings = [opening({ artwork: mm(150, 820) })];
    const mat = { outer: mm(200, 2000), border: { top: 500 }, weighting: { kind: 'diagonal' as const } };
    const { border, outer } = solvedMat(jobOf({ units: 'mm', openings, mat }));
    expectExact(border.top, 500);
    const w = outer.width - border.left - border.right;
    expectExact(((border.top + border.bottom) * (outer.width + w)) / (4 * outer.width), 500);
  });

  it('the diagonal that no overlap fulfils is not settled', () => {
    const openings = [opening({ artwork: mm(250, 400) })];
    const mat = { outer: mm(400, 900), border: { top: 280 }, weighting: { kind: 'diagonal' as const } };
    expect(solve(jobOf({ units: 'mm', openings, mat }))).toMatchObject({
      problems: [{ code: 'sizes-not-enough', path: ['mat'], hint: 'give the reveals and the overlap too' }],
    });
  });
});

describe('frames', () => {
  it('take the clearance off the inside and nothing off a nominal size', () => {
    const frame = { clearance: inch(1 / 8), lip: inch(1 / 4) };
    const inside = solvedMat(jobOf({ openings: art(), mat: { frame: { ...frame, inside: inches(16, 20) } } }));
    expectSize(inside.outer, inches(15.875, 19.875));
    expectExact(inside.lip, inch(1 / 4));
    const nominal = solvedMat(jobOf({ openings: art(), mat: { frame: { ...frame, nominal: inches(16, 20) } } }));
    expectSize(nominal.outer, inches(16, 20));
  });
});

describe('sizes that are not enough', () => {
  const hint = (job: ReturnType<typeof jobOf>): string => {
    const result = solve(job);
    return result.ok ? '' : result.problems.map((each) => `${each.code}: ${each.hint}`).join();
  };

  it('say which would be', () => {
    expect(hint(jobOf({ openings: art() }))).toBe('sizes-not-enough: give mat.outer (or mat.frame), or mat.border');
    expect(hint(jobOf({ mat: { outer: inches(16, 20) } }))).toBe(
      'sizes-not-enough: give mat.border, or openings[0].artwork (or openings[0].size)',
    );
    expect(hint(jobOf())).toContain('mat.border together with openings[0].artwork');
  });

  it('are enough once one of those is given', () => {
    for (const mat of [{ outer: inches(16, 20) }, { border: all(inch(2)) }, { border: { top: inch(2) } }]) {
      expect(solve(jobOf({ openings: art(), mat })).ok).toBe(true);
    }
    expect(
      solve(jobOf({ openings: art(), mat: { frame: { nominal: inches(16, 20), clearance: 0, lip: 0 } } })).ok,
    ).toBe(true);
    expect(solve(jobOf({ mat: { outer: inches(16, 20), border: all(inch(2)) } })).ok).toBe(true);
  });
});
