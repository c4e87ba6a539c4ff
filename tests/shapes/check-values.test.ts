import { describe, expect, it } from 'vitest';
import { flattened } from '../../src/geometry/flatten.ts';
import { distanceTo, outlineOf } from '../../src/geometry/near.ts';
import { polygon } from '../../src/geometry/path.ts';
import { arch, archRadius } from '../../src/shapes/arch.ts';
import { bulge, fromEllipse, offEllipse, pinsAndLoop } from '../../src/shapes/by-hand.ts';
import { oval } from '../../src/shapes/oval.ts';
import { mmFromInches } from '../../src/units/units.ts';

describe('laying out curves by hand: published values', () => {
  it('oval 10 × 8: pins 3 from the middle, loop 16 (Fine Woodworking tip, A precise method for drawing an ellipse; J. Rose, Mechanical Drawing Self-Taught)', () => {
    expect(pinsAndLoop(10, 8)).toEqual({ pin: 3, loop: 16, along: 'x' });
    expect(pinsAndLoop(8, 10)).toEqual({ pin: 3, loop: 16, along: 'y' });
  });

  it('oval 16 × 10: pins 6.2450, not the 7.5 in print (Fine Woodworking tip, recomputed)', () => {
    expect(pinsAndLoop(16, 10).pin).toBeCloseTo(6.245, 4);
  });

  it('a circle has both pins in its middle (Fine Woodworking tip)', () => {
    expect(pinsAndLoop(12, 12)).toEqual({ pin: 0, loop: 12, along: 'x' });
  });

  it('an arch of span 96 and rise 12 has R 102, its arc 99.95129, its bulge 0.25 (Davis, arch radius tip; DXF reference, bulge)', () => {
    const radius = archRadius(96, 12);
    expect(radius).toBe(102);
    const angle = 2 * Math.asin(48 / 102);
    expect(radius * angle).toBeCloseTo(99.95129, 5);
    expect(bulge(angle)).toBeCloseTo(0.25, 12);
    const [first] = arch.outline({ x: 0, y: 0, width: 96, height: 60 }, { rise: 12 }).segments;
    expect(first).toMatchObject({ kind: 'arc', clockwise: true, centre: { x: 48, y: 102 } });
  });
});

describe('the parallel of an oval is not an ellipse (geometry, worked out from the ellipse)', () => {
  const farthest = (width: number, height: number, by: number): number => {
    const frame = { x: 0, y: 0, width, height };
    const parallel = flattened(oval.parallel(frame, by)!, 1e-5);
    const shorter = { x: -by, y: -by, width: width + 2 * by, height: height + 2 * by };
    const ellipse = outlineOf(oval.outline(shorter));
    return Math.max(...parallel.map((p) => distanceTo(ellipse, p)));
  };

  it('8 × 10 in cut 1.5 mm inwards differs from the ellipse with shorter axes by up to 0.009 mm', () => {
    expect(farthest(mmFromInches(8), mmFromInches(10), -1.5)).toBeCloseTo(0.009, 3);
  });

  it('200 × 100 mm cut 3 mm inwards differs by up to 0.18 mm', () => {
    expect(farthest(200, 100, -3)).toBeCloseTo(0.18, 2);
  });

  it('lies as far from the ellipse as it should, everywhere', () => {
    for (const by of [-12, -3, 4, 30]) {
      const ellipse = (t: number) => ({ x: 100 * Math.cos(t), y: 50 * Math.sin(t) });
      for (const p of flattened(oval.parallel({ x: -100, y: -50, width: 200, height: 100 }, by)!, 1e-3)) {
        const guess = Math.atan2(p.y / 50, p.x / 100);
        let best = Number.POSITIVE_INFINITY;
        for (let half = 0.5; half > 1e-9; half *= 0.7) {
          for (const t of [guess - half, guess + half]) {
            const q = ellipse(t);
            best = Math.min(best, Math.hypot(p.x - q.x, p.y - q.y));
          }
        }
        for (let t = guess - 0.4; t < guess + 0.4; t += 0.0005) {
          const q = ellipse(t);
          best = Math.min(best, Math.hypot(p.x - q.x, p.y - q.y));
        }
        expect(Math.abs(best - Math.abs(by))).toBeLessThan(0.0008);
      }
    }
  });

  it('what is said of pins and loop is never less than it is: the nearest of many points of the ellipse', () => {
    for (const [a, b] of [
      [150, 40],
      [40, 150],
      [60, 60],
    ] as const)
      for (const [x, y] of [
        [150.3, 0.1],
        [20, 41],
        [0, 38],
        [61, 0],
        [120, 30],
        [0.2, 150.4],
      ] as const) {
        let nearest = Infinity;
        for (let t = 0; t <= Math.PI / 2; t += 1e-5)
          nearest = Math.min(nearest, Math.hypot(a * Math.cos(t) - x, b * Math.sin(t) - y));
        expect(fromEllipse(x, y, a, b)).toBeCloseTo(nearest, 5);
      }
    // To first order a square's corner would lie 3.54 from the circle in it; it lies 4.14.
    const square = polygon([
      { x: 0, y: 0 },
      { x: 20, y: 0 },
      { x: 20, y: 20 },
      { x: 0, y: 20 },
    ]);
    const off = offEllipse(square, { x: 0, y: 0, width: 20, height: 20 });
    expect(off).toBeGreaterThanOrEqual(10 * Math.SQRT2 - 10);
    expect(off).toBeLessThan(10 * Math.SQRT2 - 10 + 0.002);
  });
});
