import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Side } from '../../src/geometry/sides.ts';
import { SIDES } from '../../src/geometry/sides.ts';
import type { Job } from '../../src/job/job.ts';
import { solve } from '../../src/mat/solve.ts';
import { showPath } from '../../src/problems/show.ts';
import { all, inch, inches, jobOf, layer, opening } from './job.ts';
import { jobWithout, type WholeMat, wholeMat } from './whole-mat.ts';

const NAMED = /^(.+) (-?[\d.]+) mm is given, but the other sizes make (-?[\d.]+) mm \(difference ([\d.]+) mm\)$/u;

type Change = (job: Job, by: number) => Job;

const opened = (job: Job, change: (only: Job['openings'][number]) => Partial<Job['openings'][number]>): Job => ({
  ...job,
  openings: [{ ...job.openings[0]!, ...change(job.openings[0]!) }],
});
const matted = (job: Job, mat: Partial<Job['mat']>): Job => ({ ...job, mat: { ...job.mat, ...mat } });

/** Every way to change a single one of the sizes given. */
function changes(whole: WholeMat): readonly Change[] {
  const sides = SIDES.flatMap((side: Side): Change[] => [
    (job, by) => matted(job, { border: { ...job.mat.border, [side]: job.mat.border[side]! + by } }),
    (job, by) =>
      opened(job, (only) =>
        whole.floated
          ? { float: { ...only.float, [side]: only.float![side]! + by } }
          : { overlap: { ...only.overlap, [side]: only.overlap[side]! + by } },
      ),
  ]);
  const extents = (['width', 'height'] as const).flatMap((extent): Change[] => [
    (job, by) => matted(job, { outer: { ...job.mat.outer!, [extent]: job.mat.outer![extent] + by } }),
    (job, by) => opened(job, (only) => ({ size: { ...only.size!, [extent]: only.size![extent] + by } })),
    (job, by) => opened(job, (only) => ({ artwork: { ...only.artwork!, [extent]: only.artwork![extent] + by } })),
  ]);
  return [...sides, ...extents];
}

const by = fc.oneof(fc.double({ min: 0.02, max: 9, noNaN: true }), fc.double({ min: -9, max: -0.02, noNaN: true }));

