import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Stroke } from '../../src/bench/model.ts';
import { strokes } from '../../src/bench/strokes.ts';
import { box } from '../../src/geometry/box.ts';
import { polygon } from '../../src/geometry/path.ts';
import type { Point } from '../../src/geometry/point.ts';
import type { Side } from '../../src/geometry/sides.ts';
import type { Mat } from '../../src/mat/model.ts';
import { type BenchIn, bevel, LOPSIDED, lopsidedMat, makeJob, makeMat } from './mats.ts';

const cut = (mat: Mat, bench: BenchIn = {}) => strokes(mat, makeJob(mat, bench));

function bySide(found: readonly Stroke[]): Record<Side, Stroke> {
  return Object.fromEntries(found.map((s) => [s.side, s])) as Record<Side, Stroke>;
}

function expectPoint(actual: Point, x: number, y: number): void {
  expect(actual.x).toBeCloseTo(x, 9);
  expect(actual.y).toBeCloseTo(y, 9);
}

// The lopsided mat: 400 × 500, face opening x 70…310, y 80…380 in the face view. Seen from the back its mirror image:
// x 90…330 (90 = 400 − 310), y 80…380. The face's left side is at x = 330 there, its right side at x = 90.

describe('direction and place in the back view', () => {
  test('with the opening on the left hand the strokes run counterclockwise to the eye', () => {
    const s = bySide(cut(lopsidedMat()).strokes);
    // t = 1.4 at 45°: the line is 1.4 into the opening; its ends are the back corners.
    expectPoint(s.right.line.from, 91.4, 81.4);
    expectPoint(s.right.line.to, 91.4, 378.6);
    expectPoint(s.bottom.line.from, 91.4, 378.6);
    expectPoint(s.bottom.line.to, 328.6, 378.6);
    expectPoint(s.left.line.from, 328.6, 378.6);
    expectPoint(s.left.line.to, 328.6, 81.4);
    expectPoint(s.top.line.from, 328.6, 81.4);
    expectPoint(s.top.line.to, 91.4, 81.4);
    expectPoint(s.right.face.from, 90, 80);
    expectPoint(s.right.face.to, 90, 380);
    expectPoint(s.left.direction, 0, -1);
  });

  test('with the opening on the right hand they run clockwise', () => {
    const s = bySide(cut(lopsidedMat(), { head: { opening: 'right' } }).strokes);
    expectPoint(s.left.line.from, 328.6, 81.4);
    expectPoint(s.left.line.to, 328.6, 378.6);
    expectPoint(s.top.line.from, 91.4, 81.4);
    expectPoint(s.top.line.to, 328.6, 81.4);
  });

  test('a reverse bevel swaps the hand and puts the line outside the face line', () => {
    const s = bySide(cut(lopsidedMat(1.4, 45, true)).strokes);
    expectPoint(s.left.line.from, 331.4, 78.6);
    expectPoint(s.left.line.to, 331.4, 381.4);
    expectPoint(s.left.face.from, 330, 80);
    expect(s.left.reverse).toBe(true);
  });

  test('at 60° the setback is t·cot 60°, not t·tan 60°', () => {
    // 3 mm × cot 60° = 1.7320508 (check value 36: 1.73205 mm, trigonometry); tan would give 5.196.
    const s = bySide(cut(lopsidedMat(3, 60)).strokes);
    expect(s.right.line.from.x).toBeCloseTo(90 + 1.7320508, 6);
  });

  test('a square cut follows the face line, through paper too', () => {
    const s = bySide(cut(lopsidedMat(1.4, 90), { print: { transfer: 'cut-through', paperThickness: 0.2 } }).strokes);
    expectPoint(s.right.line.from, 90, 80);
    expectPoint(s.right.start, 90, 80);
  });

  test('cut through, the paper lifts the line by its thickness', () => {
    const print = { transfer: 'cut-through', paperThickness: 0.1 } as const;
    // (1.4 + 0.1)·cot 45° = 1.5 into the opening.
    const s = bySide(cut(lopsidedMat(), { print }).strokes);
    expectPoint(s.right.line.from, 91.5, 81.5);
    expectPoint(s.right.start, 91.5, 80);
    // (3 + 0.1)·cot 60° = 3.1 × 0.5773502692 = 1.7897858344 out of it.
    const r = bySide(cut(lopsidedMat(3, 60, true), { print }).strokes);
    expectPoint(r.right.line.to, 90 - 1.7897858344, 80 - 1.7897858344);
  });
});

