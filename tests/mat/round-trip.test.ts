import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Side, SomeSides } from '../../src/geometry/sides.ts';
import { SIDES } from '../../src/geometry/sides.ts';
import type { Job } from '../../src/job/job.ts';
import type { Weighting } from '../../src/job/mat.ts';
import type { Mat } from '../../src/mat/model.ts';
import { solve } from '../../src/mat/solve.ts';
import { parseLength } from '../../src/units/parse.ts';
import { jobOf, opening, solvedMat } from './job.ts';
import { expectExact } from './near.ts';
import { jobWithout, type LeftOut, type WholeMat, wholeMat } from './whole-mat.ts';

function expectWhole(mat: Mat, whole: WholeMat): void {
  expectExact(mat.outer.width, whole.outer.width);
  expectExact(mat.outer.height, whole.outer.height);
  const [only] = mat.openings;
  for (const side of SIDES) expectExact(mat.border[side], whole.border[side]);
  for (const [index, each] of only!.layers.entries()) {
    for (const side of SIDES) expectExact(each.reveal[side], index === 0 ? 0 : whole.layers[index]!.reveal);
  }
  const lowest = only!.layers.at(-1)!.faceBox;
  expectExact(lowest.width, whole.size.width + 2 * whole.inset);
  expectExact(lowest.height, whole.size.height + 2 * whole.inset);
  const { box } = only!.artwork!;
  const sign = whole.floated ? -1 : 1;
  expectExact(lowest.x + whole.inset - box.x, sign * whole.cover.left);
  expectExact(lowest.y + whole.inset - box.y, sign * whole.cover.top);
  expectExact(box.width, whole.artwork.width);
}

/**
 * Two relations hold on each axis: outer = borders + reveals + opening, and artwork = opening + overlaps. So one size
 * of the first and one of the second may be left out, the opening counting for either; a weighting is a third, for
 * one border more on the vertical axis.
 */
const leftOut = (whole: WholeMat): fc.Arbitrary<LeftOut> => {
  const horizontal = fc.constantFrom<Side>('left', 'right');
  const vertical = fc.constantFrom<Side>('top', 'bottom');
  const pair = fc.tuple(horizontal, vertical);
  const first: fc.Arbitrary<LeftOut>[] = [
    fc.constant({}),
    fc.constant({ outer: true }),
    fc.constant({ size: true }),
    pair.map((borders) => ({ borders })),
    ...(whole.layers.length > 1
      ? [fc.integer({ min: 1, max: whole.layers.length - 1 }).map((reveal) => ({ reveal }))]
      : []),
  ];
  const second: fc.Arbitrary<LeftOut>[] = [
    fc.constant({}),
    fc.constant({ size: true }),
    pair.map((covers) => ({ covers })),
  ];
  const { top, bottom } = whole.border;
  const weightings: Weighting[] = [{ kind: 'add', length: bottom - top }];
  if (bottom > 0) weightings.push({ kind: 'ratio', ratio: bottom / top });
  return fc
    .tuple(fc.oneof(...first), fc.oneof(...second), fc.option(fc.tuple(fc.constantFrom(...weightings), vertical)))
    .map(([one, two, three]) => {
      const both = { ...one, ...two };
      if (three === null) return both;
      const [weighting, side] = three;
      return { ...both, weighting, borders: [...new Set([...(both.borders ?? []), side])] };
    });
};

const wholeAndOut = wholeMat.chain((whole) => fc.tuple(fc.constant(whole), leftOut(whole)));

