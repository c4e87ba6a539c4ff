import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exactPlan } from '../../src/stock/planner/search/exact.ts';
import { Search } from '../../src/stock/planner/search/search.ts';
import { taskOf } from '../../src/stock/planner/task.ts';
import { type Blank, fewestSheets } from './brute-force.ts';
import { planned, QUICK } from './planned.ts';

const small = fc
  .record({ width: fc.integer({ min: 3, max: 7 }), height: fc.integer({ min: 3, max: 7 }) })
  .chain((sheet) =>
    fc.record({
      sheet: fc.constant(sheet),
      kerf: fc.integer({ min: 0, max: 1 }),
      turn: fc.boolean(),
      blanks: fc.array(
        fc.record({
          width: fc.integer({ min: 1, max: sheet.width }),
          height: fc.integer({ min: 1, max: sheet.height }),
        }),
        { minLength: 1, maxLength: 6 },
      ),
    }),
  );

const input = (sheet: Blank, blanks: readonly Blank[], kerf: number, turn: boolean) => ({
  sheets: [{ id: 'sheet', ...sheet }],
  pieces: blanks.map((blank, i) => ({ id: `p${i}`, ...blank, turn })),
  options: { kerf, effort: QUICK },
});

describe('small cases against trying everything', () => {
  it('knows cases by hand', () => {
    const two = [
      { width: 2, height: 4 },
      { width: 4, height: 2 },
    ];
    expect(fewestSheets(two, { width: 4, height: 4, kerf: 0, turn: false })).toBe(2);
    expect(fewestSheets(two, { width: 4, height: 4, kerf: 0, turn: true })).toBe(1);
    expect(fewestSheets(two, { width: 4, height: 4, kerf: 1, turn: true })).toBe(2);
    // A pinwheel: four blanks round a hole fill 3 × 3, but no cut runs from edge to edge.
    const pinwheel = [...two, ...two].map(({ width, height }) => ({ width: width / 2, height: height / 2 }));
    expect(fewestSheets(pinwheel, { width: 3, height: 3, kerf: 0, turn: false })).toBe(2);
  });

  it('takes as few sheets, and proves it', () => {
    fc.assert(
      fc.property(small, ({ sheet, kerf, turn, blanks }) => {
        const plan = planned(input(sheet, blanks, kerf, turn));
        expect(plan.count).toBe(fewestSheets(blanks, { ...sheet, kerf, turn }));
        expect(plan.status).toBe('optimal');
      }),
      { numRuns: 70, seed: 9 },
    );
  });

  it('finds as few by the search alone, which knows nothing of the exact plan', () => {
    fc.assert(
      fc.property(small, ({ sheet, kerf, turn, blanks }) => {
        const task = taskOf(input(sheet, blanks, kerf, turn));
        if (!task.ok) throw new Error('not task');
        const search = new Search(task.value.instance, 1);
        const fewest = fewestSheets(blanks, { ...sheet, kerf, turn });
        search.saveFirst(fewest, 400_000);
        expect(search.price.sheets).toBe(fewest);
        expect(exactPlan(task.value.instance)).toMatchObject({ sheets: fewest });
      }),
      { numRuns: 60, seed: 10 },
    );
  });
});
