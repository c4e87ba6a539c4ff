import { expect, it } from 'vitest';
import { rulersOf } from '../../src/paper/furniture/rulers.ts';
import { FONTS } from '../fonts/loaded.ts';

const words = (items: readonly { readonly kind: string }[]): readonly string[] =>
  items.flatMap((item) => ('text' in item ? [String(item.text)] : []));

it('every ruler says its own lengths, in whole inches but for the shortest, and its ticks are as far apart as they say', () => {
  const rulers = rulersOf(FONTS).level.map((block) => block());
  const said = rulers.map(({ items }) => words(items));
  expect(said.slice(-3)).toEqual([
    ['0', '10', '20', '30', '40', '50 mm', '0', '1', '2 in'],
    ['0', '10', '20', '30 mm', '0', '1 in'],
    ['0', '10', '20 mm', '0', '1/2 in'],
  ]);
  for (const { items } of rulers) {
    const ticks = items.flatMap((item) => (item.kind === 'line' && item.from.x === item.to.x ? [item] : []));
    const below = ticks.filter(({ from, to }) => to.y > from.y).map(({ from }) => from.x);
    const above = ticks.filter(({ from, to }) => to.y < from.y).map(({ from }) => from.x);
    for (let i = 1; i < below.length; i++) expect(below[i]! - below[i - 1]!).toBeCloseTo(1, 9);
    for (let i = 1; i < above.length; i++) expect(above[i]! - above[i - 1]!).toBeCloseTo(25.4 / 8, 9);
    expect(Math.min(...below)).toBeCloseTo(Math.min(...above), 9);
  }
});
