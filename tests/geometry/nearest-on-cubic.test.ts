import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distanceToCubic, type Handles, slope, squares } from '../../src/geometry/nearest-on-cubic.ts';

interface P {
  readonly x: number;
  readonly y: number;
}
type Cubic = readonly [P, P, P, P];

const at = ([a, b, c, d]: Cubic, t: number): P => {
  const mix = (k: 'x' | 'y') =>
    (1 - t) ** 3 * a[k] + 3 * (1 - t) ** 2 * t * b[k] + 3 * (1 - t) * t ** 2 * c[k] + t ** 3 * d[k];
  return { x: mix('x'), y: mix('y') };
};

/** Dense samples, the best of them looked at again more closely: never less than the truth, and very near it. */
function sampled(curve: Cubic, p: P): number {
  const away = (t: number): number => Math.hypot(at(curve, t).x - p.x, at(curve, t).y - p.y);
  const count = 2000;
  const all = Array.from({ length: count + 1 }, (_, i) => away(i / count));
  let best = Math.min(...all);
  for (const [i, each] of all.entries()) {
    if (each > best + 1) continue;
    for (let k = -20; k <= 20; k++) best = Math.min(best, away(Math.min(1, Math.max(0, (i + k / 20) / count))));
  }
  return best;
}

const coordinate = fc.integer({ min: -1000, max: 1000 }).map((k) => k / 10);
const point = fc.record({ x: coordinate, y: coordinate });
const any: fc.Arbitrary<Cubic> = fc.tuple(point, point, point, point);
/** Out and back again: the ends as good as one point, the handles nearly in one line. */
const hairpin = fc
  .record({ long: fc.integer({ min: 5, max: 120 }), aside: fc.integer({ min: -50, max: 50 }), gap: fc.nat(20) })
  .map(
    ({ long, aside, gap }): Cubic => [
      { x: 0, y: 0 },
      { x: 0, y: -long },
      { x: aside / 10, y: -gap / 100 },
      { x: -gap / 1e5, y: 0 },
    ],
  );
const cusp = fc.tuple(point, point, point).map(([a, b, c]): Cubic => [a, b, c, { x: a.x, y: a.y }]);

describe('the distance from a point to a cubic', () => {
  it('is found on a hairpin, whose two legs lie closer than any even spread of samples can tell', () => {
    const from = { x: 0, y: 0 };
    const to = { x: -0.00008, y: 0 };
    const found = distanceToCubic(from, { x: 0, y: -79.55 }, { x: -4.03, y: 0 }, to, { x: -0.635, y: -34.504 });
    const curve: Cubic = [from, { x: 0, y: -79.55 }, { x: -4.03, y: 0 }, to];
    expect(found).toBeLessThan(0.03);
    expect(Math.abs(found - sampled(curve, { x: -0.635, y: -34.504 }))).toBeLessThan(2e-5);
  });

  it('is that of dense samples, on curves of any bend', () => {
    fc.assert(
      fc.property(fc.oneof(any, hairpin, cusp), point, (curve, p) => {
        const truth = sampled(curve, p);
        const found = distanceToCubic(...curve, p);
        expect(found).toBeLessThanOrEqual(truth + 1e-8);
        expect(found).toBeGreaterThan(truth - 1e-3);
      }),
      { numRuns: 100 },
    );
  });

  it('is next to nothing for a point of the curve itself', () => {
    fc.assert(
      fc.property(fc.oneof(any, hairpin, cusp), fc.nat(1000), (curve, k) => {
        expect(distanceToCubic(...curve, at(curve, k / 1000))).toBeLessThan(1e-6);
      }),
      { numRuns: 500 },
    );
  });

  it('ends soon where every point is as far: about the middle of a quarter circle', () => {
    const k = (4 * (Math.SQRT2 - 1)) / 3;
    const found = distanceToCubic({ x: 1, y: 0 }, { x: 1, y: k }, { x: k, y: 1 }, { x: 0, y: 1 }, { x: 0, y: 0 });
    expect(found).toBeCloseTo(1, 6);
    const still = { x: 3, y: 4 };
    expect(distanceToCubic(still, still, still, still, { x: 0, y: 0 })).toBeCloseTo(5, 12);
  });

  it('is found where a handle rests on its end, so that the curve stands still there', () => {
    // All of them run along y = 0, so the nearest point lies right below.
    const [a, b, c] = [0, 3, 9].map((x) => ({ x, y: 0 })) as [P, P, P];
    for (const x of [0.5, 4, 8.5])
      for (const curve of [
        [a, a, b, c],
        [a, b, c, c],
        [a, a, c, c],
      ] as const) {
        expect(distanceToCubic(...curve, { x, y: 2 })).toBeCloseTo(2, 9);
        expect(distanceToCubic(curve[3], curve[2], curve[1], curve[0], { x, y: -2 })).toBeCloseTo(2, 9);
      }
  });

  it('rests on polynomials that are the distance’s square and half a third of its slope, wherever they are asked', () => {
    const choose = (n: number, k: number): number => (k === 0 ? 1 : (choose(n - 1, k - 1) * n) / k);
    const bernstein = (all: readonly number[], t: number): number =>
      all.reduce(
        (sum, each, k) => sum + each * choose(all.length - 1, k) * t ** k * (1 - t) ** (all.length - 1 - k),
        0,
      );
    fc.assert(
      fc.property(any, fc.nat(100), (curve, k) => {
        const t = k / 100;
        const [a, b, c, d] = curve;
        const handles: Handles = [a.x, a.y, b.x, b.y, c.x, c.y, d.x, d.y];
        const place = at(curve, t);
        const speed = (k: 'x' | 'y'): number =>
          (1 - t) ** 2 * (b[k] - a[k]) + 2 * t * (1 - t) * (c[k] - b[k]) + t * t * (d[k] - c[k]);
        expect(bernstein(squares(handles), t)).toBeCloseTo(place.x ** 2 + place.y ** 2, 6);
        expect(bernstein(slope(handles), t)).toBeCloseTo(place.x * speed('x') + place.y * speed('y'), 6);
      }),
      { numRuns: 200 },
    );
  });
});
