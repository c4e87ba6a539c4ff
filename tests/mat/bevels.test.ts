import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bottom, right } from '../../src/geometry/box.ts';
import { straightSides } from '../../src/geometry/path.ts';
import type { Bevel } from '../../src/job/layer.ts';
import type { OpeningLayer } from '../../src/mat/model.ts';
import { all, board, jobOf, layer, opening, solvedMat } from './job.ts';
import { expectExact } from './near.ts';

const mm = (width: number, height: number) => ({ width, height });

function stack(...bevels: (Bevel & { readonly thickness: number })[]) {
  const layers = bevels.map(({ thickness, angle, reverse }, index) =>
    layer({ board: board(thickness), bevel: { angle, reverse }, ...(index === 0 ? {} : { reveal: 6 }) }),
  );
  return solvedMat(
    jobOf({ units: 'mm', openings: [opening({ size: mm(200, 300) })], mat: { border: all(60), layers } }),
  );
}

const corners = (layerOf: OpeningLayer, line: 'face' | 'back') => straightSides(layerOf[line]).map((side) => side.from);

describe('bevels', () => {
  it('at 60° the setback is t / √3 and the face 2t / √3, not the other way round', () => {
    const [only] = stack({ thickness: 3, angle: 60, reverse: false }).layers;
    expectExact(only!.setback, 3 / Math.sqrt(3));
    expectExact(only!.bevelFace, 6 / Math.sqrt(3));
  });

  it('a normal bevel has the smaller opening on the back', () => {
    const [only] = stack({ thickness: 1.5, angle: 60, reverse: false }).openings[0]!.layers;
    const s = 1.5 / Math.sqrt(3);
    expectExact(only!.backBox.width, 200 - 2 * s);
    expectExact(only!.backBox.height, 300 - 2 * s);
    expectExact(only!.border.left, 60);
    expectExact(only!.backBox.x, 60 + s);
  });

  it('a reversed bevel has the larger opening on the back: face border = back border + s', () => {
    const mat = stack({ thickness: 1.5, angle: 60, reverse: true });
    const [only] = mat.openings[0]!.layers;
    const s = 1.5 / Math.sqrt(3);
    expectExact(only!.backBox.width, 200 + 2 * s);
    expectExact(only!.border.left, only!.backBox.x + s);
    expect(mat.openings[0]!.sight).toEqual(only!.faceBox);
  });

  it('shows reveal − setback below a normal bevel and the whole reveal below a reversed one', () => {
    const normal = stack({ thickness: 1.5, angle: 45, reverse: false }, { thickness: 2, angle: 45, reverse: true });
    for (const strip of Object.values(normal.openings[0]!.layers[1]!.strip)) expectExact(strip, 4.5);
    const reversed = stack({ thickness: 1.5, angle: 45, reverse: true }, { thickness: 2, angle: 45, reverse: false });
    for (const strip of Object.values(reversed.openings[0]!.layers[1]!.strip)) expectExact(strip, 6);
    for (const strip of Object.values(reversed.openings[0]!.layers[0]!.strip)) expectExact(strip, 60);
  });

  const bevel = fc.record({
    thickness: fc.double({ min: 1, max: 3, noNaN: true }),
    angle: fc.oneof(fc.constant(90), fc.double({ min: 30, max: 90, noNaN: true })),
    reverse: fc.boolean(),
  });

  it('keeps face, back and sight in order in any stack', () => {
    fc.assert(
      fc.property(fc.array(bevel, { minLength: 1, maxLength: 4 }), (bevels) => {
        const mat = stack(...bevels);
        const [only] = mat.openings;
        for (const [index, each] of only!.layers.entries()) {
          const { setback } = mat.layers[index]!;
          const sign = bevels[index]!.reverse ? -1 : 1;
          expect(each.backBox.x - each.faceBox.x).toBeCloseTo(sign * setback, 9);
          expect(right(each.faceBox) - right(each.backBox)).toBeCloseTo(sign * setback, 9);
          expect(bottom(each.faceBox) - bottom(each.backBox)).toBeCloseTo(sign * setback, 9);
          for (const line of ['face', 'back'] as const) {
            const frame = line === 'face' ? each.faceBox : each.backBox;
            expect(corners(each, line)[0]!.x).toBeCloseTo(frame.x, 9);
            expect(corners(each, line)[0]!.y).toBeCloseTo(frame.y, 9);
            expect(corners(each, line)[2]!.x).toBeCloseTo(right(frame), 9);
            expect(corners(each, line)[2]!.y).toBeCloseTo(bottom(frame), 9);
          }
          expect(each.border.left + each.faceBox.width + each.border.right).toBeCloseTo(mat.outer.width, 9);
          expect(each.border.top + each.faceBox.height + each.border.bottom).toBeCloseTo(mat.outer.height, 9);
          expect(only!.sight.x).toBeGreaterThanOrEqual(Math.max(each.faceBox.x, each.backBox.x) - 1e-9);
        }
        const lowest = only!.layers.at(-1)!;
        expect(only!.sight.x).toBeCloseTo(Math.max(lowest.faceBox.x, lowest.backBox.x), 9);
        expectExact(lowest.faceBox.width, 200);
      }),
    );
  });

  it('a measure of the sight is the innermost edge, whichever the bevel', () => {
    fc.assert(
      fc.property(fc.array(bevel, { minLength: 1, maxLength: 3 }), (bevels) => {
        const layers = bevels.map(({ thickness, angle, reverse }, index) =>
          layer({ board: board(thickness), bevel: { angle, reverse }, ...(index === 0 ? {} : { reveal: 7 }) }),
        );
        const openings = [opening({ artwork: mm(210, 310), overlap: all(5), measure: 'sight' as const })];
        const mat = solvedMat(jobOf({ units: 'mm', openings, mat: { border: all(60), layers } }));
        expectExact(mat.openings[0]!.sight.width, 200);
        expectExact(mat.openings[0]!.sight.height, 300);
        for (const overlap of Object.values(mat.openings[0]!.artwork!.overlap)) expectExact(overlap, 5);
      }),
    );
  });
});