describe('start and stop marks', () => {
  const head = { start: [{ offset: -1.2 }], stop: [{ offset: -0.4 }], overrun: 0.25 };

  test('starts 1.2 over and stops 0.4 short: start at u = 1.2 − x, stop at u = L + 0.4 + x', () => {
    // The worked example: o_start = 1.2 = −e_start, o_stop = −0.4 = e_stop. Face right side runs down from y 80 to 380.
    const s = bySide(cut(lopsidedMat(), { head }).strokes);
    expectPoint(s.right.start, 91.4, 80 + 1.2 - 0.25);
    expectPoint(s.right.stop, 91.4, 380 + 0.4 + 0.25);
    // The left side runs up from y 380 to 80.
    expectPoint(s.left.start, 328.6, 380 - 1.2 + 0.25);
    expectPoint(s.left.stop, 328.6, 80 - 0.4 - 0.25);
    // Top runs towards x = 90 from x = 330.
    expectPoint(s.top.start, 330 - 1.2 + 0.25, 81.4);
    expectPoint(s.top.stop, 90 - 0.4 - 0.25, 81.4);
  });

  test('the blade, carried along from the marks, starts and ends the face cut x past both corners', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -5, max: 5, noNaN: true }),
        fc.double({ min: -5, max: 5, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.constantFrom('left' as const, 'right' as const),
        fc.boolean(),
        (eStart, eStop, overrun, opening, reverse) => {
          const found = cut(lopsidedMat(1.4, 45, reverse), {
            head: { opening, overrun, start: [{ offset: eStart }], stop: [{ offset: eStop }] },
          }).strokes;
          for (const s of found) {
            const u = (p: Point) => (p.x - s.face.from.x) * s.direction.x + (p.y - s.face.from.y) * s.direction.y;
            expect(u(s.start) + eStart).toBeCloseTo(-overrun, 9);
            expect(u(s.stop) + eStop).toBeCloseTo(u(s.face.to) + overrun, 9);
          }
        },
      ),
    );
  });
});

describe('properties', () => {
  const cases = fc.record({
    left: fc.double({ min: 40, max: 120, noNaN: true }),
    right: fc.double({ min: 40, max: 120, noNaN: true }),
    top: fc.double({ min: 40, max: 120, noNaN: true }),
    bottom: fc.double({ min: 40, max: 120, noNaN: true }),
    thickness: fc.double({ min: 0.5, max: 4, noNaN: true }),
    angle: fc.double({ min: 35, max: 90, noNaN: true }),
    reverse: fc.boolean(),
    opening: fc.constantFrom('left' as const, 'right' as const),
    straightedge: fc.constantFrom(0, 12, 40),
    straightedgeOn: fc.constantFrom('border' as const, 'opening' as const),
    offset: fc.double({ min: -3, max: 3, noNaN: true }),
  });
  type Case = typeof cases extends fc.Arbitrary<infer T> ? T : never;

  const matOf = (c: Case, mirrored = false): Mat => {
    const x = mirrored ? c.right : c.left;
    return makeMat(400, 500, [
      {
        thickness: c.thickness,
        bevel: bevel(c.angle, c.reverse),
        faces: [box(x, c.top, 400 - c.left - c.right, 500 - c.top - c.bottom)],
      },
    ]);
  };
  const benchOf = (c: Case, opening = c.opening): BenchIn => ({
    head: {
      opening,
      straightedge: c.straightedge,
      straightedgeOn: c.straightedgeOn,
      overrun: 0.25,
      start: [{ offset: c.offset }],
      stop: [{ offset: -c.offset / 2 }],
    },
  });

  test('mirroring the mat and swapping the hand mirrors the strokes', () => {
    fc.assert(
      fc.property(cases, (c) => {
        const here = bySide(cut(matOf(c), benchOf(c)).strokes);
        const there = bySide(cut(matOf(c, true), benchOf(c, c.opening === 'left' ? 'right' : 'left')).strokes);
        const twin: Record<Side, Side> = { top: 'top', bottom: 'bottom', left: 'right', right: 'left' };
        for (const side of Object.keys(twin) as Side[]) {
          const a = here[side];
          const b = there[twin[side]];
          for (const [p, q] of [
            [a.line.from, b.line.from],
            [a.line.to, b.line.to],
            [a.start, b.start],
            [a.stop, b.stop],
            [a.straightedge?.from ?? a.start, b.straightedge?.from ?? b.start],
          ] as const)
            expectPoint(q, 400 - p.x, p.y);
          expect(b.guide).toBeCloseTo(a.guide, 9);
        }
      }),
    );
  });

  test('the opening lies on the hand of the head, on the other for a reverse bevel; the line lies on the board', () => {
    fc.assert(
      fc.property(cases, (c) => {
        const middle = { x: 400 - (c.left + (400 - c.left - c.right) / 2), y: c.top + (500 - c.top - c.bottom) / 2 };
        for (const s of cut(matOf(c), benchOf(c)).strokes) {
          const to = { x: middle.x - s.line.from.x, y: middle.y - s.line.from.y };
          const cross = s.direction.x * to.y - s.direction.y * to.x; // > 0: to the right of the travel, y down
          expect(cross > 0 ? 'right' : 'left').toBe(c.reverse === (c.opening === 'left') ? 'right' : 'left');
          for (const p of [s.line.from, s.line.to]) {
            expect(p.x).toBeGreaterThan(0);
            expect(p.x).toBeLessThan(400);
            expect(p.y).toBeGreaterThan(0);
            expect(p.y).toBeLessThan(500);
          }
        }
      }),
    );
  });
});

