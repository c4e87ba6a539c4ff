import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bottom, box, right } from '../../src/geometry/box.ts';
import { sheetOf } from '../../src/paper/area.ts';
import { placesFrom } from '../../src/text/places.ts';
import { Room } from '../../src/text/room.ts';
import { even } from './laid.ts';

const margins = fc.record({
  top: fc.integer({ min: 0, max: 20 }),
  right: fc.integer({ min: 0, max: 20 }),
  bottom: fc.integer({ min: 0, max: 20 }),
  left: fc.integer({ min: 0, max: 20 }),
});
const scale = fc.double({ min: 0.9, max: 1.1, noNaN: true });

describe('where a printer can draw', () => {
  it('is the largest area that keeps every margin both as it is sent and as it comes out', () => {
    fc.assert(
      fc.property(margins, margins, scale, scale, fc.boolean(), (wished, hard, x, y, sideways) => {
        const paper = { width: 210, height: 297 };
        const sheet = sheetOf(
          paper,
          { margin: wished, join: 'lap', printer: { id: 'p', x, y, calibrated: true, margin: hard } },
          sideways,
        );
        expect(sheet.paper).toEqual(sideways ? { width: 297, height: 210 } : paper);
        // On its side a page is turned either way: each of two opposite margins may be the wider one.
        const h = sideways
          ? {
              top: Math.max(hard.left, hard.right),
              bottom: Math.max(hard.left, hard.right),
              left: Math.max(hard.top, hard.bottom),
              right: Math.max(hard.top, hard.bottom),
            }
          : hard;
        const [sx, sy] = sideways ? [y, x] : [x, y];
        expect(sheet.scale).toEqual({ x: sx, y: sy });
        const { area } = sheet;
        for (const [low, high, k, before, behind, size] of [
          [area.x, right(area), sx, Math.max(wished.left, h.left), Math.max(wished.right, h.right), sheet.paper.width],
          [
            area.y,
            bottom(area),
            sy,
            Math.max(wished.top, h.top),
            Math.max(wished.bottom, h.bottom),
            sheet.paper.height,
          ],
        ] as const) {
          // Content at c is sent as c/k and comes out at c.
          expect(Math.min(low, low / k)).toBeCloseTo(before, 9);
          expect(Math.max(high, high / k)).toBeCloseTo(size - behind, 9);
        }
      }),
    );
  });

  it('butted sheets leave room for the dots that they are cut along', () => {
    const lapped = sheetOf({ width: 210, height: 297 }, { margin: even(6), join: 'lap' }, false);
    const butted = sheetOf({ width: 210, height: 297 }, { margin: even(6), join: 'butt' }, false);
    expect(butted.area.x).toBeGreaterThan(lapped.area.x + 0.2);
    expect(right(butted.area)).toBeLessThan(right(lapped.area) - 0.2);
  });
});

describe('places for words', () => {
  const within = box(0, 0, 60, 30);
  const size = { width: 20, height: 10 };
  const room = () => new Room([box(0, 15, 25, 15)], [box(30, 0, 0.3, 30)]);

  it('the first clear one, row after row from the corner that is named', () => {
    expect(room().best(size, placesFrom('bottom left', size, within, 5))).toEqual(box(35, 20, 20, 10));
    expect(room().best(size, placesFrom('top left', size, within, 5))).toEqual(box(0, 0, 20, 10));
    expect(room().best(size, placesFrom('top right', size, within, 5))).toEqual(box(40, 0, 20, 10));
  });

  it('over a line rather than over words', () => {
    const full = new Room([box(0, 0, 25, 30), box(50, 0, 10, 30)], [box(30, 0, 0.3, 30), box(0, 14, 60, 0.3)]);
    const found = full.best(size, placesFrom('top left', size, within, 1))!;
    expect(full.cost(found.x, found.y, found.width, found.height)).toBe(1);
    expect(found.x).toBeGreaterThan(25);
    // Nowhere there lies it on less than one.
    const spots = placesFrom('top left', size, within, 1);
    expect([0, 1].map((most) => full.best(size, spots, most))).toEqual([undefined, found]);
  });

  it('nowhere, where words are everywhere, and not over what was placed before', () => {
    expect(new Room([within], []).best(size, placesFrom('top left', size, within, 1))).toBeUndefined();
    const own = new Room([], []);
    own.take(box(0, 0, 60, 18));
    expect(own.best(size, placesFrom('top left', size, within, 1))).toEqual(box(0, 20, 20, 10));
    expect(own.cost(5, 5, 2, 2)).toBe(Number.POSITIVE_INFINITY);
  });

  it('none that is larger than its area', () => {
    const tried: number[] = [];
    const note = (x: number, y: number): boolean => tried.push(x, y) < 0;
    expect(placesFrom('top left', { width: 61, height: 10 }, within, 1)(note)).toBe(false);
    expect(tried).toEqual([]);
    placesFrom('top left', { width: 59, height: 29 }, within, 1)(note);
    expect(tried).toEqual([0, 0, 1, 0, 0, 1, 1, 1]);
  });
});
