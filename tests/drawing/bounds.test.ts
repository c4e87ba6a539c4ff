import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawnBox, itemBox, strokedBox } from '../../src/drawing/bounds.ts';
import type { Drawing, Item, Pen } from '../../src/drawing/model.ts';
import { textBox } from '../../src/fonts/measure.ts';
import { type Box, bottom, right } from '../../src/geometry/box.ts';
import { directionAt, monotone, piecesOf, pointAt } from '../../src/geometry/curves.ts';
import { pathBox } from '../../src/geometry/extent.ts';
import { type Path, polygon, type Segment } from '../../src/geometry/path.ts';
import { FONTS } from '../fonts/loaded.ts';

const PENS: Record<string, Pen> = {
  butt: { width: 2, colour: 0, dash: [], cap: 'butt' },
  round: { width: 2, colour: 0, dash: [], cap: 'round' },
};

function near(got: Box | undefined, [x, y, x1, y1]: readonly [number, number, number, number]): void {
  if (got === undefined) throw new Error('no box');
  expect(got.x).toBeCloseTo(x, 9);
  expect(got.y).toBeCloseTo(y, 9);
  expect(right(got)).toBeCloseTo(x1, 9);
  expect(bottom(got)).toBeCloseTo(y1, 9);
}

const line = (pen: string, x0: number, y0: number, x1: number, y1: number): Item => ({
  kind: 'line',
  pen,
  from: { x: x0, y: y0 },
  to: { x: x1, y: y1 },
});

const arc = (to: readonly [number, number], centre: readonly [number, number], clockwise: boolean): Segment => ({
  kind: 'arc',
  to: { x: to[0], y: to[1] },
  centre: { x: centre[0], y: centre[1] },
  clockwise,
});

const open = (start: readonly [number, number], ...segments: Segment[]): Path => ({
  start: { x: start[0], y: start[1] },
  segments,
  closed: false,
});

describe('straight lines', () => {
  it('reach out by half the pen to the sides, and past their ends only with a round pen', () => {
    near(itemBox(line('butt', 10, 5, 30, 5), PENS, FONTS), [10, 4, 30, 6]);
    near(itemBox(line('round', 10, 5, 30, 5), PENS, FONTS), [9, 4, 31, 6]);
  });

  it('have corners of their own where they run askew: 3-4-5', () => {
    // Half the pen is 1; its corners lie 0.8 in x and 0.6 in y off the ends.
    near(itemBox(line('butt', 0, 0, 30, 40), PENS, FONTS), [-0.8, -0.6, 30.8, 40.6]);
  });

  it('a rectangle has mitred corners; a sharp corner reaches further, a hair-sharp one is cut off', () => {
    near(
      strokedBox(
        polygon([
          { x: 0, y: 0 },
          { x: 10, y: 0 },
          { x: 10, y: 8 },
          { x: 0, y: 8 },
        ]),
        PENS.butt!,
      ),
      [-1, -1, 11, 9],
    );
    // A tip of 2·atan(1/4) between its sides: the mitre reaches √17 half widths out.
    const tip = open([-40, -10], { kind: 'line', to: { x: 0, y: 0 } }, { kind: 'line', to: { x: -40, y: 10 } });
    expect(right(strokedBox(tip, PENS.butt!))).toBeCloseTo(Math.sqrt(17), 9);
    const needle = open([-40, -1], { kind: 'line', to: { x: 0, y: 0 } }, { kind: 'line', to: { x: -40, y: 1 } });
    expect(right(strokedBox(needle, PENS.butt!))).toBeLessThan(1);
  });
});

