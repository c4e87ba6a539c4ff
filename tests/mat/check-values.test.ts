import { describe, expect, it } from 'vitest';
import type { Job } from '../../src/job/job.ts';
import type { OpeningRequest } from '../../src/job/opening.ts';
import { inchesFromMm } from '../../src/units/units.ts';
import { all, board, complaints, inch, inches, jobOf, layer, opening, solvedMat } from './job.ts';
import { expectExact, expectShown, expectSize } from './near.ts';

const mm = (width: number, height: number) => ({ width, height });

function matOf(openingRequest: Partial<OpeningRequest>, mat: Partial<Job['mat']> = {}, units: Job['units'] = 'in') {
  return solvedMat(jobOf({ units, openings: [opening(openingRequest)], mat }));
}

function topFace(mat: ReturnType<typeof solvedMat>) {
  return mat.openings[0]!.layers[0]!.faceBox;
}

// Sources: KEL, WAT, COT, KOM, WCC are published worked examples, NAV and ARM two services' courses, DIA the diagonal
// method as taught in darkroom classes, SAI S. Saitzyk, Art Hardware (1987), GLD the Fine Art Trade Guild's framing
// standards, HOM Home Furnishing (2nd ed.), LOC the Library of Congress, Guide to Preservation Matting and Framing.

describe('openings and borders from the artwork', () => {
  const kelly = { artwork: inches(8, 10), overlap: all(inch(1 / 4)) };

  it('art 8 × 10, overlap 1/4: window 7 1/2 × 9 1/2 (KEL)', () => {
    expectSize(topFace(matOf(kelly, { border: all(inch(2)) })), inches(7.5, 9.5));
  });

  it('the same on 11 × 14: borders 1 3/4 and 2 1/4 (KEL)', () => {
    const { border } = matOf(kelly, { outer: inches(11, 14) });
    for (const side of ['left', 'right'] as const) expectExact(border[side], inch(1.75));
    for (const side of ['top', 'bottom'] as const) expectExact(border[side], inch(2.25));
  });

  it('art 15 × 22, overlap 1/4: 14 1/2 × 21 1/2 (WAT)', () => {
    const mat = matOf({ artwork: inches(15, 22), overlap: all(inch(1 / 4)) }, { border: all(inch(3)) });
    expectSize(topFace(mat), inches(14.5, 21.5));
  });

  it('image 12 × 18, overlap 1/8, mat 18 × 24: 11 3/4 × 17 3/4, borders 3 1/8 all round (COT)', () => {
    const mat = matOf({ artwork: inches(12, 18), overlap: all(inch(1 / 8)) }, { outer: inches(18, 24) });
    expectSize(topFace(mat), inches(11.75, 17.75));
    for (const border of Object.values(mat.border)) expectExact(border, inch(3.125));
  });

  it('image 18 × 12 floated 1/4, 1/2 at the bottom, measured at the face: 18 1/2 × 12 3/4 (COT)', () => {
    const float = { ...all(inch(1 / 4)), bottom: inch(1 / 2) };
    const mat = matOf({ artwork: inches(18, 12), float, measure: 'face' }, { border: all(inch(3)) });
    expectSize(topFace(mat), inches(18.5, 12.75));
    const { artwork } = mat.openings[0]!;
    expectExact(artwork!.box.x - topFace(mat).x, inch(1 / 4));
    expectExact(artwork!.box.y - topFace(mat).y, inch(1 / 4));
    expectExact(artwork!.overlap.bottom, 1.4 - inch(1 / 2));
  });

  it('art 216 × 279 mm, 2 mm an edge: 212 × 275; on 413 × 476 100.5 mm all round (KOM)', () => {
    const mat = matOf({ artwork: mm(216, 279), overlap: all(2) }, { outer: mm(413, 476) }, 'mm');
    expectSize(topFace(mat), mm(212, 275));
    for (const border of Object.values(mat.border)) expectExact(border, 100.5);
  });

  it('window 160 × 240, border 60: outer 280 × 360 mm; raised 2 mm: top 58, bottom 62 (WCC)', () => {
    const plain = matOf({ size: mm(160, 240) }, { border: all(60) }, 'mm');
    expectSize(plain.outer, mm(280, 360));
    const weighting = { kind: 'add', length: 4 } as const;
    const raised = matOf({ size: mm(160, 240) }, { outer: mm(280, 360), weighting }, 'mm');
    expectExact(raised.border.top, 58);
    expectExact(raised.border.bottom, 62);
  });

  it('top and sides 3 in, ratio 3:4: bottom 4 in (NAV, ARM)', () => {
    const border = { top: inch(3), left: inch(3), right: inch(3) };
    const mat = matOf({ size: inches(8, 10) }, { border, weighting: { kind: 'ratio', ratio: 4 / 3 } });
    expectExact(mat.border.bottom, inch(4));
    expectSize(mat.outer, inches(14, 17));
  });

  it('mat 2 1/2, under mat cut at 3 on the same edges, 11 × 14: openings 6 × 9 and 5 × 8, reveal 1/2 (common practice)', () => {
    const layers = [layer(), layer({ reveal: inch(1 / 2) })];
    const mat = matOf({}, { outer: inches(11, 14), border: all(inch(2.5)), layers });
    const [top, under] = mat.openings[0]!.layers;
    expectSize(top!.faceBox, inches(6, 9));
    expectSize(under!.faceBox, inches(5, 8));
    for (const border of Object.values(under!.border)) expectExact(border, inch(3));
    // The same from the two openings: the reveal is what is left.
    const derived = matOf(
      { size: inches(5, 8) },
      { outer: inches(11, 14), border: all(inch(2.5)), layers: [layer(), layer()] },
    );
    for (const reveal of Object.values(derived.openings[0]!.layers[1]!.reveal)) expectExact(reveal, inch(1 / 2));
  });
});

