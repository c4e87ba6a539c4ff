import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SIDES } from '../../src/geometry/sides.ts';
import type { AsCutRequest } from '../../src/job/as-cut.ts';
import type { Job } from '../../src/job/job.ts';
import { solve } from '../../src/mat/solve.ts';
import { all, inch, inches, jobOf, layer, opening, sampleJob, solvedMat } from './job.ts';
import { expectExact } from './near.ts';
import { wholeMat } from './whole-mat.ts';

const cut = (job: Job, asCut: Partial<AsCutRequest>): Job => ({
  ...job,
  asCut: { blanks: [], openings: [], ...asCut },
});
const opened = (width: number, height: number, more: Partial<AsCutRequest['openings'][number]> = {}) => ({
  opening: 0,
  layer: 0,
  size: { width, height },
  border: {},
  ...more,
});
const whats = (job: Job): readonly string[] => solvedMat(job).changed!.map((each) => each.what);

describe('a blank that came out in another size', () => {
  it('1/32 in over: the sides take half of it each, the opening and what it covers stay', () => {
    const job = sampleJob({ bench: { snap: false } });
    const [before, after] = [solvedMat(job), solvedMat(cut(job, { outer: inches(16 + 1 / 32, 20) }))];
    expectExact(after.outer.width, inch(16 + 1 / 32));
    expectExact(after.border.left, before.border.left + inch(1 / 64));
    expectExact(after.border.right, before.border.right + inch(1 / 64));
    expectExact(after.border.top, before.border.top);
    expectExact(after.openings[0]!.sight.width, before.openings[0]!.sight.width);
    expectExact(after.openings[0]!.artwork!.overlap.left, before.openings[0]!.artwork!.overlap.left);
    expectExact(after.layers[1]!.blank.width, inch(16 + 1 / 32 - 1 / 4));
    expect(after.planned).toEqual(before);
    expect(after.changed!.map((each) => each.what)).toEqual([
      'outer width',
      'right border',
      'left border',
      "under mat 1, blank's width",
    ]);
  });

  it('is no longer asked whether a sheet holds it', () => {
    const board = { ...sampleJob().mat.layers[0]!.board, sheets: [inches(16, 20)] };
    const job = jobOf({
      openings: [opening({ size: inches(8, 10) })],
      mat: { outer: inches(16, 20), layers: [layer({ board })] },
    });
    const codes = (of: Job): readonly string[] => {
      const solved = solve(of);
      return (solved.ok ? solved.warnings : solved.problems).map(({ code }) => code);
    };
    expect(codes({ ...job, mat: { ...job.mat, outer: inches(16.5, 20) } })).toContain('blank-beyond-sheets');
    expect(codes(cut(job, { outer: inches(16.5, 20) }))).not.toContain('blank-beyond-sheets');
  });

  it('borders that were asked for give way evenly where the opening was asked for too', () => {
    const job = jobOf({
      openings: [opening({ artwork: inches(8, 10), overlap: all(inch(1 / 4)) })],
      mat: { border: { top: inch(2), bottom: inch(2.5), left: inch(1.5), right: inch(1.75) } },
    });
    const mat = solvedMat(cut(job, { outer: inches(10.75 - 1 / 16, 14 + 1 / 8) }));
    expectExact(mat.border.left, inch(1.5 - 1 / 32));
    expectExact(mat.border.right, inch(1.75 - 1 / 32));
    expectExact(mat.border.top, inch(2 + 1 / 16));
    expectExact(mat.border.bottom, inch(2.5 + 1 / 16));
    expectExact(mat.openings[0]!.layers[0]!.faceBox.width, inch(7.5));
  });

  it('keeps borders that were asked for where the overlap was not', () => {
    const job = jobOf({
      openings: [opening({ artwork: inches(8, 10) })],
      mat: { outer: inches(11, 14), border: { left: inch(1.75), right: inch(1.75), top: inch(2.25) } },
    });
    const mat = solvedMat(cut(job, { outer: inches(11 + 1 / 16, 14) }));
    expectExact(mat.border.left, inch(1.75));
    expectExact(mat.border.right, inch(1.75));
    expectExact(mat.openings[0]!.layers[0]!.faceBox.width, inch(7.5 + 1 / 16));
  });

  it('a weighting holds for the new size: 11 x 14 by the diagonal on a blank of 11 1/16', () => {
    const job = jobOf({
      openings: [opening({ size: inches(7.5, 9.5) })],
      mat: { outer: inches(11, 14), weighting: { kind: 'diagonal' } },
    });
    const { border, outer } = solvedMat(cut(job, { outer: inches(11 + 1 / 16, 14) }));
    const width = inch(7.5);
    expectExact(border.top, ((outer.height - inch(9.5)) * (outer.width + width)) / (4 * outer.width));
  });

  it('an under mat’s own blank is what its trim-back follows from', () => {
    const job = cut(sampleJob(), { blanks: [undefined, inches(15.5, 19.75)] });
    const [, under] = solvedMat(job).layers;
    expectExact(under!.blank.width, inch(15.5));
    expectExact(under!.blankBox.x, inch(1 / 4));
    expectExact(under!.trimBack, inch(1 / 8));
    expect(whats(job)).toEqual(["under mat 1, blank's width"]);
    const long = solve(cut(sampleJob(), { blanks: [undefined, inches(16, 19.75)] }));
    expect(long).toMatchObject({ ok: false, problems: [{ code: 'together-not-short' }] });
  });
});

