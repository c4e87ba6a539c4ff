import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { withTabs } from '../../src/cutfiles/toolpaths/tabs.ts';
import { pathLength } from '../../src/geometry/measure.ts';
import { distance } from '../../src/geometry/point.ts';
import { shapeOf } from '../../src/shapes/shapes.ts';
import { randomShape } from '../shapes/random-shapes.ts';

describe('tabs', () => {
  it('leave as many gaps as asked, each as wide, and cut all the rest', () => {
    let looked = 0;
    fc.assert(
      fc.property(
        randomShape,
        fc.integer({ min: 1, max: 8 }),
        fc.double({ min: 0.2, max: 2, noNaN: true }),
        (made, count, gap) => {
          const outline = shapeOf(made.kind).outline(made.frame, made.fields);
          const runs = withTabs(outline, count, gap);
          if (runs === undefined) return;
          looked++;
          expect(runs.length).toBe(count);
          const cut = runs.reduce((sum, run) => sum + pathLength(run), 0);
          expect(cut).toBeCloseTo(pathLength(outline) - count * gap, 5);
          for (const run of runs) expect(run.closed).toBe(false);
          // Each ends a gap before the next begins.
          const ends = runs.map((run) => run.segments.at(-1)!.to);
          for (const [i, run] of runs.entries()) {
            const across = distance(ends[(i + runs.length - 1) % runs.length]!, run.start);
            expect(across).toBeLessThan(gap + 1e-6);
            expect(across).toBeGreaterThan(0.8 * gap);
          }
        },
      ),
      { numRuns: 60 },
    );
    expect(looked).toBeGreaterThan(40);
  });

  it('lie evenly along an oval, however its curves are parted', () => {
    const outline = shapeOf('oval').outline({ x: 0, y: 0, width: 300, height: 80 }, {});
    for (const count of [1, 2, 3, 4, 5, 7]) {
      const runs = withTabs(outline, count, 2)!;
      const each = pathLength(outline) / count - 2;
      expect(runs.map((run) => Math.abs(pathLength(run) - each) < 0.01)).toEqual(runs.map(() => true));
    }
  });

  it('stand in the middle of the sides of a rectangle', () => {
    const outline = shapeOf('rectangle').outline({ x: 0, y: 0, width: 100, height: 60 }, {});
    const runs = withTabs(outline, 4, 2)!;
    const starts = runs.map(({ start }) => [start.x, start.y].map((n) => Math.round(n * 1e9) / 1e9));
    expect(starts).toEqual([
      [51, 0],
      [100, 31],
      [49, 60],
      [0, 29],
    ]);
  });

  it('find no room on sides that are shorter than three gaps', () => {
    expect(withTabs(shapeOf('rectangle').outline({ x: 0, y: 0, width: 5, height: 5 }, {}), 4, 2)).toBeUndefined();
  });
});
