import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { box } from '../../src/geometry/box.ts';
import { type Path, straightSides } from '../../src/geometry/path.ts';
import { rectangle } from '../../src/shapes/rectangle.ts';
import { SHAPE_KINDS, SHAPES } from '../../src/shapes/shapes.ts';

const corners = (path: Path) => straightSides(path).map((side) => side.from);
const lengths = (path: Path) => straightSides(path).map(({ from, to }) => Math.hypot(to.x - from.x, to.y - from.y));

describe('rectangle', () => {
  it('runs clockwise as the eye sees it, from the top left: top, right, bottom, left', () => {
    const path = rectangle.outline(box(10, 20, 30, 40));
    expect(path.closed).toBe(true);
    expect(corners(path)).toEqual([
      { x: 10, y: 20 },
      { x: 40, y: 20 },
      { x: 40, y: 60 },
      { x: 10, y: 60 },
    ]);
    expect(straightSides(path).at(-1)!.to).toEqual(path.start);
  });

  it('moves every side by the distance of its parallel, corners sharp', () => {
    const numbers = { min: 1, max: 500, noNaN: true };
    fc.assert(
      fc.property(
        fc.double(numbers),
        fc.double(numbers),
        fc.double({ min: -0.49, max: 2, noNaN: true }),
        (width, height, share) => {
          const by = share * Math.min(width, height);
          const [a, b, c, d] = lengths(rectangle.parallel(box(7, 9, width, height), by)!);
          expect(a).toBeCloseTo(width + 2 * by, 8);
          expect(b).toBeCloseTo(height + 2 * by, 8);
          expect(c).toBeCloseTo(width + 2 * by, 8);
          expect(d).toBeCloseTo(height + 2 * by, 8);
          expect(rectangle.parallel(box(7, 9, width, height), by)!.start.x).toBeCloseTo(7 - by, 8);
        },
      ),
    );
  });

  it('has no parallel where nothing is left of it', () => {
    expect(rectangle.parallel(box(0, 0, 10, 20), -5)).toBeUndefined();
    expect(rectangle.parallel(box(0, 0, 20, 10), -6)).toBeUndefined();
    expect(rectangle.parallel(box(0, 0, 10, 20), -4.9)).toBeDefined();
  });
});

describe('the table of shapes', () => {
  it('knows it by the word that jobs use', () => {
    expect(SHAPE_KINDS).toContain('rectangle');
    expect(SHAPES.rectangle).toBe(rectangle);
  });
});
