import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Item } from '../../src/drawing/model.ts';
import { type Box, bottom, box, right } from '../../src/geometry/box.ts';
import { columnsOf, type Flowed, flow, type Piece } from '../../src/text/flow.ts';
import { CLEAR, LARGE } from '../../src/text/styles.ts';

const WIDTH = 50;

/** A block of a height that says which it is. */
const piece = (id: number, height: number, more: Partial<Piece> = {}): Piece => ({
  above: 0.5,
  bound: 0,
  whole: 0,
  make: (width) => {
    const item: Item = {
      kind: 'path',
      fill: 0,
      id: `${id}`,
      paths: [{ start: { x: 0, y: 0 }, segments: [], closed: true }],
    };
    return { items: [item], width: Math.min(width, WIDTH), height };
  },
  ...more,
});

interface Placed {
  readonly id: number;
  readonly page: number;
  readonly at: { readonly x: number; readonly y: number };
}

const placedIn = ({ pages }: Flowed): readonly Placed[] =>
  pages.flatMap(({ items }, page) =>
    items.flatMap((item) => (item.kind === 'path' ? [{ id: Number(item.id), page, at: item.paths[0]!.start }] : [])),
  );

const columns =
  (first: number, next: number, count: number) =>
  (page: number): readonly Box[] =>
    columnsOf(box(10, page === 0 ? 30 : 10, count * WIDTH + (count - 1) * 5, page === 0 ? first : next), count, 5);

const heights = fc.array(fc.double({ min: 1, max: 70, noNaN: true }), { minLength: 1, maxLength: 30 });

describe('what flows', () => {
  it('is all there, once, in its order, none upon another, each within its column unless no column holds it', () => {
    fc.assert(
      fc.property(heights, fc.integer({ min: 1, max: 3 }), fc.boolean(), (list, count, even) => {
        const of = columns(60, 100, count);
        const made = placedIn(
          flow(
            list.map((height, i) => piece(i, height)),
            { columns: of, even },
          ),
        );
        expect(made.map(({ id }) => id)).toEqual(list.map((_, i) => i));
        made.forEach(({ page, at }, i) => {
          const area = of(page).find(({ x }) => Math.abs(x - at.x) < 1e-9)!;
          expect(at.y).toBeGreaterThanOrEqual(area.y - 1e-9);
          expect(at.y + list[i]!).toBeLessThanOrEqual(bottom(area) + 1e-6);
          const before = made[i - 1];
          if (before?.page === page && before.at.x === at.x) expect(at.y).toBeGreaterThan(before.at.y + list[i - 1]!);
        });
      }),
    );
  });

  it('stands alone in the tallest column where it is taller than any', () => {
    const made = placedIn(flow([piece(0, 10), piece(1, 150), piece(2, 10)], { columns: columns(60, 100, 1) }));
    expect(made.map(({ page }) => page)).toEqual([0, 1, 2]);
  });

  it('never leaves behind what it is bound to', () => {
    fc.assert(
      fc.property(heights, fc.integer({ min: 0, max: 29 }), (list, which) => {
        const index = which % list.length;
        fc.pre(index + 1 < list.length && list[index]! + list[index + 1]! < 80);
        const made = placedIn(
          flow(
            list.map((height, i) => piece(i, height, i === index ? { bound: 1 } : {})),
            { columns: columns(60, 100, 2) },
          ),
        );
        const [a, b] = [made[index]!, made[index + 1]!];
        expect([a.page, a.at.x]).toEqual([b.page, b.at.x]);
      }),
    );
  });

  it('keeps a list whole where that takes no more paper, and parts it where it does', () => {
    const list = (heights: readonly number[]) =>
      heights.map((h, i) => piece(i, h, i === 1 ? { bound: 1, whole: 3 } : {}));
    const options = { columns: columns(60, 60, 2) };
    const kept = placedIn(flow(list([30, 5, 10, 10, 10]), options));
    expect(kept.slice(1).every(({ at }) => at.x === kept[1]!.at.x)).toBe(true);
    const parted = placedIn(flow(list([30, 5, 16, 16, 38]), options));
    expect(parted.every(({ page }) => page === 0)).toBe(true);
    expect(parted[4]!.at.x).not.toBe(parted[1]!.at.x);
  });

  it('begins a column where it must', () => {
    const made = placedIn(flow([piece(0, 5), piece(1, 5, { fresh: true })], { columns: columns(60, 60, 2) }));
    expect(made[1]!.at).toEqual({ x: 65, y: 30 });
  });

  it('is set as generously as goes on the fewest pages', () => {
    const em = (lines: number): Piece => ({
      ...piece(0, 0),
      make: (width, { text }) => ({ items: [], width, height: lines * text.size }),
    });
    const of = columns(60, 60, 1);
    const set = (lines: number, largest = LARGE) => flow([em(lines / 2), em(lines / 2)], { columns: of, largest });
    expect(set(10).density.text).toEqual(LARGE);
    expect(set(10, CLEAR).density.text).toEqual(CLEAR);
    expect(set(60 / 3.2).density.text.size).toBe(3.05);
    expect(set(60 / 3.2).pages).toHaveLength(1);
  });

  it('ends on the last page as high in all columns as it can', () => {
    const list = Array.from({ length: 6 }, (_, i) => piece(i, 5));
    const made = placedIn(flow(list, { columns: columns(60, 60, 2), even: true }));
    expect(made.filter(({ at }) => at.x === 10)).toHaveLength(3);
    const uneven = placedIn(flow(list, { columns: columns(60, 60, 2) }));
    expect(uneven.filter(({ at }) => at.x === 10)).toHaveLength(6);
  });
});

it('columns fill their area', () => {
  const list = columnsOf(box(5, 7, 100, 40), 3, 8);
  expect(list[0]).toEqual(box(5, 7, 28, 40));
  expect(right(list[2]!)).toBeCloseTo(105, 9);
});
