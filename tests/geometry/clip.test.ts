import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Box, bottom, box, right, union } from '../../src/geometry/box.ts';
import { clipLine, type Line, meetsBox } from '../../src/geometry/clip.ts';
import { point } from '../../src/geometry/point.ts';

const meets = (line: Line, b: Box): boolean => meetsBox(line, b.x, b.y, right(b), bottom(b));
const line = (x0: number, y0: number, x1: number, y1: number): Line => ({ from: point(x0, y0), to: point(x1, y1) });

test('a line is clipped to a box and keeps its direction', () => {
  const b = box(10, 20, 30, 40);
  expect(clipLine(line(0, 30, 100, 30), b)).toEqual(line(10, 30, 40, 30));
  expect(clipLine(line(25, 100, 25, 0), b)).toEqual(line(25, 60, 25, 20));
  expect(clipLine(line(0, 10, 60, 70), b)).toEqual(line(10, 20, 40, 50));
  expect(clipLine(line(15, 25, 20, 30), b)).toEqual(line(15, 25, 20, 30));
});

test('what only touches still meets; what passes a corner by does not', () => {
  const b = box(10, 20, 30, 40);
  expect(clipLine(line(0, 20, 10, 20), b)).toEqual(line(10, 20, 10, 20));
  expect(clipLine(line(40, 0, 40, 100), b)).toEqual(line(40, 20, 40, 60));
  expect(clipLine(line(10, 20, 10, 20), b)).toEqual(line(10, 20, 10, 20));
  expect(clipLine(line(0, 29.9, 19.9, 10), b)).toBeUndefined();
  expect(clipLine(line(9.9, 0, 9.9, 100), b)).toBeUndefined();
  expect(clipLine(line(0, 61, 100, 61), b)).toBeUndefined();
});

/** Whole numbers, so that touching happens often and every product is exact. */
const whole = fc.integer({ min: -20, max: 20 });
const size = fc.integer({ min: 0, max: 20 });
const anyLine = fc.tuple(whole, whole, whole, whole).map(([a, b, c, d]) => line(a, b, c, d));
const anyBox = fc.tuple(whole, whole, size, size).map(([x, y, w, h]) => box(x, y, w, h));

/** By sides alone: the box lies neither wholly aside of the line's own box nor wholly on one side of the line. */
function meetsBySides({ from, to }: Line, b: Box): boolean {
  const apart =
    Math.max(from.x, to.x) < b.x ||
    Math.min(from.x, to.x) > right(b) ||
    Math.max(from.y, to.y) < b.y ||
    Math.min(from.y, to.y) > bottom(b);
  if (apart) return false;
  const sides = [
    [b.x, b.y],
    [right(b), b.y],
    [b.x, bottom(b)],
    [right(b), bottom(b)],
  ].map(([x, y]) => Math.sign((to.x - from.x) * (y! - from.y) - (to.y - from.y) * (x! - from.x)));
  return !(sides.every((s) => s > 0) || sides.every((s) => s < 0));
}

test('meeting is what the sides of the line say, and clipping agrees', () => {
  let [met, missed] = [0, 0];
  fc.assert(
    fc.property(anyLine, anyBox, (l, b) => {
      expect(meets(l, b)).toBe(meetsBySides(l, b));
      const clipped = clipLine(l, b);
      expect(clipped !== undefined).toBe(meets(l, b));
      if (clipped === undefined) {
        missed++;
        return;
      }
      met++;
      for (const p of [clipped.from, clipped.to]) {
        expect(p.x).toBeGreaterThanOrEqual(b.x - 1e-9);
        expect(p.x).toBeLessThanOrEqual(right(b) + 1e-9);
        expect(p.y).toBeGreaterThanOrEqual(b.y - 1e-9);
        expect(p.y).toBeLessThanOrEqual(bottom(b) + 1e-9);
      }
    }),
    { numRuns: 2000 },
  );
  expect(Math.min(met, missed)).toBeGreaterThan(200);
});

test('a union holds each box and touches one on every side', () => {
  fc.assert(
    fc.property(fc.array(anyBox, { minLength: 1 }), (boxes) => {
      const all = union(boxes);
      expect(all.x).toBe(Math.min(...boxes.map((b) => b.x)));
      expect(all.y).toBe(Math.min(...boxes.map((b) => b.y)));
      expect(right(all)).toBe(Math.max(...boxes.map(right)));
      expect(bottom(all)).toBe(Math.max(...boxes.map(bottom)));
    }),
  );
});