describe('curves', () => {
  it('a quarter of a circle stays within its ends, a half bulges by its radius', () => {
    near(pathBox(open([10, 0], arc([0, 10], [0, 0], true))), [0, 0, 10, 10]);
    near(pathBox(open([10, 0], arc([-10, 0], [0, 0], true))), [-10, 0, 10, 10]);
    near(pathBox(open([10, 0], arc([-10, 0], [0, 0], false))), [-10, -10, 10, 0]);
  });

  it('an arc that ends where it starts is a whole circle', () => {
    near(strokedBox({ ...open([10, 0], arc([10, 0], [0, 0], true)), closed: true }, PENS.butt!), [-11, -11, 11, 11]);
  });

  it('an arc of three quarters goes the long way round', () => {
    near(pathBox(open([0, -5], arc([-5, 0], [0, 0], true))), [-5, -5, 5, 5]);
  });

  it('a cubic turns where its derivative is nought: 3/4 of the height of its handles', () => {
    const path = open([0, 0], { kind: 'cubic', c1: { x: 0, y: 40 }, c2: { x: 60, y: 40 }, to: { x: 60, y: 0 } });
    near(pathBox(path), [0, 0, 60, 30]);
    near(strokedBox(path, PENS.butt!), [-1, 0, 61, 31]);
  });

  it('any box holds every point of its curve and is touched on all four sides', () => {
    const coordinate = fc.double({ min: -100, max: 100, noNaN: true });
    const p = fc.record({ x: coordinate, y: coordinate });
    fc.assert(
      fc.property(p, p, p, p, (start, c1, c2, to) => {
        const path: Path = { start, segments: [{ kind: 'cubic', c1, c2, to }], closed: false };
        const b = pathBox(path);
        const [piece] = piecesOf(path);
        const points = Array.from({ length: 2001 }, (_, i) => pointAt(piece!, i / 2000));
        const [xs, ys] = [points.map((q) => q.x), points.map((q) => q.y)];
        expect(Math.min(...xs)).toBeGreaterThanOrEqual(b.x - 1e-9);
        expect(Math.max(...xs)).toBeLessThanOrEqual(right(b) + 1e-9);
        expect(Math.min(...ys)).toBeGreaterThanOrEqual(b.y - 1e-9);
        expect(Math.max(...ys)).toBeLessThanOrEqual(bottom(b) + 1e-9);
        expect(Math.min(...xs) - b.x + right(b) - Math.max(...xs)).toBeLessThan(0.002);
        expect(Math.min(...ys) - b.y + bottom(b) - Math.max(...ys)).toBeLessThan(0.002);
      }),
      { numRuns: 200 },
    );
  });

  it('parts between turning points run one way, and join up', () => {
    const piece = {
      from: { x: 0, y: 0 },
      segment: { kind: 'cubic', c1: { x: 90, y: 50 }, c2: { x: -40, y: 60 }, to: { x: 60, y: -20 } },
    } as const;
    const parts = monotone(piece);
    expect(parts.length).toBeGreaterThan(2);
    let end = piece.from as { x: number; y: number };
    for (const part of parts) {
      expect(part.from).toEqual(end);
      end = part.segment.to;
      const [a, b] = [directionAt(part, 0.01)!, directionAt(part, 0.99)!];
      expect(a.x * b.x).toBeGreaterThan(-1e-9);
      expect(a.y * b.y).toBeGreaterThan(-1e-9);
    }
    expect(end).toEqual(piece.segment.to);
  });
});

describe('other items', () => {
  it('a text has the box that its font gives; an empty one has none', () => {
    const text: Item = {
      kind: 'text',
      text: 'TOP',
      at: { x: 5, y: 9 },
      anchor: 'middle',
      size: 6,
      weight: 'bold',
      turn: 90,
      colour: 0,
    };
    expect(itemBox(text, PENS, FONTS)).toEqual(textBox(text, FONTS));
    expect(itemBox({ ...text, text: '  ' }, PENS, FONTS)).toBeUndefined();
  });

  it('a filled path without a pen has no width to add; one with neither draws nothing', () => {
    const paths = [
      polygon([
        { x: 0, y: 0 },
        { x: 4, y: 0 },
        { x: 0, y: 3 },
      ]),
    ];
    near(itemBox({ kind: 'path', fill: 0, paths }, PENS, FONTS), [0, 0, 4, 3]);
    expect(itemBox({ kind: 'path', paths }, PENS, FONTS)).toBeUndefined();
  });

  it('a pen that does not exist is a mistake of the program', () => {
    expect(() => itemBox(line('quill', 0, 0, 1, 1), PENS, FONTS)).toThrow(/no pen is named "quill"/);
  });

  it('groups that are not shown do not count', () => {
    const group = (shown: boolean, item: Item) => ({ name: `g${shown}`, label: '', shown, items: [item] });
    const drawing: Drawing = {
      title: '',
      width: 100,
      height: 100,
      view: 'face',
      pens: PENS,
      groups: [group(true, line('butt', 10, 10, 20, 10)), group(false, line('butt', 50, 50, 90, 50))],
    };
    near(drawnBox(drawing, FONTS), [10, 9, 20, 11]);
    expect(drawnBox({ ...drawing, groups: [] }, FONTS)).toBeUndefined();
  });
});
