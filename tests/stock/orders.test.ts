import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { StockInput, StockPlan } from '../../src/stock/planner/model.ts';
import { orders } from '../bench/orders.ts';
import { planned, QUICK } from './planned.ts';

const INCH = 25.4;

const different = ({ sheets }: StockPlan): number =>
  new Set(sheets.map(({ tree }) => JSON.stringify(tree, (key, value: unknown) => (key === 'copy' ? 0 : value)))).size;

describe('an order of the same blanks many times', () => {
  it('repeats few patterns, and is proved: 400 of 16 × 20 and 300 of 10 × 16 from 32 × 40', () => {
    const plan = planned({
      sheets: [{ id: 'board', width: 32 * INCH, height: 40 * INCH }],
      pieces: [
        { id: 'a', width: 16 * INCH, height: 20 * INCH, count: 400 },
        { id: 'b', width: 10 * INCH, height: 16 * INCH, count: 300 },
      ],
      options: { effort: QUICK },
    });
    // Four of the one fill a sheet, and so do eight of the other.
    expect(plan.count).toBe(100 + 38);
    expect(plan.status).toBe('optimal');
    expect(different(plan)).toBeLessThanOrEqual(4);
  });

  it.each([...orders(true), ...orders(false)].filter(({ input }) => input.pieces.length <= 20))(
    '$name, a little searched, is valid and near the bound',
    ({ input }) => {
      const plan = planned({ ...input, options: { effort: 0.2 } });
      expect(plan.count).toBeLessThanOrEqual(Math.ceil(1.08 * plan.bound.value));
      expect(different(plan)).toBeLessThan(3 * input.pieces.length + 3);
    },
  );

  it('is the same in any order of its blanks, and lying turned by a quarter', () => {
    const { input } = orders(true)[1]!;
    const options = { effort: 0.05 };
    const plan = planned({ ...input, options });
    const turned: StockInput = {
      sheets: input.sheets.map((sheet) => ({ ...sheet, width: sheet.height, height: sheet.width })),
      pieces: [...input.pieces].reverse().map((piece) => ({ ...piece, width: piece.height, height: piece.width })),
      options,
    };
    const other = planned(turned);
    const laid = ({ laid, sheets }: StockPlan): readonly string[] =>
      sheets
        .map(({ number }) =>
          laid
            .filter(({ sheet }) => sheet === number)
            .map(({ piece }) => piece)
            .sort()
            .join(' '),
        )
        .sort();
    expect(laid(other)).toEqual(laid(plan));
  });

  it('is laid on what there is: counted sheets, offcuts, trim and kerf', () => {
    const whole = (min: number, max: number) => fc.integer({ min, max });
    const order = fc.record({
      pieces: fc.array(fc.record({ width: whole(60, 300), height: whole(60, 300), count: whole(20, 60) }), {
        minLength: 3,
        maxLength: 8,
      }),
      kerf: fc.constantFrom(0, 3),
      trim: fc.constantFrom(0, 6),
      offcuts: whole(0, 2),
      turn: fc.boolean(),
    });
    fc.assert(
      fc.property(order, ({ pieces, kerf, trim, offcuts, turn }) => {
        const plan = planned({
          sheets: [
            { id: 'large', width: 800, height: 1000 },
            { id: 'small', width: 500, height: 700, count: 5 },
            ...Array.from({ length: offcuts }, (_, i) => ({
              id: `o${i}`,
              width: 320,
              height: 400,
              count: 1,
              offcut: true,
            })),
          ],
          pieces: pieces.map((piece, i) => ({ ...piece, id: `${i}`, turn })),
          options: { kerf, trim, effort: QUICK },
        });
        expect(plan.count).toBeGreaterThanOrEqual(plan.bound.value);
      }),
      { numRuns: 12, seed: 8 },
    );
  });
});