describe('the diagonal weighting (DIA)', () => {
  const cases = [
    { outer: [16, 20], size: [8, 10], borders: [3.75, 6.25, 4], digits: 2, warns: true },
    { outer: [11, 14], size: [7.5, 9.5], borders: [1.89205, 2.60795, 1.75], digits: 5, warns: false },
    { outer: [16, 20], size: [11, 14], borders: [2.53125, 3.46875, 2.5], digits: 5, warns: false },
    { outer: [14, 18], size: [8, 10], borders: [3.14286, 4.85714, 3], digits: 5, warns: false },
    { outer: [20, 16], size: [12, 8], borders: [3.2, 4.8, 4], digits: 1, warns: false },
  ] as const;

  for (const { outer, size, borders, digits, warns } of cases) {
    it(`${outer.join(' × ')}, window ${size.join(' × ')}: ${borders.join(', ')} in${warns ? ', warned of' : ''}`, () => {
      const job = jobOf({
        openings: [opening({ size: inches(size[0], size[1]) })],
        mat: { outer: inches(outer[0], outer[1]), weighting: { kind: 'diagonal' } },
      });
      const { border } = solvedMat(job);
      const [top, bottom, sides] = borders;
      expectShown(inchesFromMm(border.top), top, digits);
      expectShown(inchesFromMm(border.bottom), bottom, digits);
      expectExact(border.left, inch(sides));
      expectExact(border.right, inch(sides));
      const [W, H, w, h] = [...outer, ...size];
      expectExact(border.top, inch(((H - h) * (W + w)) / (4 * W)));
      expectExact(border.top + border.bottom, inch(H - h));
      expect(complaints(job)).toEqual(warns ? ['diagonal-top-narrow mat.weighting'] : []);
    });
  }

  it('400 × 500 mm, window 240 × 360: 56, 84, sides 80, warned of', () => {
    const weighting = { kind: 'diagonal' } as const;
    const job = jobOf({
      units: 'mm',
      openings: [opening({ size: mm(240, 360) })],
      mat: { outer: mm(400, 500), weighting },
    });
    const { border } = solvedMat(job);
    expectExact(border.top, 56);
    expectExact(border.bottom, 84);
    expectExact(border.left, 80);
    expect(complaints(job)).toEqual(['diagonal-top-narrow mat.weighting']);
  });

  it('is measured on the top mat’s face opening, whatever lies under it', () => {
    const layers = [layer(), layer({ reveal: inch(1 / 4) }), layer({ reveal: inch(1 / 2) })];
    const { border } = matOf(
      { size: inches(6, 8) },
      { outer: inches(11, 14), weighting: { kind: 'diagonal' }, layers },
    );
    expectShown(inchesFromMm(border.top), 1.89205, 5);
    expectExact(border.left, inch(1.75));
  });
});

