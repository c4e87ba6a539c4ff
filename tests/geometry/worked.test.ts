import { describe, expect, it } from 'vitest';
import { box, common, contains, grown, overlaps, union } from '../../src/geometry/box.ts';
import { derivative, type Piece, partOf, pointAt, sweepOf, turningPoints } from '../../src/geometry/curves.ts';
import { ellipsePerimeter, pathLength, signedArea } from '../../src/geometry/measure.ts';
import { circleCircle, lineCircle, meetings } from '../../src/geometry/meetings.ts';
import type { Path } from '../../src/geometry/path.ts';
import { distance, type Point } from '../../src/geometry/point.ts';

const p = (x: number, y: number): Point => ({ x, y });
const line = (from: Point, to: Point): Piece => ({ from, segment: { kind: 'line', to } });
const cubic = (from: Point, c1: Point, c2: Point, to: Point): Piece => ({
  from,
  segment: { kind: 'cubic', c1, c2, to },
});
const on = (centre: Point, radius: number, degrees: number): Point =>
  p(centre.x + radius * Math.cos((degrees * Math.PI) / 180), centre.y + radius * Math.sin((degrees * Math.PI) / 180));
const arc = (centre: Point, radius: number, from: number, to: number, clockwise: boolean): Piece => ({
  from: on(centre, radius, from),
  segment: { kind: 'arc', centre, clockwise, to: on(centre, radius, to) },
});

describe('a cubic worked by hand', () => {
  const curve = cubic(p(0, 0), p(1, 2), p(3, 3), p(4, 0));
  const { segment } = curve;
  if (segment.kind !== 'cubic') throw new Error('it is one');

  it('is 0.90625, 1.265625 at a quarter, where it goes 4.125, 3.9375', () => {
    expect(pointAt(curve, 0.25)).toEqual(p(0.90625, 1.265625));
    expect(derivative(curve.from, segment, 0.25)).toEqual(p(4.125, 3.9375));
  });

  it('is the same curve in parts', () => {
    const part = partOf(curve, 0.25, 0.75);
    for (const t of [0, 0.3, 0.5, 0.9, 1])
      expect(distance(pointAt(part, t), pointAt(curve, 0.25 + t / 2))).toBeLessThan(1e-12);
  });

  it('runs level at (√7 − 1) / 3, and another one upright twice', () => {
    expect(turningPoints(curve)).toHaveLength(1);
    expect(turningPoints(curve)[0]).toBeCloseTo((Math.sqrt(7) - 1) / 3, 12);
    const twice = turningPoints(cubic(p(0, 0), p(3, 1), p(-1, 2), p(2, 3)));
    expect(twice).toHaveLength(2);
    expect(twice[0]).toBeCloseTo(0.5 - Math.sqrt(28) / 28, 12);
    expect(twice[1]).toBeCloseTo(0.5 + Math.sqrt(28) / 28, 12);
  });
});

describe('an arc worked by hand', () => {
  const centre = p(3, 4);

  it.each([
    ['clockwise', -170, 170, true, [80, 170, 260]],
    ['the other way', 170, -170, false, [80, 170, 260]],
    ['clockwise over a little', 80, 100, true, [10]],
    ['the other way over a little', 100, 80, false, [10]],
    ['past where angles begin anew', 170, -100, true, [10]],
  ] as const)('turns back where it is level or upright: %s', (_, from, to, clockwise, degrees) => {
    const piece = arc(centre, 10, from, to, clockwise);
    if (piece.segment.kind !== 'arc') throw new Error('it is one');
    const sweep = (((clockwise ? to - from : from - to) % 360) + 360) % 360;
    expect((sweepOf(piece.from, piece.segment).sweep * 180) / Math.PI).toBeCloseTo(clockwise ? sweep : -sweep, 9);
    const found = turningPoints(piece);
    expect(found).toHaveLength(degrees.length);
    for (const [i, t] of found.entries()) expect(t * sweep).toBeCloseTo(degrees[i]!, 9);
  });
});

