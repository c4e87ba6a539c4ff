import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pathBox } from '../../src/geometry/extent.ts';
import { area, ellipsePerimeter, pathLength, signedArea } from '../../src/geometry/measure.ts';
import { curvedParts, reversed, straightSides } from '../../src/geometry/path.ts';
import { SHAPE_KINDS, shapeOf } from '../../src/shapes/shapes.ts';
import { randomShape } from './random-shapes.ts';

const frame = { x: 20, y: 30, width: 200, height: 300 };
const relative = (actual: number, expected: number, slack = 1e-9) =>
  expect(Math.abs(actual - expected) / expected, `${actual} against ${expected}`).toBeLessThan(slack);

describe('areas and lengths against closed forms', () => {
  it('rounded, notched and clipped corners', () => {
    const rounded = shapeOf('rounded').outline(frame, { radius: 25 });
    relative(area(rounded), 60000 - (4 - Math.PI) * 625);
    relative(pathLength(rounded), 1000 - 200 + 50 * Math.PI);
    const notched = shapeOf('notched').outline(frame, { notch: 10, steps: 2 });
    relative(area(notched), 60000 - 4 * 3 * 100);
    relative(pathLength(notched), 1000);
    const clipped = shapeOf('clipped').outline(frame, { clip: 30 });
    relative(area(clipped), 60000 - 4 * 450);
    relative(pathLength(clipped), 1000 - 240 + 4 * 30 * Math.SQRT2);
  });

  it('circle, round arch, flat arch', () => {
    const circle = shapeOf('circle').outline({ x: 0, y: 0, width: 80, height: 80 });
    relative(area(circle), Math.PI * 1600);
    relative(pathLength(circle), Math.PI * 80);
    const round = shapeOf('round-arch').outline(frame);
    relative(area(round), 200 * 200 + (Math.PI * 10000) / 2);
    relative(pathLength(round), 200 + 400 + 100 * Math.PI);
    const flat = shapeOf('arch').outline({ x: 0, y: 0, width: 96, height: 72 }, { rise: 12 });
    relative(pathLength(flat), 96 + 120 + 99.95129, 1e-7);
    const angle = 2 * Math.asin(48 / 102);
    relative(area(flat), 96 * 60 + (102 * 102 * (angle - Math.sin(angle))) / 2);
  });

  it('an oval: πab, and its circumference by the arithmetic-geometric mean', () => {
    const oval = shapeOf('oval').outline(frame);
    // Within the tolerance of the curves that stand for it: 0.0002 mm along 790 mm.
    expect(Math.abs(area(oval) - Math.PI * 100 * 150)).toBeLessThan(0.0002 * 800);
    expect(Math.abs(pathLength(oval) - ellipsePerimeter(100, 150))).toBeLessThan(0.002);
    // Ramanujan's second approximation, good to 1e-9 at this flatness.
    const h = (50 / 250) ** 2;
    relative(ellipsePerimeter(100, 150), Math.PI * 250 * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h))), 1e-8);
    relative(ellipsePerimeter(7, 7), 14 * Math.PI, 1e-14);
    // A parallel of a convex curve: length + 2π·d, area + length·d + π·d².
    const out = shapeOf('oval').parallel(frame, 12)!;
    expect(Math.abs(pathLength(out) - ellipsePerimeter(100, 150) - 24 * Math.PI)).toBeLessThan(0.002);
    const grown = Math.PI * 15000 + 12 * ellipsePerimeter(100, 150) + Math.PI * 144;
    expect(Math.abs(area(out) - grown)).toBeLessThan(0.2);
  });

  it('regular polygons: n/4 · s² · cot(π/n)', () => {
    for (let sides = 3; sides <= 12; sides++) {
      const shape = shapeOf('polygon');
      const fields = { sides, stands: 'corner' };
      const height = 100 / shape.aspect!(fields);
      const path = shape.outline({ x: 0, y: 0, width: 100, height }, fields);
      const side = pathLength(path) / sides;
      relative(area(path), ((sides / 4) * side * side) / Math.tan(Math.PI / sides));
      for (const { from, to } of straightSides(path)) relative(Math.hypot(to.x - from.x, to.y - from.y), side);
    }
  });
});

describe('every shape of the table', () => {
  it('fills its frame, runs clockwise, is closed and knows its straight and curved parts', () => {
    fc.assert(
      fc.property(randomShape, ({ kind, frame: box, fields }) => {
        const shape = shapeOf(kind);
        const height = shape.aspect === undefined ? box.height : box.width / shape.aspect(fields);
        const fit = { ...box, height };
        const path = shape.outline(fit, fields);
        expect(path.segments.at(-1)!.to).toEqual(path.start);
        expect(signedArea(path)).toBeGreaterThan(0);
        const own = pathBox(path);
        for (const key of ['x', 'y', 'width', 'height'] as const) expect(own[key]).toBeCloseTo(fit[key], 3);
        const straight = straightSides(path).reduce(
          (sum, { from, to }) => sum + Math.hypot(to.x - from.x, to.y - from.y),
          0,
        );
        const curved = curvedParts(path)
          .filter((part) => part.segments.some((segment) => segment.kind !== 'line'))
          .reduce((sum, part) => sum + pathLength(part), 0);
        relative(straight + curved, pathLength(path));
        relative(area(reversed(path)), area(path));
        expect(signedArea(reversed(path))).toBeLessThan(0);
      }),
      { numRuns: 200 },
    );
  });

  it('says in words what it is, and why fields do not go with a size', () => {
    for (const kind of SHAPE_KINDS) expect(shapeOf(kind).about).toMatch(/^[a-z]/);
    const size = { width: 100, height: 60 };
    expect(shapeOf('rounded').fault!(size, { radius: 31 })?.message).toContain('radius');
    expect(shapeOf('rounded').fault!(size, { radius: 30 })).toBeUndefined();
    expect(shapeOf('clipped').fault!(size, { clip: 30 })?.message).toContain('cut off');
    expect(shapeOf('notched').fault!(size, { notch: 10, steps: 3 })?.message).toContain('steps');
    expect(shapeOf('round-arch').fault!({ width: 100, height: 49 }, {})?.message).toContain('lower');
    expect(shapeOf('arch').fault!(size, { rise: 51 })?.message).toContain('rises');
    expect(shapeOf('arch').fault!({ width: 200, height: 60 }, { rise: 61 })?.message).toContain('height');
  });
});

it('a regular polygon begins at its highest corner, of two alike at the left one, and goes on as a clock does', () => {
  const begins = (sides: number, stands: string, width: number, height: number) => {
    const { start, segments } = shapeOf('polygon').outline({ x: 0, y: 0, width, height }, { sides, stands });
    return [start, segments[0]!.to].map(({ x, y }) => [Math.round(1e6 * x) / 1e6, Math.abs(Math.round(1e6 * y) / 1e6)]);
  };
  const high = 50 * Math.sqrt(3);
  // On a side a hexagon has its upper corners at a quarter and three quarters of its width.
  expect(begins(6, 'side', 100, high)).toEqual([
    [25, 0],
    [75, 0],
  ]);
  expect(begins(6, 'corner', high, 100)).toEqual([
    [Math.round(1e6 * (high / 2)) / 1e6, 0],
    [Math.round(1e6 * high) / 1e6, 25],
  ]);
});
