import { expect, it } from 'vitest';
import { patternOf } from '../../src/stock/planner/orders/pattern-maker.ts';
import { Sections } from '../../src/stock/planner/orders/sections.ts';

it('of more lengths than are worked out, the sections are those that fill the sheet together', () => {
  // Three of 4 × 9 above each other, or one of 3 × 28, and never one above the other: 28 + 9 is more than 35. So each
  // unit of length is worth 3 at the most; 65 sections of 4 and one of 3 are 263 long, and nothing of it is left.
  const [prices, ways] = [
    Float64Array.from([4, 9]),
    [
      { type: 0, along: 4, across: 9 },
      { type: 1, along: 3, across: 28 },
    ],
  ];
  const sections = new Sections(263, 35, ways, 2, 'x');
  expect(sections.best(prices)).toBe(3 * 263);
  const [best] = sections.patterns(1);
  const { copies } = patternOf(best!.make()!, 2);
  expect(copies[0]! * 4 + copies[1]! * 9).toBe(3 * 263);
});
