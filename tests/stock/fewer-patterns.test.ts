import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fewerPatterns, type Repeated } from '../../src/stock/planner/orders/fewer-patterns.ts';

const pattern = (copies: readonly number[], stock = 0) => ({
  stock,
  copies: Int32Array.from(copies),
  layout: new Int32Array(0),
});

const repeated = (count: number, copies: readonly number[]): Repeated => ({ pattern: pattern(copies), count });

describe('fewer different sheets', () => {
  it('one pattern does for two where blanks are not needed: seven of the first and five of the second', () => {
    const plan = [repeated(2, [2, 1]), repeated(1, [1, 2])];
    // Needed are 4 and 3: three sheets with 2 and 1 give 6 and 3.
    expect(fewerPatterns(plan, Int32Array.of(4, 3), [])).toEqual([{ ...plan[0]!, count: 3 }]);
    expect(fewerPatterns(plan, Int32Array.of(4, 4), [])).toHaveLength(2);
  });

  it('another pattern comes in for two, of the same kind of sheet only', () => {
    const plan = [repeated(1, [3, 0]), repeated(1, [0, 3])];
    const need = Int32Array.of(3, 3);
    expect(fewerPatterns(plan, need, [pattern([2, 2])]).map(({ count }) => count)).toEqual([2]);
    expect(fewerPatterns(plan, need, [pattern([2, 2], 1)])).toHaveLength(2);
    expect(fewerPatterns(plan, need, [pattern([2, 1])])).toHaveLength(2);
  });

  it('never takes another number of sheets, lacks a blank, or has more patterns', () => {
    const copies = fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 4, maxLength: 4 });
    let fewer = 0;
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 1, max: 4 }), copies), { minLength: 1, maxLength: 9 }),
        fc.array(copies, { maxLength: 12 }),
        fc.integer({ min: 0, max: 5 }),
        (given, pool, spare) => {
          const plan = given.map(([count, each]) => repeated(count, each));
          const reach = (of: readonly Repeated[]): number[] =>
            [0, 1, 2, 3].map((t) => of.reduce((sum, each) => sum + each.count * each.pattern.copies[t]!, 0));
          const need = Int32Array.from(reach(plan), (count) => Math.max(0, count - spare));
          const found = fewerPatterns(
            plan,
            need,
            pool.map((each) => pattern(each)),
          );
          const sheets = (of: readonly Repeated[]): number => of.reduce((sum, { count }) => sum + count, 0);
          expect(sheets(found)).toBe(sheets(plan));
          expect(found.length).toBeLessThanOrEqual(plan.length);
          expect(reach(found).every((count, t) => count >= need[t]!)).toBe(true);
          if (found.length < plan.length) fewer++;
        },
      ),
      { numRuns: 200, seed: 2 },
    );
    expect(fewer).toBeGreaterThan(50);
  });
});
