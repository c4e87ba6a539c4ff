import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { itemBox } from '../../src/drawing/bounds.ts';
import type { Item, PathItem, Pen } from '../../src/drawing/model.ts';
import { coverBoxes, touches } from '../../src/drawing/touches.ts';
import { type Box, bottom, box, right } from '../../src/geometry/box.ts';
import { directionAt, piecesOf, pointAt } from '../../src/geometry/curves.ts';
import { type Path, polygon } from '../../src/geometry/path.ts';
import { FONTS } from '../fonts/loaded.ts';

const PENS: Record<string, Pen> = {
  butt: { width: 0.4, colour: 0, dash: [], cap: 'butt' },
  dashed: { width: 0.4, colour: 0, dash: [1, 50], cap: 'butt' },
  round: { width: 4, colour: 0, dash: [], cap: 'round' },
};
const AREA = box(0, 0, 100, 60);

const line = (x0: number, y0: number, x1: number, y1: number, pen = 'butt'): Item => ({
  kind: 'line',
  pen,
  from: { x: x0, y: y0 },
  to: { x: x1, y: y1 },
});

const circle = (x: number, y: number, radius: number): Path => ({
  start: { x: x + radius, y },
  segments: [
    { kind: 'arc', to: { x: x - radius, y }, centre: { x, y }, clockwise: true },
    { kind: 'arc', to: { x: x + radius, y }, centre: { x, y }, clockwise: true },
  ],
  closed: true,
});

describe('straight lines', () => {
  it.each([
    ['inside', line(10, 10, 20, 10), true],
    ['right through', line(-50, 30, 150, 30), true],
    ['outside', line(110, 0, 110, 60), false],
    ['along the edge, half of its width inside', line(100, 0, 100, 60), true],
    ['along the edge, its width just outside', line(100.2, 0, 100.2, 60), false],
    ['ending at the edge', line(100, 30, 150, 30), false],
    ['past a corner, although its box lies over it', line(90, 80, 130, 50), false],
    ['cutting a corner off', line(90, 65, 110, 50), true],
    ['round end reaching in', line(101.5, 30, 150, 30, 'round'), true],
    ['round end stopping short', line(102, 30, 150, 30, 'round'), false],
    ['with a gap between dashes inside', line(-10, 30, 150, 30, 'dashed'), true],
  ])('%s', (_, item, expected) => {
    expect(touches(item, AREA, PENS, FONTS)).toBe(expected);
  });
});

describe('curves and fills', () => {
  const ring = (radius: number, fill?: number): Item => ({
    kind: 'path',
    ...(fill === undefined ? { pen: 'butt' } : { fill }),
    paths: [circle(50, 30, radius)],
  });

  it('a circle around the area does not touch it, though its box holds it', () => {
    expect(touches(ring(59), AREA, PENS, FONTS)).toBe(false);
    expect(touches(ring(58), AREA, PENS, FONTS)).toBe(true);
    expect(touches(ring(20), AREA, PENS, FONTS)).toBe(true);
  });

  it('a filled circle around it does', () => {
    expect(touches(ring(59, 0.5), AREA, PENS, FONTS)).toBe(true);
  });

  it('but not where the area lies in its hole', () => {
    const frame: Item = { kind: 'path', fill: 0, paths: [circle(50, 30, 90), circle(50, 30, 60)] };
    expect(touches(frame, AREA, PENS, FONTS)).toBe(false);
    expect(touches(frame, box(0, 80, 100, 10), PENS, FONTS)).toBe(true);
  });

  it('a cubic is followed, not boxed', () => {
    const bow: PathItem = {
      kind: 'path',
      pen: 'butt',
      paths: [
        {
          start: { x: 20, y: -10 },
          segments: [{ kind: 'cubic', c1: { x: 200, y: -10 }, c2: { x: 200, y: 70 }, to: { x: 20, y: 70 } }],
          closed: false,
        },
      ],
    };
    expect(touches(bow, AREA, PENS, FONTS)).toBe(false);
    expect(touches(bow, box(0, 0, 150, 60), PENS, FONTS)).toBe(true);
  });

  it('texts fill their boxes', () => {
    const text: Item = {
      kind: 'text',
      text: 'TOP',
      at: { x: 99, y: 30 },
      anchor: 'start',
      size: 6,
      weight: 'bold',
      turn: 0,
      colour: 0,
    };
    expect(touches(text, AREA, PENS, FONTS)).toBe(true);
    expect(touches({ ...text, at: { x: 100.5, y: 30 } }, AREA, PENS, FONTS)).toBe(false);
  });
});

