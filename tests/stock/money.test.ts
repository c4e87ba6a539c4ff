import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { costOfWhole } from '../../src/stock/planner/bounds/whole-costs.ts';
import type { StockInput } from '../../src/stock/planner/model.ts';
import { fewestSheets } from './brute-force.ts';
import { planned, QUICK } from './planned.ts';

const options = { effort: QUICK, first: 'cost' } as const;
const small = { id: 'small', width: 60, height: 60, cost: 3 };
const large = { id: 'large', width: 100, height: 100, cost: 9 };

describe('where cost counts first', () => {
  it('two small sheets at 6 before a large one at 9, and the other way round is told', () => {
    const pieces = [{ id: 'p', width: 50, height: 50, count: 2 }];
    const plan = planned({ sheets: [small, large], pieces, options });
    expect([plan.count, plan.cost, plan.verdict]).toEqual([2, 6, 'optimal in cost']);
    expect(plan.other).toEqual({ first: 'sheets', count: 1, cost: 9 });
    const fewest = planned({ sheets: [small, large], pieces, options: { ...options, first: 'sheets' } });
    expect([fewest.count, fewest.cost, fewest.verdict]).toEqual([1, 9, 'optimal in sheets']);
    expect(fewest.other).toEqual({ first: 'cost', count: 2, cost: 6 });
  });

  it('nothing is told of the other rule where both give the same, or where nothing has a price', () => {
    const pieces = [{ id: 'p', width: 50, height: 50 }];
    expect(planned({ sheets: [small, large], pieces, options }).other).toBeUndefined();
    const { cost: _one, ...unpriced } = small;
    const { cost: _other, ...bare } = large;
    const plan = planned({ sheets: [unpriced, bare], pieces: [{ ...pieces[0]!, count: 2 }], options });
    expect([plan.count, plan.first, plan.verdict]).toEqual([1, 'sheets', 'optimal in sheets']);
  });

  it('takes sheets on hand before it buys one, though that is dearer', () => {
    const pieces = [{ id: 'p', width: 50, height: 50, count: 2 }];
    const plan = planned({ sheets: [small, { ...large, count: 1 }], pieces, options });
    expect([plan.cost, plan.sheets.map(({ id }) => id)]).toEqual([9, ['large']]);
    // What is claimed is the cost, and there is a cheaper plan.
    expect(plan.status).toBe('open');
  });

  it('an offcut that is kept is worth its share of the sheet', () => {
    const pieces = [{ id: 'p', width: 60, height: 100 }];
    const plan = planned({ sheets: [large], pieces, options: { ...options, offcutCredit: 0.5, leastOffcut: 20 } });
    // 40 of 100 are left: 9 · 0.4 · 0.5 = 1.8.
    expect(plan.credit).toBeCloseTo(1.8, 9);
    expect(plan.bound.value).toBeCloseTo(7.2, 9);
    expect(plan.status).toBe('optimal');
  });

  it('the larger sheet, where its offcut is worth more than it costs more', () => {
    const pieces = [{ id: 'p', width: 60, height: 50 }];
    const sheets = [
      { ...small, cost: 4 },
      { ...large, cost: 4.5 },
    ];
    expect(planned({ sheets, pieces, options }).sheets[0]!.id).toBe('small');
  });

  it('a larger sheet for its credit: 4.50 less half of the 70 % that is kept, before 4', () => {
    const pieces = [{ id: 'p', width: 60, height: 50 }];
    const sheets = [
      { ...small, cost: 4 },
      { ...large, cost: 4.5 },
    ];
    const plan = planned({ sheets, pieces, options: { ...options, offcutCredit: 0.5, leastOffcut: 20 } });
    expect(plan.sheets[0]!.id).toBe('large');
    expect(plan.cost! - plan.credit!).toBeCloseTo(4.5 * (1 - 0.7 * 0.5), 9);
    expect(plan.bound.value).toBeLessThanOrEqual(plan.cost! - plan.credit!);
  });

  it('looks for all that is kept where that is credited, else for the largest of it', () => {
    // 50 and 44 beside each other leave 6, which is not kept, and 43 elsewhere; with 31 or 26 each, all that is left is kept.
    const pieces = [50, 44, 31, 26].map((width) => ({ id: `${width}`, width, height: 100, turn: false }));
    const kept = (offcutCredit: number): number =>
      planned({ sheets: [large], pieces, options: { first: 'cost', effort: 0.2, offcutCredit, leastOffcut: 9 } }).area
        .offcuts;
    expect(kept(0)).toBe(43 * 100);
    expect(kept(0.5)).toBe(49 * 100);
  });

  it('never says that more is needed than trying everything finds, nor takes less', () => {
    const side = fc.integer({ min: 2, max: 9 });
    const cases = fc.record({
      blanks: fc.array(fc.record({ width: side, height: side }), { minLength: 1, maxLength: 5 }),
      costs: fc.tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 5, max: 20 })),
      turn: fc.boolean(),
    });
    fc.assert(
      fc.property(cases, ({ blanks, costs, turn }) => {
        const sizes = [
          { width: 9, height: 9 },
          { width: 14, height: 10 },
        ];
        const input: StockInput = {
          sheets: sizes.map((size, i) => ({ id: `${i}`, ...size, cost: costs[i]! })),
          pieces: blanks.map((blank, i) => ({ id: `${i}`, ...blank, turn })),
          options,
        };
        const plan = planned(input);
        expect(plan.cost).toBe(cheapest(blanks, sizes, costs, turn));
        expect(plan.bound.value).toBeLessThanOrEqual(plan.cost!);
      }),
      { numRuns: 40, seed: 12 },
    );
  });
});

