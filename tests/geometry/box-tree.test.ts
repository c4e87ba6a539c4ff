import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Box, box } from '../../src/geometry/box.ts';
import { boxDistance, boxTree, leastFrom, someIn, touched, touching } from '../../src/geometry/box-tree.ts';

const length = fc.double({ min: 0, max: 40, noNaN: true });
const place = fc.double({ min: -100, max: 100, noNaN: true });
const boxes = fc.array(
  fc.tuple(place, place, length, length).map(([x, y, w, h]) => box(x, y, w, h)),
  { maxLength: 60 },
);
const point = fc.record({ x: place, y: place });

describe('boxes in a tree', () => {
  it('are found as they would be one by one', () => {
    let found = 0;
    fc.assert(
      fc.property(boxes, point, length, length, fc.constantFrom(0, 1e-9, 3), (all, { x, y }, w, h, slack) => {
        const asked = box(x, y, w, h);
        const met: number[] = [];
        touched(boxTree(all), all, asked, slack, (i) => met.push(i));
        const each = all.flatMap((one, i) => (touching(one, asked, slack) ? [i] : []));
        expect(met.sort((a, b) => a - b)).toEqual(each);
        found += met.length;
      }),
    );
    expect(found).toBeGreaterThan(100);
  });

  it('tell the least distance as the least of all', () => {
    fc.assert(
      fc.property(boxes, point, fc.constantFrom(undefined, 5), (all, p, atMost) => {
        const away = (i: number): number => boxDistance(all[i]!, p);
        const least = Math.min(atMost ?? Number.POSITIVE_INFINITY, ...all.map((_, i) => away(i)));
        expect(leastFrom(boxTree(all), all, p, away, atMost)).toBe(least);
      }),
    );
  });

  it('stop at the first that answers', () => {
    const all = Array.from({ length: 100 }, (_, i) => box(i, 0, 0.5, 0.5));
    let asked = 0;
    const any = someIn(
      boxTree(all),
      () => true,
      () => {
        asked++;
        return true;
      },
    );
    expect([any, asked]).toEqual([true, 1]);
    expect(
      someIn(
        undefined,
        () => true,
        () => true,
      ),
    ).toBe(false);
  });

  it.each([
    ['in a row', (i: number): Box => box(i, 0, 1, 1)],
    ['in a column', (i: number): Box => box(0, i, 1, 1)],
    ['in a square', (i: number): Box => box(i % 64, Math.floor(i / 64), 1, 1)],
    ['long ones side by side', (i: number): Box => box(i, 0, 0.5, 5000)],
  ])('are few that are looked at, of many %s', (_, make) => {
    const counts = [1024, 4096].map((count) => {
      const all = Array.from({ length: count }, (_each, i) => make(i));
      const tree = boxTree(all);
      let looked = 0;
      const away = (i: number): number => {
        looked++;
        return boxDistance(all[i]!, { x: 31.3, y: 700.7 });
      };
      leastFrom(tree, all, { x: 31.3, y: 700.7 }, away);
      touched(tree, all, box(500, 20, 0.1, 0.1), 0, () => looked++);
      return looked;
    });
    for (const looked of counts) expect(looked).toBeLessThan(60);
  });
});
