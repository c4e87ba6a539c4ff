import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { StockInput, StockPlan } from '../../src/stock/planner/model.ts';
import { planStock } from '../../src/stock/planner/plan.ts';
import { planned, QUICK } from './planned.ts';

const side = fc.integer({ min: 5, max: 60 });
const pieces = (most: number) =>
  fc
    .array(fc.record({ width: side, height: side, turn: fc.boolean() }), { minLength: 1, maxLength: most })
    .map((list) => list.map((each, i) => ({ id: `p${i}`, ...each })));

/** Fewer sheets count before cost. */
function dearer(plan: StockPlan, than: StockPlan): boolean {
  return plan.count > than.count || (plan.count === than.count && (plan.cost ?? 0) > (than.cost ?? 0));
}

describe('one more sheet of stock', () => {
  it('of the only kind changes nothing', () => {
    fc.assert(
      fc.property(pieces(25), fc.integer({ min: 1, max: 12 }), (list, count) => {
        const plan = (of: number) =>
          planStock({
            sheets: [{ id: 's', width: 100, height: 80, count: of, cost: 3 }],
            pieces: list,
            options: { effort: QUICK },
          });
        const [before, after] = [plan(count), plan(count + 1)];
        if (before.ok) expect(after).toEqual(before);
      }),
      { numRuns: 40, seed: 5 },
    );
  });

  it('never makes a plan dearer, whatever its size and price', () => {
    const stock = fc.record({
      width: fc.integer({ min: 60, max: 120 }),
      height: fc.integer({ min: 60, max: 120 }),
      cost: fc.integer({ min: 1, max: 9 }),
      count: fc.integer({ min: 1, max: 3 }),
    });
    fc.assert(
      fc.property(fc.array(stock, { minLength: 1, maxLength: 3 }), stock, pieces(7), (sheets, more, list) => {
        const plan = (all: readonly { width: number; height: number; cost: number; count: number }[]) =>
          planStock({
            sheets: all.map((each, i) => ({ id: `s${i}`, ...each })),
            pieces: list,
            options: { effort: QUICK },
          });
        const before = plan(sheets);
        const after = plan([...sheets, { ...more, count: 1 }]);
        if (before.ok) expect(after.ok && !dearer(after.value, before.value)).toBe(true);
      }),
      { numRuns: 60, seed: 6 },
    );
  });
});

describe('the same problem', () => {
  const options = { effort: QUICK, kerf: 1, trim: { left: 2, top: 3 }, longestCut: 110 };
  const problem = fc.record({
    width: fc.integer({ min: 70, max: 120 }),
    height: fc.integer({ min: 70, max: 100 }),
    list: pieces(25),
  });

  it('turned by a quarter takes as many sheets and leaves as large an offcut', () => {
    fc.assert(
      fc.property(problem, ({ width, height, list }) => {
        const one = planned({ sheets: [{ id: 's', width, height }], pieces: list, options });
        const other = planned({
          sheets: [{ id: 's', width: height, height: width }],
          pieces: list.map((piece) => ({ ...piece, width: piece.height, height: piece.width })),
          options: { ...options, trim: { top: 2, left: 3 } },
        });
        expect([other.count, other.bound]).toEqual([one.count, one.bound]);
        const area = ({ largestOffcut: offcut }: StockPlan): number =>
          offcut === undefined ? 0 : offcut.width * offcut.height;
        expect(area(other)).toBeCloseTo(area(one), 6);
      }),
      { numRuns: 30, seed: 7 },
    );
  });

  it('takes no more sheets where small days of blanks may turn', () => {
    fc.assert(
      fc.property(pieces(7), (list) => {
        const count = (turn: boolean): number =>
          planned({
            sheets: [{ id: 's', width: 90, height: 70 }],
            pieces: list.map((piece) => ({ ...piece, turn })),
            options: { effort: QUICK, kerf: 1 },
          }).count;
        expect(count(true)).toBeLessThanOrEqual(count(false));
      }),
      { numRuns: 30, seed: 13 },
    );
  });

  it('listed in another order takes as many sheets, and asked again gives the same plan', () => {
    fc.assert(
      fc.property(problem, ({ width, height, list }) => {
        const input: StockInput = { sheets: [{ id: 's', width, height }], pieces: list, options };
        const plan = planned(input);
        expect(planned({ ...input, pieces: [...list].reverse() }).count).toBe(plan.count);
        expect(planned(input)).toEqual(plan);
      }),
      { numRuns: 20, seed: 8 },
    );
  });

  it('with more effort never takes more sheets', () => {
    fc.assert(
      fc.property(problem, ({ width, height, list }) => {
        const count = (effort: number): number =>
          planned({ sheets: [{ id: 's', width, height }], pieces: list, options: { ...options, effort } }).count;
        const counts = [0, 0.001, 0.004, 0.01].map(count);
        expect(counts).toEqual([...counts].sort((a, b) => b - a));
      }),
      { numRuns: 15, seed: 11 },
    );
  });
});