describe('an opening that came out in another size', () => {
  it('1/16 in large: under mats still to do keep their reveals, the artwork is covered by so much less', () => {
    const job = sampleJob({ bench: { snap: false } });
    const before = solvedMat(job);
    const mat = solvedMat(cut(job, { openings: [opened(inch(10.5 + 1 / 16), inch(13.5))] }));
    const [top, under] = mat.openings[0]!.layers;
    expectExact(top!.faceBox.width, inch(10.5 + 1 / 16));
    expectExact(mat.border.left, inch(2.75 - 1 / 32));
    for (const side of SIDES) expectExact(under!.reveal[side], inch(1 / 4));
    const [art, was] = [mat.openings[0]!.artwork!, before.openings[0]!.artwork!];
    expectExact(art.overlap.left, was.overlap.left - inch(1 / 32));
    expectExact(art.overlap.top, was.overlap.top);
    expect(art.box).toEqual(was.box);
    expect([top!.cut, under!.cut]).toEqual([true, undefined]);
    expect(
      whats(job.asCut === undefined ? cut(job, { openings: [opened(inch(10.5 + 1 / 16), inch(13.5))] }) : job),
    ).toContain('opening 1 in under mat 1, face width');
  });

  it('lies where its border was measured', () => {
    const job = sampleJob({ bench: { snap: false } });
    const at = (border: AsCutRequest['openings'][number]['border']) =>
      solvedMat(cut(job, { openings: [opened(inch(10.5 + 1 / 16), inch(13.5), { border })] })).border;
    expectExact(at({ left: inch(2.75) }).right, inch(2.75 - 1 / 16));
    expectExact(at({ right: inch(2.75) }).left, inch(2.75 - 1 / 16));
    expectExact(at({ left: inch(2.75), right: inch(2.75 - 1 / 16) }).left, inch(2.75));
  });

  it('the layers below take a wider reveal where the artwork would be left bare', () => {
    const job = sampleJob({ bench: { snap: false } });
    const before = solvedMat(job);
    const size = [inch(10.5 + 5 / 8), inch(13.5)] as const;
    const mat = solvedMat(cut(job, { openings: [opened(...size)] }));
    const under = mat.openings[0]!.layers[1]!;
    expectExact(under.reveal.left, inch(1 / 4 + 5 / 16));
    expectExact(under.reveal.top, inch(1 / 4));
    expectExact(mat.openings[0]!.artwork!.overlap.left, before.openings[0]!.artwork!.overlap.left);
  });

  it('says by how much the artwork is left bare where nothing below can cover it', () => {
    const job = jobOf({
      openings: [opening({ artwork: inches(8, 10), overlap: all(inch(1 / 8)), measure: 'sight' })],
      mat: { outer: inches(11, 14) },
    });
    const planned = solvedMat(job).openings[0]!.layers[0]!.faceBox;
    const asCut = { openings: [opened(planned.width + inch(1 / 2), planned.height)] };
    expect(solve(cut(job, asCut))).toMatchObject({
      ok: false,
      problems: [
        {
          code: 'as-cut-uncovers',
          path: ['asCut', 'openings', 0, 'size'],
          message: expect.stringContaining('1/8 in beyond the edge of the artwork at the right and left'),
        },
      ],
    });
  });

  it('of several openings only the one that was cut changes', () => {
    const job = jobOf({
      openings: [opening({ size: inches(4, 6) }), opening({ size: inches(4, 6) })],
      mat: { outer: inches(16, 12) },
    });
    const before = solvedMat(job);
    const mat = solvedMat(cut(job, { openings: [opened(inch(4 + 1 / 16), inch(6))] }));
    expectExact(mat.openings[0]!.layers[0]!.faceBox.width, inch(4 + 1 / 16));
    expect(mat.openings[1]).toEqual(before.openings[1]);
  });
});

