import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Column } from '../../src/stock/planner/orders/column-list.ts';
import { Simplex } from '../../src/stock/planner/orders/simplex.ts';

const column = (cost: number, rows: readonly number[], values: readonly number[]): Column => ({
  cost,
  rows: Int32Array.from(rows),
  values: Float64Array.from(values),
});

describe('the linear program', () => {
  it('is solved as by hand: two lengths from one roll', () => {
    // 10 = 4 + 3 + 3 = 4 + 4 = 3 + 3 + 3, wanted 20 of 4 and 30 of 3: x of the first, y of the second, z of the third,
    // x + 2y ≥ 20, 2x + 3z ≥ 30. Best is x = 15, y = 5/2.
    const program = new Simplex([20, 30], []);
    program.add(column(1, [0, 1], [1, 2]));
    program.add(column(1, [0], [2]));
    program.add(column(1, [1], [3]));
    program.solve(100);
    expect(program.solution().cost).toBeCloseTo(17.5, 9);
    expect(program.solution().used).toEqual([
      { column: 0, amount: expect.closeTo(15, 9) },
      { column: 1, amount: expect.closeTo(2.5, 9) },
    ]);
    expect([...program.prices]).toEqual([expect.closeTo(0.5, 9), expect.closeTo(0.25, 9)]);
  });

  it('takes no more of a column than its limit lets it', () => {
    const program = new Simplex([10], [3]);
    program.add(column(1, [0, 1], [2, 1]));
    program.add(column(1, [0], [1]));
    program.solve(100);
    expect(program.solution().cost).toBeCloseTo(7, 9);
    expect(program.prices[1]).toBeCloseTo(-1, 9);
  });

  it('goes on from where it was when columns come', () => {
    const program = new Simplex([12], []);
    program.add(column(1, [0], [2]));
    program.solve(100);
    expect(program.solution().cost).toBeCloseTo(6, 9);
    program.add(column(1, [0], [3]));
    program.solve(100);
    expect(program.solution().cost).toBeCloseTo(4, 9);
  });

  it('goes on from where it was when something else is wanted, and costs what a new one does', () => {
    const cases = fc.record({
      needs: fc.array(fc.array(fc.integer({ min: 0, max: 60 }), { minLength: 5, maxLength: 5 }), {
        minLength: 2,
        maxLength: 8,
      }),
      limits: fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 8, maxLength: 8 }),
      columns: fc.array(fc.array(fc.integer({ min: 0, max: 5 }), { minLength: 5, maxLength: 5 }), { maxLength: 60 }),
    });
    let dual = 0;
    fc.assert(
      fc.property(cases, ({ needs, limits, columns }) => {
        const all = [...needs[0]!.map((_, r) => needs[0]!.map((__, t) => Number(t === r))), ...columns];
        const made = (need: readonly number[], limit: number): Simplex => {
          const program = new Simplex(need, [limit]);
          all.forEach((values, c) => {
            const rows = [0, 1, 2, 3, 4, ...(c % 3 === 2 ? [5] : [])].filter((r) => r === 5 || values[r]! > 0);
            program.add(
              column(
                1 + (c % 4),
                rows,
                rows.map((r) => (r === 5 ? 1 : values[r]!)),
              ),
            );
          });
          program.solve(10_000);
          return program;
        };
        const going = made(needs[0]!, limits[0]!);
        needs.forEach((need, i) => {
          if (!going.change(need, [limits[i]!], 1000)) return;
          dual++;
          expect(going.solution().cost).toBeCloseTo(made(need, limits[i]!).solution().cost, 6);
        });
      }),
      { numRuns: 80, seed: 4 },
    );
    expect(dual).toBeGreaterThan(250);
  });

  it('meets its prices: what columns cost is what the need is worth, and no column is worth more than it costs', () => {
    const program = fc.record({
      need: fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 8 }),
      columns: fc.array(fc.array(fc.integer({ min: 0, max: 5 }), { minLength: 8, maxLength: 8 }), { maxLength: 300 }),
      costs: fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 300, maxLength: 300 }),
    });
    fc.assert(
      fc.property(program, ({ need, columns, costs }) => {
        const all = [...need.map((_, r) => need.map((__, t) => Number(t === r))), ...columns];
        const made = new Simplex(need, []);
        all.forEach((values, c) => {
          const rows = need.map((_, r) => r).filter((r) => values[r]! > 0);
          made.add(
            column(
              costs[c % costs.length]!,
              rows,
              rows.map((r) => values[r]!),
            ),
          );
        });
        made.solve(10_000);
        const { cost, used } = made.solution();
        const reached = need.map((_, r) => used.reduce((sum, { column: c, amount }) => sum + amount * all[c]![r]!, 0));
        need.forEach((wanted, r) => {
          expect(reached[r]).toBeGreaterThan(wanted - 1e-6);
        });
        const worth = need.reduce((sum, wanted, r) => sum + wanted * made.prices[r]!, 0);
        expect(cost).toBeCloseTo(worth, 6);
        for (const [c, values] of all.entries()) {
          const value = need.reduce((sum, _, r) => sum + values[r]! * made.prices[r]!, 0);
          expect(value).toBeLessThan(costs[c % costs.length]! + 1e-6);
        }
        for (const price of made.prices) expect(price).toBeGreaterThan(-1e-6);
      }),
      { numRuns: 60, seed: 3 },
    );
  });
});
