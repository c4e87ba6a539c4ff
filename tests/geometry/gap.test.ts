import { describe, expect, it } from 'vitest';
import { gapBetween } from '../../src/geometry/near.ts';
import { type Path, polygon, reversed, type Segment } from '../../src/geometry/path.ts';

const line = (x: number, y: number): Segment => ({ kind: 'line', to: { x, y } });

/** Handles of the curve x = long·t, y = a + b·t + c·t² + d·t³. */
function risingAs(long: number, [a, b, c, d]: readonly [number, number, number, number]): Path {
  const heights = [a, a + b / 3, a + (2 * b + c) / 3, a + b + c + d];
  const [from, c1, c2, to] = heights.map((y, i) => ({ x: (long * i) / 3, y }));
  return { start: from!, segments: [{ kind: 'cubic', c1: c1!, c2: c2!, to: to! }], closed: false };
}

/** The curve as the side of an outline that goes on far above. */
function closedFarAbove(curve: Path): Path {
  const { to } = curve.segments[0]!;
  const { start } = curve;
  return {
    ...curve,
    segments: [...curve.segments, line(to.x, 9000), line(start.x, 9000), line(start.x, start.y)],
    closed: true,
  };
}

const below = polygon([
  { x: -3000, y: 0 },
  { x: -3000, y: -50 },
  { x: 9000, y: -50 },
  { x: 9000, y: 0 },
]);

describe('the gap between two outlines', () => {
  it('is found in a dip of a curve before another that does not come so near', () => {
    // y = 5 + 7500·(0.07·u² − u³/3), u = t − 0.8: least 5 at t = 0.8, and 6 at t = 1, where the curve ends; at eighths of
    // t it is 6.625 at 6/8, 6.898 at 7/8. So the dip is lower than the end, but its nearest eighth is not.
    const [k, t] = [7500, 0.8];
    const powers = [5 + k * (0.07 * t ** 2 + t ** 3 / 3), k * (-0.14 * t - t ** 2), k * (0.07 + t), -k / 3] as const;
    const dip = closedFarAbove(risingAs(4000, powers));
    for (const way of [dip, reversed(dip)]) {
      expect(gapBetween(way, below)).toBeCloseTo(5, 3);
      expect(gapBetween(below, way)).toBeCloseTo(5, 3);
    }
  });
});