describe('what was cut as it was planned', () => {
  it('changes nothing, whatever the mat', () => {
    let looked = 0;
    fc.assert(
      fc.property(wholeMat, fc.nat(3), (whole, deepest) => {
        const job = jobOf({
          openings: [
            opening({ artwork: whole.artwork, size: whole.size, measure: whole.inset > 0 ? 'sight' : 'face' }),
          ],
          mat: {
            outer: whole.outer,
            border: whole.border,
            layers: whole.layers.map((each, index) => layer(index === 0 ? {} : { reveal: each.reveal })),
          },
        });
        const planned = solve(job);
        if (!planned.ok) return;
        looked++;
        const { outer, layers, openings } = planned.value;
        const asCut: AsCutRequest = {
          outer,
          blanks: layers.map((each, index) => (index === 0 ? undefined : each.blank)),
          openings: openings[0]!.layers.slice(0, deepest + 1).map((each, index) => ({
            ...opened(each.faceBox.width, each.faceBox.height),
            layer: index,
            border: { left: each.border.left },
          })),
        };
        const mat = solvedMat({ ...job, asCut });
        expect(mat.changed).toEqual([]);
        expect(mat.planned).toEqual(planned.value);
        for (const side of SIDES) expectExact(mat.border[side], planned.value.border[side]);
        mat.openings[0]!.layers.forEach((each, index) => {
          expectExact(each.faceBox.x, openings[0]!.layers[index]!.faceBox.x);
          expectExact(each.backBox.width, openings[0]!.layers[index]!.backBox.width);
        });
      }),
    );
    expect(looked).toBeGreaterThan(30);
  });

  it('solved anew from another size by a hair, it is the same mat but for that hair', () => {
    fc.assert(
      fc.property(fc.constantFrom('none', 'add', 'ratio', 'diagonal'), (kind) => {
        const weighting =
          kind === 'add'
            ? { kind, length: 12 }
            : kind === 'ratio'
              ? { kind, ratio: 4 / 3 }
              : { kind: kind as 'none' | 'diagonal' };
        const job = jobOf({
          units: 'mm',
          openings: [opening({ artwork: { width: 200, height: 260 }, overlap: all(5) })],
          mat: { outer: { width: 400, height: 500 }, weighting } as Partial<Job['mat']>,
        });
        const before = solvedMat(job);
        const after = solvedMat(cut(job, { outer: { width: 400 + 1e-6, height: 500 - 1e-6 } }));
        for (const side of SIDES) expect(Math.abs(after.border[side] - before.border[side])).toBeLessThan(2e-6);
        expect(after.changed).toEqual([]);
      }),
    );
  });
});