describe('where two pieces meet', () => {
  const places = (a: Piece, b: Piece): readonly (readonly number[])[] =>
    meetings(a, b)
      .map((each) => [each.a, each.b].map((t) => Math.round(1e6 * t) / 1e6))
      .sort((one, other) => one[0]! - other[0]!);
  const diagonal = line(p(0, 0), p(10, 10));

  it('is asked of both alike', () => {
    expect(places(diagonal, line(p(0, 4), p(16, 4)))).toEqual([[0.4, 0.25]]);
    // One would have to be drawn on: the first by its end, the first by its beginning, the other likewise.
    expect(places(diagonal, line(p(8, 0), p(6, 2)))).toEqual([]);
    expect(places(line(p(8, 0), p(6, 2)), diagonal)).toEqual([]);
    expect(places(diagonal, line(p(2, 4), p(1, 6)))).toEqual([]);
    expect(places(line(p(2, 4), p(1, 6)), diagonal)).toEqual([]);
  });

  it('are the ends of a stretch that both share, on a line and on a circle', () => {
    expect(places(line(p(0, 5), p(10, 5)), line(p(4, 5), p(14, 5)))).toEqual([
      [0.4, 0],
      [1, 0.6],
    ]);
    expect(places(line(p(0, 5), p(10, 5)), line(p(4, 5.001), p(14, 5.001)))).toEqual([]);
    expect(places(arc(p(0, 0), 5, 0, 90, true), arc(p(0, 0), 5, 45, 135, true))).toEqual([
      [0.5, 0],
      [1, 0.5],
    ]);
    expect(places(arc(p(0, 0), 5, 0, 90, true), arc(p(0, 0), 5.001, 45, 135, true))).toEqual([]);
  });

  it('are both crossings of a line and a circle, the line first or second, and one where it only touches', () => {
    const upper = arc(p(0, 0), 5, 180, 0, true);
    expect(places(line(p(-10, -3), p(10, -3)), upper)).toEqual(
      [
        [0.3, Math.atan2(3, 4) / Math.PI],
        [0.7, 1 - Math.atan2(3, 4) / Math.PI],
      ].map((pair) => pair.map((t) => Math.round(1e6 * t) / 1e6)),
    );
    expect(places(upper, line(p(-10, -3), p(10, -3))).map(([, b]) => b)).toEqual([0.3, 0.7]);
    expect(lineCircle(p(-10, 5), p(20, 0), p(0, 0), 5)).toEqual([0.5]);
    expect(lineCircle(p(-10, 5.01), p(20, 0), p(0, 0), 5)).toEqual([]);
  });

  it('are both crossings of two circles, and one where they touch', () => {
    const found = circleCircle(p(0, 0), 5, p(6, 0), 5);
    expect(found.map(({ x, y }) => [x, y])).toEqual([
      [3, 4],
      [3, -4],
    ]);
    expect(circleCircle(p(0, 0), 2, p(5, 0), 3)).toEqual([p(2, 0)]);
    expect(circleCircle(p(0, 0), 2, p(5.01, 0), 3)).toEqual([]);
  });

  it('is found on curves of every way, whichever handle lies farthest out', () => {
    // The four lie with their bulge to the right, the left, below and above; a line runs through each at its middle.
    for (const [dx, dy] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ] as const) {
      const curve = cubic(
        p(dy * 10, dx * 10),
        p(dy * 10 + dx * 8, dx * 10 + dy * 8),
        p(-dy * 10 + dx * 8, -dx * 10 + dy * 8),
        p(-dy * 10, -dx * 10),
      );
      const other = cubic(p(0, 0), p(dx * 3, dy * 3), p(dx * 6, dy * 6), p(dx * 9, dy * 9));
      // At one half the bulge stands three quarters of its handles out, which is 6.
      expect(places(curve, other)).toEqual([[0.5, 0.666667]]);
      expect(places(other, curve)).toEqual([[0.666667, 0.5]]);
    }
  });
});

describe('lengths and areas worked by hand', () => {
  it('an ellipse’s are those of a sum over a hundred thousand chords', () => {
    const [a, b, count] = [5, 3, 100_000];
    const at = (i: number): Point =>
      p(a * Math.cos((2 * Math.PI * i) / count), b * Math.sin((2 * Math.PI * i) / count));
    let sum = 0;
    for (let i = 0; i < count; i++) sum += distance(at(i), at(i + 1));
    expect(ellipsePerimeter(a, b)).toBeCloseTo(sum, 7);
    expect(ellipsePerimeter(b, a)).toBe(ellipsePerimeter(a, b));
    expect(ellipsePerimeter(2, 2)).toBeCloseTo(4 * Math.PI, 12);
    expect(ellipsePerimeter(2, 0)).toBe(8);
  });

  it('a parabola’s piece y = x² from 0 to 1 is √5 / 2 + asinh(2) / 4 long, and a third lies below it', () => {
    const path: Path = {
      start: p(0, 0),
      closed: true,
      segments: [
        { kind: 'cubic', c1: p(1 / 3, 0), c2: p(2 / 3, 1 / 3), to: p(1, 1) },
        { kind: 'line', to: p(1, 0) },
        { kind: 'line', to: p(0, 0) },
      ],
    };
    expect(pathLength(path) - 2).toBeCloseTo(Math.sqrt(5) / 2 + Math.asinh(2) / 4, 9);
    // y runs down, so that this one goes the other way than a clock.
    expect(signedArea(path)).toBeCloseTo(-1 / 3, 12);
  });
});

describe('boxes', () => {
  const one = box(1, 2, 10, 20);

  it('have a smallest one round them, wherever they lie', () => {
    expect(union([one, box(-3, 5, 1, 1), box(4, -6, 30, 2)])).toEqual(box(-3, -6, 37, 28));
    expect(grown(one, 3)).toEqual(box(-2, -1, 16, 26));
  });

  it('share what both hold, and nothing where they only touch in one way', () => {
    expect(common(one, box(6, 12, 10, 20))).toEqual(box(6, 12, 5, 10));
    expect(common(one, box(11, 12, 5, 5))).toBeUndefined();
    expect(common(one, box(6, 22, 5, 5))).toBeUndefined();
    expect(common(one, box(50, 5, 5, 5))).toBeUndefined();
    expect(overlaps(one, box(11, 2, 5, 5))).toBe(false);
    expect(overlaps(one, box(12, 2, 5, 5), 1.5)).toBe(true);
    expect(overlaps(one, box(1, 23, 5, 5), 1.5)).toBe(true);
  });

  it('hold another one, edge on edge', () => {
    expect(contains(one, box(1, 2, 10, 20))).toBe(true);
    for (const out of [box(0.9, 2, 1, 1), box(1, 1.9, 1, 1), box(5, 5, 6.1, 1), box(5, 5, 1, 17.1)])
      expect(contains(one, out)).toBe(false);
  });
});