describe('bevels (trigonometry)', () => {
  const one = (thickness: number, angle: number) =>
    matOf(
      { size: mm(200, 300) },
      { border: all(60), layers: [layer({ board: board(thickness), bevel: { angle, reverse: false } })] },
      'mm',
    );

  it.each([
    [1.5, 45, 1.5],
    [1.5, 60, 0.86603],
    [3, 45, 3],
    [3, 60, 1.73205],
  ])('setback of %f mm at %i°: %f mm', (thickness, angle, expected) => {
    const mat = one(thickness, angle);
    expectShown(mat.layers[0]!.setback, expected, 5);
    const { faceBox, backBox } = mat.openings[0]!.layers[0]!;
    expectShown(backBox.x - faceBox.x, expected, 5);
    expectShown(faceBox.width - backBox.width, 2 * expected, 4);
  });

  it('face of the bevel, 1.5 mm at 45°: 2.12132 mm', () => {
    expectShown(one(1.5, 45).layers[0]!.bevelFace, 2.12132, 5);
  });

  it('back opening 7 1/2 × 9 1/2, 0.060 in at 45°: face 7.62 × 9.62 in', () => {
    const layers = [layer({ board: board(inch(0.06)) })];
    const mat = matOf({ size: inches(7.5, 9.5), measure: 'sight' }, { border: all(inch(2)), layers });
    expectSize(topFace(mat), inches(7.62, 9.62));
    expectSize(mat.openings[0]!.layers[0]!.backBox, inches(7.5, 9.5));
    expectSize(mat.openings[0]!.sight, inches(7.5, 9.5));
  });

  it('a square cut has no setback at all, its face is its back', () => {
    const mat = one(1.5, 90);
    expect(mat.layers[0]!.setback).toBe(0);
    expect(mat.layers[0]!.bevelFace).toBe(1.5);
    const [only] = mat.openings[0]!.layers;
    expect(only!.back).toEqual(only!.face);
  });
});

describe('boards, frames and sheets', () => {
  const of = (thickness: number) =>
    complaints(
      jobOf({
        openings: [opening({ size: inches(8, 10) })],
        mat: { border: all(inch(2)), layers: [layer({ board: board(thickness) })] },
      }),
    );

  it('4-ply board of 0.050–0.060 in, a maker’s 0.004 in off, passes as a window mat (SAI, LOC)', () => {
    expect(of(inch(0.046))).toEqual([]);
    expect(of(inch(0.05))).toEqual([]);
    expect(of(inch(0.064))).toEqual([]);
  });

  it('1-ply of 0.0125–0.015 in is too thin, double weight of 0.100–0.120 in is not too thick (SAI, LOC)', () => {
    expect(of(inch(0.0125))).toEqual(['board-thin mat.layers[0].board']);
    expect(of(inch(0.015))).toEqual(['board-thin mat.layers[0].board']);
    expect(of(inch(0.1))).toEqual([]);
    expect(of(inch(0.12))).toEqual([]);
  });

  it('a mat is 1–3 mm smaller than the rebate (GLD)', () => {
    const framed = (clearance: number) =>
      jobOf({
        units: 'mm',
        openings: [opening({ size: mm(200, 300) })],
        mat: { frame: { inside: mm(400, 500), clearance, lip: 6 } },
      });
    for (const clearance of [1, 2, 3]) {
      expect(complaints(framed(clearance))).toEqual([]);
      expectSize(solvedMat(framed(clearance)).outer, mm(400 - clearance, 500 - clearance));
    }
    expect(complaints(framed(0.8))).toEqual(['clearance-unusual mat.frame.clearance']);
    expect(complaints(framed(3.3))).toEqual(['clearance-unusual mat.frame.clearance']);
  });

  it('borders of an upright, a wide and a square piece stand as they are taught (HOM)', () => {
    const weighting = { kind: 'add', length: inch(1 / 2) } as const;
    const upright = matOf({ size: inches(10, 13) }, { outer: inches(15.5, 19.5), weighting }).border;
    expect(upright.left).toBeLessThan(upright.top);
    expect(upright.top).toBeLessThan(upright.bottom);
    const wide = matOf({ size: inches(12, 8) }, { outer: inches(20, 16), weighting: { kind: 'diagonal' } }).border;
    expect(wide.top).toBeLessThan(wide.left);
    expect(wide.left).toBeLessThan(wide.bottom);
    const square = matOf({ size: inches(10, 10) }, { border: { top: inch(3) }, weighting }).border;
    expectExact(square.left, square.top);
    expect(square.top).toBeLessThan(square.bottom);
  });

  it('a full sheet of 32 × 40 in makes a mat, a little more does not; an under mat is trimmed on every edge (common practice)', () => {
    const sheets = [inches(32, 40)];
    const of = (width: number) =>
      jobOf({
        openings: [opening({ size: inches(20, 28) })],
        mat: {
          outer: inches(width, 32),
          layers: [layer({ board: board(1.4, { sheets }) }), layer({ reveal: inch(1 / 4), trimBack: inch(1 / 8) })],
        },
        bench: { stack: 'together' },
      });
    expect(complaints(of(40))).toEqual([]);
    expect(complaints(of(40.1))).toEqual(['blank-beyond-sheets mat.layers[0].board']);
    const [top, under] = solvedMat(of(40)).layers;
    expectSize(top!.blank, inches(40, 32));
    expectSize(under!.blank, inches(39.75, 31.75));
    expect(under!.blankBox).toMatchObject({ x: inch(1 / 8), y: inch(1 / 8) });
  });
});
