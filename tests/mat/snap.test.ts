import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SIDES } from '../../src/geometry/sides.ts';
import { guideReading } from '../../src/mat/guide-reading.ts';
import { solve } from '../../src/mat/solve.ts';
import { all, board, complaints, inch, inches, jobOf, layer, opening, solvedMat } from './job.ts';
import { expectExact } from './near.ts';

const mm = (width: number, height: number) => ({ width, height });
const snapping = (graduation: number) => ({ snap: true, graduation });
const onGraduation = (length: number, graduation: number): boolean =>
  Math.abs(length / graduation - Math.round(length / graduation)) < 1e-6;

describe('snapping to the graduation', () => {
  const job = (bench = {}, mat = {}) =>
    jobOf({
      units: 'mm',
      openings: [opening({ artwork: mm(210, 297), overlap: all(5) })],
      mat: { outer: mm(300.8, 400), weighting: { kind: 'add', length: 4 }, ...mat },
      bench,
    });

  it('moves opposite edges alike, leaves outer size and artwork in place and says what moved', () => {
    const before = solvedMat(job());
    const after = solvedMat(job(snapping(1)));
    // left = right = (300.8 − 200) / 2 = 50.4; top = (400 − 287 − 4) / 2 = 54.5, bottom 58.5: halves cover more.
    expect(after.moved).toEqual([
      { what: 'top border', from: expect.closeTo(54.5, 9), to: expect.closeTo(55, 9) },
      { what: 'right border', from: expect.closeTo(50.4, 9), to: expect.closeTo(50, 9) },
      { what: 'bottom border', from: expect.closeTo(58.5, 9), to: expect.closeTo(59, 9) },
      { what: 'left border', from: expect.closeTo(50.4, 9), to: expect.closeTo(50, 9) },
    ]);
    expect(after.outer).toEqual(before.outer);
    const [art, was] = [after.openings[0]!.artwork!, before.openings[0]!.artwork!];
    expectExact(art.box.x, was.box.x);
    expectExact(art.box.y, was.box.y);
    expectExact(art.overlap.left, was.overlap.left - 0.4);
    expectExact(art.overlap.bottom, was.overlap.bottom + 0.5);
    expectExact(after.openings[0]!.layers[0]!.faceBox.width, 200.8);
    expectExact(after.openings[0]!.layers[0]!.faceBox.height, 286);
  });

  it('keeps reveals as they are: under mats move with the top mat', () => {
    const layers = [layer(), layer({ reveal: 5.3 }), layer({ reveal: 4.2 })];
    const mat = solvedMat(job(snapping(1), { layers }));
    const [top, first, second] = mat.openings[0]!.layers;
    for (const side of SIDES) {
      expect(onGraduation(top!.border[side], 1)).toBe(true);
      expectExact(first!.border[side], top!.border[side] + 5.3);
      expectExact(second!.border[side], top!.border[side] + 9.5);
    }
  });

  it('takes the guide’s correction and the thickness of the board into account: its reading is what falls on the graduation', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -2, max: 2, noNaN: true }),
        fc.double({ min: 0.99, max: 1.01, noNaN: true }),
        fc.constantFrom(undefined, 1.4, 1.6),
        fc.constantFrom(45, 60, 90),
        fc.boolean(),
        fc.constantFrom('prick' as const, 'cut-through' as const),
        (a, b, setAt, angle, reverse, transfer) => {
          const guide = { graduation: 1, a, b, ...(setAt === undefined ? {} : { setAt }) };
          const bevel = { angle, reverse };
          const layers = [layer({ board: board(2.1), bevel }), layer({ reveal: 8.3 })];
          const made = job({ ...snapping(1), guide }, { layers });
          const cut = { ...made, print: { ...made.print, transfer } };
          const mat = solvedMat(cut);
          const thickness = 2.1 + (transfer === 'cut-through' ? cut.print.paperThickness : 0);
          for (const side of SIDES) {
            const across = side === 'left' || side === 'right' ? mat.outer.width : mat.outer.height;
            const distance = reverse ? across - mat.border[side] : mat.border[side];
            const reading = guideReading(guide, distance, thickness, bevel);
            expect(Math.abs(reading - Math.round(reading))).toBeLessThan(0.0105);
            expectExact(mat.openings[0]!.layers[1]!.reveal[side], 8.3);
          }
          expectExact(mat.border.left, mat.border.right);
        },
      ),
    );
  });

  it('leaves what is on the graduation, and does nothing unless it is asked to', () => {
    expect(solvedMat(job(snapping(0.1))).moved).toEqual([]);
    expect(solvedMat(job({ graduation: 1 })).moved).toEqual([]);
  });

  it('covers rather than uncovers where rounding down would leave less than 2 mm of the artwork', () => {
    const openings = [opening({ artwork: mm(210, 297), overlap: all(2.1), measure: 'sight' })];
    const made = (snap: boolean) =>
      solvedMat(
        jobOf({
          units: 'mm',
          openings,
          mat: { border: { left: 50 }, outer: mm(307.2, 400) },
          bench: { ...snapping(1), snap },
        }),
      );
    // The opening is 205.8 + 2.8 at the face: right = 307.2 − 50 − 208.6 = 48.6, top = bottom = 52.2 − 0.2.
    const [before, after] = [made(false), made(true)];
    expectExact(before.border.right, 48.6);
    expectExact(before.border.top, 52.2);
    expectExact(after.border.right, 49);
    expectExact(after.border.top, 53);
    expectExact(after.openings[0]!.artwork!.overlap.top, 2.9);
    expectExact(after.border.left, 50);
  });

  it('moves both edges up where one of them has no room below', () => {
    const openings = [opening({ artwork: mm(200, 300), overlap: { ...all(5), top: 2.1 }, measure: 'sight' })];
    // top = bottom = (400 − 292.9 − 2.8) / 2 = 52.15
    const mat = solvedMat(jobOf({ units: 'mm', openings, mat: { outer: mm(292.8, 400) }, bench: snapping(1) }));
    expectExact(mat.border.top, 53);
    expectExact(mat.border.bottom, 53);
    expectExact(mat.border.left, 50);
  });

  it('covers more where a border lies half way, whatever the rounding of the arithmetic', () => {
    const openings = [opening({ artwork: inches(8, 10), overlap: all(inch(9 / 32)) })];
    for (let eighths = 0; eighths < 40; eighths++) {
      const mat = { outer: inches(11 + eighths / 8, 14) };
      const { border } = solvedMat(jobOf({ openings, mat, bench: snapping(inch(1 / 16)) }));
      expectExact(border.left, inch(1 + 13 / 16 + eighths / 16));
    }
  });

  it('leaves a float its 2 mm too', () => {
    const openings = [opening({ artwork: mm(200, 300), float: all(2.2), measure: 'sight' })];
    const outer = mm(200 + 2.2 * 2 + 2.8 + 2 * 40.7, 300 + 2.2 * 2 + 2.8 + 2 * 40.7);
    const mat = solvedMat(jobOf({ units: 'mm', openings, mat: { outer }, bench: snapping(1) }));
    for (const side of SIDES) {
      expectExact(mat.border[side], 40);
      expectExact(mat.openings[0]!.artwork!.overlap[side], -2.9);
    }
  });

  it('refuses to move a given border or a given opening', () => {
    const off = job(snapping(1), { border: { left: 50.4 } });
    expect(complaints(off)).toEqual(['snap-not-possible mat.border.left']);
    expectExact(solvedMat(off).border.left, 50.4);
    expectExact(solvedMat(off).border.right, 50.4);
    expect(solvedMat(off).moved.map((each) => each.what)).toEqual(['top border', 'bottom border']);
    const sized = jobOf({
      openings: [opening({ size: inches(7.3, 9) })],
      mat: { outer: inches(11, 14) },
      bench: snapping(inch(1 / 16)),
    });
    expect(complaints(sized)).toEqual(['snap-not-possible openings[0].size']);
    expectExact(solvedMat(sized).border.left, inch(1.85));
  });

  it('leaves 2 mm, moves by less than a graduation and keeps outer size and artwork in any mat', () => {
    const length = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    const graduation = fc.constantFrom(0.5, 1, inch(1 / 16), inch(1 / 32));
    fc.assert(
      fc.property(
        length(250, 400),
        length(300, 500),
        length(2, 12),
        graduation,
        fc.boolean(),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (width, height, cover, step, floated, added) => {
          const request = floated ? { float: all(cover) } : { overlap: all(cover) };
          const made = (snap: boolean) =>
            jobOf({
              units: 'mm',
              openings: [opening({ artwork: mm(150, 200), measure: 'sight', ...request })],
              mat: {
                outer: mm(width, height),
                weighting: { kind: 'add', length: added },
                layers: [layer(), layer({ reveal: 6 })],
              },
              bench: { snap, graduation: step },
            });
          const [before, after] = [solvedMat(made(false)), solvedMat(made(true))];
          expect(solve(made(true))).toMatchObject({ ok: true, warnings: [] });
          expect(after.outer).toEqual(before.outer);
          expectExact(after.openings[0]!.artwork!.box.x, before.openings[0]!.artwork!.box.x);
          expectExact(after.openings[0]!.artwork!.box.y, before.openings[0]!.artwork!.box.y);
          expectExact(after.border.left, after.border.right);
          for (const side of SIDES) {
            const moved = Math.abs(after.border[side] - before.border[side]);
            expect(moved).toBeLessThan(step);
            expect(Math.abs(after.border[side] / step - Math.round(after.border[side] / step)) * step).toBeLessThan(
              0.0101,
            );
            expect(Math.abs(after.openings[0]!.artwork!.overlap[side])).toBeGreaterThan(2 - 1e-9);
            const under = after.openings[0]!.layers[1]!;
            expectExact(under.reveal[side], 6);
            expectExact(under.border[side], after.border[side] + 6);
          }
        },
      ),
      { numRuns: 200 },
    );
  });
});