describe('straightedge', () => {
  test('lies at its offset on the border side, on the opening side for a reverse bevel', () => {
    const head = { straightedge: 30, straightedgeOn: 'border' as const };
    // Normal: the line of the right side is at x = 91.4 in the back view, the border to its left.
    const s = bySide(cut(lopsidedMat(), { head }).strokes);
    expectPoint(s.right.straightedge!.from, 61.4, 81.4);
    expectPoint(s.top.straightedge!.from, 328.6, 51.4);
    // Reverse: the line is at x = 88.6, and the head's border hand now lies towards the opening.
    const r = bySide(cut(lopsidedMat(1.4, 45, true), { head }).strokes);
    expectPoint(r.right.straightedge!.from, 118.6, 381.4);
  });

  test('on the opening side where the head says so, and for either hand', () => {
    for (const opening of ['left', 'right'] as const) {
      const s = bySide(cut(lopsidedMat(), { head: { opening, straightedge: 30, straightedgeOn: 'opening' } }).strokes);
      expect(s.right.straightedge!.from.x).toBeCloseTo(121.4, 9);
    }
    expect(cut(lopsidedMat()).strokes[0]!.straightedge).toBeUndefined();
  });
});

describe('other outlines', () => {
  test('a clipped corner: every side moves into the opening by the setback, corners where the moved sides meet', () => {
    const mat = makeMat(400, 500, [{ thickness: 1, bevel: bevel(45), faces: [LOPSIDED] }]);
    // Top right corner of the face clipped 40 × 40: (270, 80) to (310, 120).
    const face = polygon([
      { x: 70, y: 80 },
      { x: 270, y: 80 },
      { x: 310, y: 120 },
      { x: 310, y: 380 },
      { x: 70, y: 380 },
    ]);
    const opening = mat.openings[0]!;
    const clipped: Mat = {
      ...mat,
      openings: [{ ...opening, layers: [{ ...opening.layers[0]!, face, back: face }] }],
    };
    const found = cut(clipped).strokes;
    expect(found).toHaveLength(5);
    const oblique = found.find((s) => Math.abs(s.direction.x * s.direction.y) > 0.1)!;
    // In the back view the clip runs from (130, 80) to (90, 120); 1 mm in, along (1, 1)/√2, moves x + y by √2.
    // The moved top side is y = 81, the moved right side x = 91: corners on x + y = 210 + √2.
    expectPoint(oblique.line.from, 210 + Math.SQRT2 - 81, 81);
    expectPoint(oblique.line.to, 91, 210 + Math.SQRT2 - 91);
    expect(oblique.beyondGuide).toBe(true);
    expect(found.filter((s) => s !== oblique).every((s) => !s.beyondGuide)).toBe(true);
  });

  test('an arch: a side that meets a circular arc ends on the parallel arc', () => {
    const mat = makeMat(400, 500, [{ thickness: 2, bevel: bevel(45), faces: [LOPSIDED] }]);
    // Straight foot from (70, 380) to (310, 380), sides up to y = 200, half circle of radius 120 about (190, 200).
    const face = {
      start: { x: 70, y: 200 },
      segments: [
        { kind: 'arc' as const, to: { x: 310, y: 200 }, centre: { x: 190, y: 200 }, clockwise: true },
        { kind: 'line' as const, to: { x: 310, y: 380 } },
        { kind: 'line' as const, to: { x: 70, y: 380 } },
        { kind: 'line' as const, to: { x: 70, y: 200 } },
      ],
      closed: true,
    };
    const opening = mat.openings[0]!;
    const arch: Mat = { ...mat, openings: [{ ...opening, layers: [{ ...opening.layers[0]!, face, back: face }] }] };
    const s = bySide(cut(arch).strokes);
    expect(cut(arch).strokes).toHaveLength(3);
    expectPoint(s.right.line.from, 92, 200);
    expectPoint(s.right.line.to, 92, 378);
    // A low segment: the arc of radius 130 about (190, 250) over a chord at y = 200 (half chord 120): moved in by 2 the
    // circle has radius 128 and the chord lies at y = 198, 52 from the centre: half chord √(128² − 52²).
    const lens = {
      start: { x: 70, y: 200 },
      segments: [
        { kind: 'arc' as const, to: { x: 310, y: 200 }, centre: { x: 190, y: 250 }, clockwise: true },
        { kind: 'line' as const, to: { x: 70, y: 200 } },
      ],
      closed: true,
    };
    const low: Mat = {
      ...mat,
      openings: [{ ...opening, layers: [{ ...opening.layers[0]!, face: lens, back: lens }] }],
    };
    const chord = cut(low).strokes[0]!;
    expect(chord.side).toBe('bottom');
    expectPoint(chord.line.from, 210 - Math.sqrt(128 ** 2 - 52 ** 2), 198);
  });
});
