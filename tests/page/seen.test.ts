import { expect, test } from 'vitest';
import type { Drawing, Item } from '../../src/drawing/model.ts';
import { polygon } from '../../src/geometry/path.ts';
import { point } from '../../src/geometry/point.ts';
import { type Seen, seen, seenTogether } from '../../src/page/engine/seen.ts';
import { randomSource } from '../bench/random.ts';

const square = (x: number, y: number, size: number, fill: string): Item => ({
  kind: 'path',
  fill,
  paths: [polygon([point(x, y), point(x + size, y), point(x + size, y + size), point(x, y + size)])],
});

const drawn = (items: readonly Item[]): Drawing => ({
  title: 'Squares',
  width: 100,
  height: 100,
  view: 'face',
  pens: {},
  groups: [{ name: 'all', label: 'All', shown: true, items }],
});

/** The fill that is seen in a place: of the last path that holds it an odd number of times. */
function painted({ groups, styles }: Seen): (x: number, y: number) => string | number | undefined {
  const all = groups.flatMap(({ items }) =>
    items.map((item) => {
      if (item.kind !== 'path') throw new TypeError('squares are paths');
      const squares = item.d.split('Z').slice(0, -1);
      const numbers = squares.map((one) => one.match(/[\d.]+/gu)!.map(Number));
      return {
        fill: styles[item.style]?.fill,
        corners: numbers.map((each) => [each[0]!, each[1]!, each[4]!, each[5]!]),
      };
    }),
  );
  const holds = (x: number, y: number) => (c: readonly number[]) => c[0]! < x && x < c[2]! && c[1]! < y && y < c[3]!;
  return (x, y) => all.findLast(({ corners }) => corners.filter(holds(x, y)).length % 2 === 1)?.fill;
}

const elements = ({ groups }: Seen): number => groups.flatMap(({ items }) => items).length;

test('openings beside one another, each of several shades, are as many paths as there are shades', () => {
  const items = Array.from({ length: 40 }, (_, i) => [
    square(i * 10, 0, 8, '#aaaaaa'),
    square(i * 10, 0, 4, '#bbbbbb'),
    square(i * 10 + 4, 4, 4, '#cccccc'),
  ]);
  expect(elements(seen(drawn(items.flat())))).toBe(120);
  expect(elements(seenTogether(drawn(items.flat())))).toBe(3);
});

test('what lies over another stays over it', () => {
  const { uniform: next } = randomSource(7);
  for (let round = 0; round < 100; round++) {
    const items = Array.from({ length: 12 }, () =>
      square(
        Math.floor(next() * 80),
        Math.floor(next() * 80),
        5 + Math.floor(next() * 30),
        ['#111111', '#222222', '#333333'][Math.floor(next() * 3)]!,
      ),
    );
    const [apart, together] = [painted(seen(drawn(items))), painted(seenTogether(drawn(items)))];
    for (let i = 0; i < 40; i++) {
      const [x, y] = [next() * 110 + 0.013, next() * 110 + 0.013];
      expect(together(x, y), `round ${round} at ${x} ${y}`).toBe(apart(x, y));
    }
  }
});