describe('giving back what was solved', () => {
  it('any sufficient subset of the sizes yields the same mat', () => {
    fc.assert(
      fc.property(wholeAndOut, ([whole, out]) => expectWhole(solvedMat(jobWithout(whole, out)), whole)),
      { numRuns: 500 },
    );
  });

  it('two borders of one axis follow from weighting and outer size', () => {
    fc.assert(
      fc.property(wholeMat, (whole) => {
        const weighting: Weighting = { kind: 'ratio', ratio: whole.border.bottom / whole.border.top };
        const out: LeftOut = { borders: ['top', 'bottom', 'right'], weighting, covers: ['left', 'top'] };
        expectWhole(solvedMat(jobWithout(whole, out)), whole);
      }),
    );
  });

  it('whatever is left out, a solved mat honours every size that is given', () => {
    const sides = fc.subarray([...SIDES]);
    const anyOut = fc.record({
      outer: fc.boolean(),
      size: fc.boolean(),
      borders: sides,
      covers: sides,
      reveal: fc.nat(4),
    });
    let solvedOnes = 0;
    fc.assert(
      fc.property(wholeMat, anyOut, (whole, out) => {
        const job = jobWithout(whole, out);
        const result = solve(job);
        if (!result.ok) {
          for (const each of result.problems) expect(each.code).not.toBe('sizes-contradict');
          return;
        }
        solvedOnes++;
        const mat = result.value;
        if (!out.outer) expectExact(mat.outer.width, whole.outer.width);
        for (const side of SIDES) if (!out.borders.includes(side)) expectExact(mat.border[side], whole.border[side]);
        const lowest = mat.openings[0]!.layers.at(-1)!;
        if (!out.size) expectExact(lowest.faceBox.width, whole.size.width + 2 * whole.inset);
        expectExact(mat.openings[0]!.artwork!.size.height, whole.artwork.height);
        expectExact(lowest.border.left + lowest.faceBox.width + lowest.border.right, mat.outer.width);
      }),
      { numRuns: 300 },
    );
    expect(solvedOnes).toBeGreaterThan(100);
  });

  it('what was solved once, given back whole, changes nothing', () => {
    fc.assert(
      fc.property(wholeAndOut, ([whole, out]) => {
        const job = jobWithout(whole, out);
        const mat = solvedMat(job);
        const only = mat.openings[0]!;
        const again: Job = {
          ...job,
          mat: {
            border: mat.border,
            outer: mat.outer,
            layers: job.mat.layers.map((each, index) =>
              index === 0 ? each : { ...each, reveal: only.layers[index]!.reveal.top },
            ),
          },
        };
        expectWhole(solvedMat(again), whole);
      }),
    );
  });
});

describe('units', () => {
  const solvable = jobOf({ openings: [opening()] });

  it('sizes written in inches and in millimetres make the same mat', () => {
    const sixteenths = (min: number, max: number) => fc.integer({ min: 16 * min, max: 16 * max });
    fc.assert(
      fc.property(sixteenths(20, 40), sixteenths(20, 40), sixteenths(5, 15), sixteenths(5, 15), (W, H, w, h) => {
        const made = (written: (parts: number) => string, unit: 'in' | 'mm'): Mat => {
          const length = (parts: number): number => {
            const parsed = parseLength(written(parts), unit);
            if (!parsed.ok) throw new Error(parsed.message);
            return parsed.value;
          };
          const overlap: SomeSides = { top: length(4), left: length(4) };
          const job: Job = {
            ...solvable,
            units: unit,
            mat: { ...solvable.mat, outer: { width: length(W), height: length(H) } },
            openings: [{ ...solvable.openings[0]!, artwork: { width: length(w), height: length(h) }, overlap }],
          };
          return solvedMat(job);
        };
        const inches = made((parts) => `${parts}/16`, 'in');
        const mm = made((parts) => String((parts * 254) / 160), 'mm');
        for (const side of SIDES) expectExact(inches.border[side], mm.border[side]);
        for (const side of SIDES) {
          expectExact(inches.openings[0]!.artwork!.overlap[side], mm.openings[0]!.artwork!.overlap[side]);
        }
        expectExact(inches.openings[0]!.sight.width, mm.openings[0]!.sight.width);
        expectExact(inches.unitedInches, mm.unitedInches);
      }),
    );
  });
});