/** Points on the stroke, across its whole width. */
function strokePoints(path: Path, width: number): readonly { x: number; y: number }[] {
  return piecesOf(path).flatMap((piece) =>
    Array.from({ length: 401 }, (_, i) => {
      const p = pointAt(piece, i / 400);
      const way = directionAt(piece, Math.min(0.999, Math.max(0.001, i / 400)));
      if (way === undefined) return [p];
      return [-0.49, -0.25, 0, 0.25, 0.49].map((k) => ({ x: p.x - k * width * way.y, y: p.y + k * width * way.x }));
    }).flat(),
  );
}

const within = (p: { x: number; y: number }, b: Box, gap: number) =>
  p.x > b.x + gap && p.x < right(b) - gap && p.y > b.y + gap && p.y < bottom(b) - gap;

const coordinate = fc.double({ min: -80, max: 180, noNaN: true });
const anyPoint = fc.record({ x: coordinate, y: coordinate });
const anyPath: fc.Arbitrary<Path> = fc.oneof(
  fc.tuple(anyPoint, anyPoint).map(([start, to]): Path => ({ start, segments: [{ kind: 'line', to }], closed: false })),
  fc
    .tuple(anyPoint, anyPoint, anyPoint, anyPoint)
    .map(([start, c1, c2, to]): Path => ({ start, segments: [{ kind: 'cubic', c1, c2, to }], closed: false })),
  fc.tuple(anyPoint, fc.double({ min: 1, max: 90, noNaN: true })).map(([{ x, y }, r]) => circle(x, y, r)),
);

/** Comes down upright and turns level within a millionth of a millimetre of its end: its side reaches out before that. */
const hook: Path = {
  start: { x: -0.1579968673706078, y: 0 },
  segments: [{ kind: 'cubic', c1: { x: 0, y: 0.20357127579484768 }, c2: { x: -1e-12, y: 0 }, to: { x: 0, y: 0 } }],
  closed: false,
};

describe('any path', () => {
  it('touches where one of its points lies inside, and nowhere where none comes near', () => {
    fc.assert(
      fc.property(anyPath, (path) => {
        const item: Item = { kind: 'path', pen: 'butt', paths: [path] };
        const points = strokePoints(path, PENS.butt!.width);
        const got = touches(item, AREA, PENS, FONTS);
        if (points.some((p) => within(p, AREA, 1e-6))) expect(got).toBe(true);
        if (!points.some((p) => within(p, AREA, -1.5))) expect(got).toBe(false);
      }),
      { numRuns: 400, examples: [[hook]] },
    );
  });

  it('lies within the boxes that cover it, and they within its own', () => {
    fc.assert(
      fc.property(anyPath, (path) => {
        const item: Item = { kind: 'path', pen: 'butt', paths: [path] };
        const boxes = coverBoxes(item, PENS, 4, FONTS);
        const points = strokePoints(path, PENS.butt!.width);
        expect(points.every((p) => boxes.some((b) => within(p, b, -1e-6)))).toBe(true);
        const whole = itemBox(item, PENS, FONTS)!;
        for (const b of boxes) {
          expect(b.x).toBeGreaterThan(whole.x - 0.21);
          expect(right(b)).toBeLessThan(right(whole) + 0.21);
          expect(Math.min(b.width, b.height)).toBeLessThanOrEqual(4.4 + 1e-9);
        }
      }),
      { numRuns: 100 },
    );
  });

  it('a level or an upright line is covered by itself', () => {
    expect(coverBoxes(line(0, 5, 500, 5), PENS, 4, FONTS)).toEqual([box(0, 4.8, 500, 0.4)]);
    expect(
      coverBoxes(
        {
          kind: 'path',
          pen: 'butt',
          paths: [
            polygon([
              { x: 0, y: 0 },
              { x: 300, y: 0 },
              { x: 300, y: 200 },
            ]),
          ],
        },
        PENS,
        4,
        FONTS,
      ).length,
    ).toBeGreaterThan(50);
  });
});