type Rect = { readonly width: number; readonly height: number };

/** The least cost by trying every way to deal the blanks out to sheets. */
function cheapest(blanks: readonly Rect[], sizes: readonly Rect[], costs: readonly number[], turn: boolean): number {
  const one = (set: readonly Rect[]): number =>
    Math.min(
      ...sizes.map((size, s) => {
        const lie = set.every(
          ({ width, height }) =>
            (width <= size.width && height <= size.height) || (turn && height <= size.width && width <= size.height),
        );
        return lie && fewestSheets(set, { ...size, kerf: 0, turn }) === 1 ? costs[s]! : Infinity;
      }),
    );
  const [first, ...rest] = blanks;
  if (first === undefined) return 0;
  let best = Infinity;
  for (let subset = 0; subset < 2 ** rest.length; subset++) {
    const here = rest.filter((_, i) => (subset & (1 << i)) !== 0);
    const others = rest.filter((_, i) => (subset & (1 << i)) === 0);
    best = Math.min(best, one([first, ...here]) + cheapest(others, sizes, costs, turn));
  }
  return best;
}

describe('what whole sheets cost', () => {
  it('is the least sum of prices that reaches a bound: 45 by 9.50 and 19.50 is 47.50', () => {
    const stock = { width: 1, height: 1, free: false, bought: false, edgesX: 0, edgesY: 0, whole: true };
    const stocks = [
      { ...stock, cost: 9.5, limit: Infinity },
      { ...stock, cost: 19.5, limit: 2 },
    ];
    const of = (least: number): number =>
      costOfWhole({ stocks, types: [], kerf: 0, longest: Infinity, first: 'cost' }, least);
    expect(of(45)).toBe(47.5);
    expect(of(47.5)).toBe(47.5);
    expect(of(47.6)).toBe(48);
    expect(of(0)).toBe(0);
    // A search that ended before it knew any bound: that is not one that nothing reaches.
    expect(of(Number.NEGATIVE_INFINITY)).toBe(Number.NEGATIVE_INFINITY);
    expect(of(Number.POSITIVE_INFINITY)).toBe(Number.POSITIVE_INFINITY);
  });
});
