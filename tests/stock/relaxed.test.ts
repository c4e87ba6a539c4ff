import { describe, expect, it } from 'vitest';
import type { BlankType, Instance } from '../../src/stock/planner/instance.ts';
import { Columns } from '../../src/stock/planner/orders/columns.ts';

const sheets = (width: number, height: number, types: readonly BlankType[]): Instance => ({
  stocks: [{ width, height, limit: Infinity, free: false, cost: 0, bought: false, edgesX: 2, edgesY: 2, whole: true }],
  types,
  kerf: 0,
  first: 'sheets',
  longest: Infinity,
});

const blank = (width: number, height: number): BlankType => ({ width, height, demand: 1, turn: false, edge: false });

/** As many of each as `need` says, from sheets without end. */
const wanted = (...need: readonly number[]) => ({ need: Int32Array.from(need), limits: [Infinity] });

describe('the program over patterns', () => {
  it('knows its bound where there are steps for the best patterns', () => {
    // Seven sheets hold a long one and a middle one each and are full; 188 short ones fill a sheet, and 94 half of one.
    // No less: let a long one be worth 1 − 75/188 (75 short ones lie beside it), a middle one 75/188, a short one 1/188.
    // Then no pattern is worth more than one sheet: 1 for a long and a middle one, a long one with 75 short ones the
    // same, a middle one with 113 short ones as much, two with 37 less. All together they are worth 7 + 94/188.
    const types = [6000, 4000, 53].map((width) => blank(width, 10));
    const { cost, bound } = new Columns(sheets(10_000, 10, types)).relax(wanted(7, 7, 94), { steps: 10_000_000 });
    expect(cost).toBeCloseTo(7.5, 9);
    expect(bound).toBeCloseTo(7.5, 9);
  });

  it('leaves a table alone that takes more steps than there are', () => {
    // Of the best patterns one takes 4.7 million.
    const types = [blank(2011, 2011), blank(1523, 1523), blank(89, 1789), blank(1789, 89)];
    const columns = new Columns(sheets(10_000, 12_000, types));
    const { bound } = columns.relax(wanted(6, 8, 50, 50), { steps: 4_000_000 });
    expect(bound).toBe(Number.NEGATIVE_INFINITY);
    expect(columns.steps).toBeLessThan(2_000_000);
  });

  it('has a bound by a coarse grid, near the truth, where the best patterns cannot be known', () => {
    // Each long one needs a sheet of its own, and the short ones lie beside them.
    const types = [60_000, 1009, 1213, 1511].map((width) => blank(width, 50_000));
    const { cost, bound } = new Columns(sheets(100_000, 50_000, types)).relax(wanted(10, 12, 8, 9), {
      steps: 20_000_000,
    });
    expect(cost).toBeCloseTo(10, 9);
    expect(bound).toBeCloseTo(10, 9);
  });
});