describe('contradictions', () => {
  it('a size that is wrong by itself is found and told with both values and the difference', () => {
    fc.assert(
      fc.property(wholeMat, fc.nat(), by, (whole, which, amount) => {
        const all = changes(whole);
        const result = solve(all[which % all.length]!(jobWithout(whole), amount));
        expect(result.ok).toBe(false);
        const problems = result.ok ? [] : result.problems;
        expect(problems).toHaveLength(1);
        for (const { code, message } of problems) {
          expect(code).toBe('sizes-contradict');
          const [, , given, others, difference] = NAMED.exec(message) ?? [];
          expect(Math.abs(Number(given) - Number(others))).toBeCloseTo(Number(difference), 1);
          expect(Math.abs(Number(difference) - Math.abs(amount))).toBeLessThan(0.0051);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('a reveal that is wrong contradicts both axes and is named alone', () => {
    fc.assert(
      fc.property(wholeMat, by, (whole, amount) => {
        fc.pre(whole.layers.length === 2);
        const job = jobWithout(whole);
        const [top, under] = job.mat.layers;
        const result = solve(matted(job, { layers: [top!, { ...under!, reveal: under!.reveal! + amount }] }));
        const problems = result.ok ? [] : result.problems;
        expect(problems.map((each) => showPath(each.path))).toEqual(['mat.layers[1].reveal']);
        expect(problems[0]!.message).toContain(`the other sizes make ${Number(whole.layers[1]!.reveal.toFixed(2))} mm`);
      }),
    );
  });

  it('sizes that agree to a hundredth of a millimetre agree, and the outer size is kept to the digit', () => {
    fc.assert(
      fc.property(wholeMat, fc.nat(), fc.double({ min: -0.0099, max: 0.0099, noNaN: true }), (whole, which, amount) => {
        const all = changes(whole);
        const job = all[which % all.length]!(jobWithout(whole), amount);
        const result = solve(job);
        expect(result).toMatchObject({ ok: true });
        if (result.ok) expect(result.value.outer).toEqual(job.mat.outer);
      }),
    );
  });

  const message = (job: Job): readonly string[] => {
    const result = solve(job);
    return result.ok ? [] : result.problems.map((each) => `${showPath(each.path)}: ${each.message}`);
  };
  const art = { artwork: inches(8, 10), overlap: all(inch(1 / 4)) };

  it('blames the outer size before the frame, the frame before the borders', () => {
    const frame = { inside: inches(11, 14), clearance: inch(1 / 8), lip: 0 };
    expect(message(jobOf({ openings: [opening(art)], mat: { frame, outer: inches(11, 13.875) } }))).toEqual([
      'mat.outer: outer width 11 in is given, but the other sizes make 10 7/8 in (difference 1/8 in)',
    ]);
    expect(
      message(jobOf({ openings: [opening(art)], mat: { frame, border: { left: inch(2), right: inch(2) } } })),
    ).toEqual([
      "mat.frame.inside: frame's inside width 11 in is given, but the other sizes make 11 5/8 in (difference 5/8 in)",
    ]);
  });

  it('blames the overlap before the opening and the artwork', () => {
    const openings = [opening({ ...art, size: inches(7.5, 9) })];
    expect(message(jobOf({ openings, mat: { border: all(inch(2)) } }))).toEqual([
      'openings[0].overlap.bottom: overlap at the bottom 1/4 in is given, but the other sizes make 3/4 in (difference 1/2 in)',
    ]);
  });

  it('names a weighting that borders and outer size agree against', () => {
    const given = (weighting: NonNullable<Job['mat']['weighting']>, border = {}): Job =>
      jobOf({
        openings: [opening({ size: inches(8, 10) })],
        mat: { outer: inches(14, 17), border: { top: inch(3), bottom: inch(4), ...border }, weighting },
      });
    expect(message(given({ kind: 'add', length: inch(1 / 2) }))).toEqual([
      'mat.weighting: weighting (bottom = top + 1/2 in) is given, but the other sizes make bottom = top + 1 in (difference 1/2 in)',
    ]);
    expect(message(given({ kind: 'none' }))).toEqual([
      'mat.weighting: weighting none (bottom = top) is given, but the other sizes make bottom = top + 1 in (difference 1 in)',
    ]);
    expect(message(given({ kind: 'ratio', ratio: 7 / 6 }))).toEqual([
      'mat.weighting: weighting (bottom = 1.1667 × top) is given, but the other sizes make the bottom border 1/2 in wider than that (difference 1/2 in)',
    ]);
    expect(message(given({ kind: 'ratio', ratio: 5 / 3 }))).toEqual([
      'mat.weighting: weighting (bottom = 1.6667 × top) is given, but the other sizes make the bottom border 1 in narrower than that (difference 1 in)',
    ]);
    // 4 1/32 in is three times that ratio, and less than a millimetre too much.
    expect(message(given({ kind: 'ratio', ratio: 4.03125 / 3 }))).toEqual([
      'mat.weighting: weighting (bottom = 1.3438 × top) is given, but the other sizes make the bottom border 1/32 in narrower than that (difference 1/32 in)',
    ]);
    const lopsided = message(
      given({ kind: 'diagonal' }, { left: inch(2), right: inch(4), top: undefined, bottom: undefined }),
    );
    expect(lopsided).toEqual([
      'mat.weighting: weighting diagonal (left = right) is given, but the other sizes make right = left + 2 in (difference 2 in)',
    ]);
  });

  it('names the bottom border where only top and bottom stand against a weighting', () => {
    const openings = [opening({ size: inches(8, 10) })];
    const border = { top: inch(3), bottom: inch(3) };
    expect(message(jobOf({ openings, mat: { border, weighting: { kind: 'add', length: inch(1 / 2) } } }))).toEqual([
      'mat.border.bottom: bottom border 3 in is given, but the other sizes make 3 1/2 in (difference 1/2 in)',
    ]);
  });

  it('lists what else could be changed', () => {
    const layers = [layer(), layer({ reveal: inch(1 / 4) })];
    const result = solve(
      jobOf({
        openings: [opening(art)],
        mat: { outer: inches(11, 14), border: { left: inch(1), right: inch(1) }, layers },
      }),
    );
    expect(result.ok ? '' : result.problems[0]!.hint).toBe(
      'change it or leave it out, or change one of: artwork width 8 in, overlap at the right 1/4 in, overlap at the left 1/4 in, reveal of under mat 1 1/4 in, left border 1 in, right border 1 in',
    );
  });
});
