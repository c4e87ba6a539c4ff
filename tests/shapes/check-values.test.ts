import { describe, expect, it } from 'vitest';
import { flattened } from '../../src/geometry/flatten.ts';
import { distanceTo, outlineOf } from '../../src/geometry/near.ts';
import { arch, archRadius } from '../../src/shapes/arch.ts';
import { bulge, pinsAndLoop } from '../../src/shapes/by-hand.ts';
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
});
