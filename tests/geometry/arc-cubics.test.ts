import fc from 'fast-check';
import { expect, test } from 'vitest';
import { arcCubics, quarterArcs } from '../../src/geometry/arc-cubics.ts';
import type { Segment } from '../../src/geometry/path.ts';
import type { Point } from '../../src/geometry/point.ts';

const at = (centre: Point, radius: number, angle: number): Point => ({
  x: centre.x + radius * Math.cos(angle),
  y: centre.y + radius * Math.sin(angle),
});

/** An arc about 300 200 through `sweep`, positive clockwise to the eye. */
function arcOf(radius: number, begin: number, sweep: number) {
  const centre = { x: 300, y: 200 };
  const arc = { kind: 'arc', to: at(centre, radius, begin + sweep), centre, clockwise: sweep > 0 } as const;
  return { from: at(centre, radius, begin), arc: arc satisfies Segment, centre };
}

const arcs = fc.tuple(
  fc.double({ min: 0.1, max: 3000, noNaN: true }),
  fc.double({ min: -3.1, max: 3.1, noNaN: true }),
  fc.oneof(
    fc.double({ min: 0.001, max: 6.28, noNaN: true }),
    fc.double({ min: -6.28, max: -0.001, noNaN: true }),
    fc.constantFrom(2 * Math.PI, -2 * Math.PI, Math.PI, -Math.PI, Math.PI / 2),
  ),
);

test('cubics follow an arc within 0.0005 mm, the right way round, from end to end', () => {
  fc.assert(
    fc.property(arcs, ([radius, begin, sweep]) => {
      const { from, arc, centre } = arcOf(radius, begin, sweep);
      const cubics = arcCubics(from, arc);
      let start = from;
      let travelled = 0;
      for (const { c1, c2, to } of cubics) {
        let last = start;
        for (let i = 1; i <= 16; i++) {
          const t = i / 16;
          const mix = (a: number, b: number, c: number, d: number): number =>
            a * (1 - t) ** 3 + 3 * b * t * (1 - t) ** 2 + 3 * c * t * t * (1 - t) + d * t ** 3;
          const p = { x: mix(start.x, c1.x, c2.x, to.x), y: mix(start.y, c1.y, c2.y, to.y) };
          expect(Math.abs(Math.hypot(p.x - centre.x, p.y - centre.y) - radius)).toBeLessThan(0.0005);
          const [ux, uy, vx, vy] = [last.x - centre.x, last.y - centre.y, p.x - centre.x, p.y - centre.y];
          travelled += Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
          last = p;
        }
        start = to;
      }
      expect(start).toEqual(arc.to);
      expect(Math.abs(travelled - sweep)).toBeLessThan(1e-5);
    }),
  );
});

test('a full circle is four curves at least', () => {
  const { from, arc } = arcOf(1, 0, 2 * Math.PI);
  expect(arcCubics(from, { ...arc, to: from }).length).toBe(4);
  expect(quarterArcs(from, { ...arc, to: from }).length).toBe(4);
  // A large one needs more, as four would be off by 0.27 mm.
  const large = arcOf(1000, 0, 2 * Math.PI);
  expect(arcCubics(large.from, large.arc).length).toBe(12);
});

test('true arcs keep to a quarter turn, so that rounded ends and radius lead to the same circle', () => {
  fc.assert(
    fc.property(arcs, ([radius, begin, sweep]) => {
      const { from, arc } = arcOf(radius, begin, sweep);
      const pieces = quarterArcs(from, arc);
      const round = (value: number): number => Math.round(value * 1e4) / 1e4;
      let start = from;
      for (const piece of pieces) {
        expect(piece.from.x).toBeCloseTo(start.x, 9);
        start = piece.segment.to;
        const [a, b, r] = [piece.from, start, round(radius)].map((v) =>
          typeof v === 'number' ? v : { x: round(v.x), y: round(v.y) },
        ) as [Point, Point, number];
        // The middle of the arc as a reader finds it from radius and ends (SVG 1.1, F.6.5).
        const half = Math.hypot(b.x - a.x, b.y - a.y) / 2;
        if (half < 1e-3) continue;
        const sagitta = r - Math.sqrt(Math.max(0, r * r - half * half));
        const side = arc.clockwise ? 1 : -1;
        const middle = {
          x: (a.x + b.x) / 2 + (side * sagitta * (b.y - a.y)) / (2 * half),
          y: (a.y + b.y) / 2 - (side * sagitta * (b.x - a.x)) / (2 * half),
        };
        expect(Math.abs(Math.hypot(middle.x - 300, middle.y - 200) - radius)).toBeLessThan(0.001);
      }
    }),
  );
});
