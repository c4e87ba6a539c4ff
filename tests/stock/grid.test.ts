import { describe, expect, it } from 'vitest';
import { gridFor } from '../../src/stock/planner/grid.ts';
import { type BlankType, holds, type Stock } from '../../src/stock/planner/instance.ts';
import { planned, QUICK } from './planned.ts';

describe('the grid of whole numbers', () => {
  it('is the coarsest on which all lengths are whole', () => {
    const grid = gridFor([12, 30, 7.5]);
    expect([grid.exact, grid.perUnit]).toEqual([true, 1 / 1.5]);
    expect([7.5, 12, 30].map((length) => grid.up(length))).toEqual([5, 8, 20]);
    expect(grid.length(20)).toBe(30);
    // Between its points blanks become larger, sheets smaller.
    expect([grid.up(12.1), grid.down(13.4)]).toEqual([9, 8]);
  });

  it('is as fine as is safe where lengths ask for more, and says that it is not exact', () => {
    const longest = 4_000_000;
    const grid = gridFor([longest, 0.001]);
    expect(grid.exact).toBe(false);
    expect(grid.up(longest)).toBeLessThanOrEqual(2 ** 31);
    expect(grid.up(longest)).toBeGreaterThan(2 ** 20);
    expect(grid.length(grid.up(longest))).toBeCloseTo(longest, 2);
  });
});

it('what drops out of every copy of a piece is stock: three of three mats leave room for three small ones', () => {
  const plan = planned({
    sheets: [{ id: 's', width: 100, height: 100 }],
    pieces: [
      { id: 'mat', width: 100, height: 100, count: 3, fallouts: [{ width: 50, height: 50 }] },
      { id: 'small', width: 50, height: 50, count: 3 },
    ],
    options: { fallouts: true, effort: QUICK },
  });
  expect([plan.count, plan.sheets.filter(({ origin }) => origin.kind === 'fallout').length]).toEqual([3, 3]);
});

it('a sheet holds a blank that fits it as it lies, or turned where it may turn', () => {
  const stock = { width: 30, height: 20 } as Stock;
  const held = (width: number, height: number, turn: boolean): boolean =>
    holds(stock, { width, height, turn } as BlankType);
  expect([held(30, 20, false), held(20, 30, true), held(15, 18, false)]).toEqual([true, true, true]);
  expect([held(20, 30, false), held(31, 5, true), held(5, 31, true), held(25, 25, true)]).toEqual([
    false,
    false,
    false,
    false,
  ]);
});
