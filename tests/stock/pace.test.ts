import { describe, expect, it } from 'vitest';
import type { StockInput } from '../../src/stock/planner/model.ts';
import { planStock } from '../../src/stock/planner/plan.ts';
import { orders } from '../bench/orders.ts';

const day: StockInput = {
  sheets: [{ id: 'board', width: 100, height: 100 }],
  pieces: Array.from({ length: 60 }, (_, i) => ({
    id: `p${i}`,
    width: 11 + ((i * 37) % 53),
    height: 13 + ((i * 29) % 47),
  })),
  options: { effort: 0.4 },
};
const order: StockInput = {
  ...orders(true).find(({ name }) => name.startsWith('long 30'))!.input,
  options: { effort: 0.3 },
};

describe('a plan that is watched', () => {
  it.each([
    ['a day', day],
    ['an order', order],
  ])('%s tells how far it is, and comes out the same', (_, input) => {
    const shares: number[] = [];
    const watched = planStock(input, (share) => {
      shares.push(share);
      return true;
    });
    expect(shares.length).toBeGreaterThan(5);
    expect(shares.every((share, i) => share <= 1 && share >= (shares[i - 1] ?? 0))).toBe(true);
    expect(watched).toEqual(planStock(input));
  });

  it.each([
    ['a day', day],
    ['an order', order],
  ])('%s ends soon where the answer is no', (_, input) => {
    let calls = 0;
    const made = planStock(input, () => ++calls < 3);
    expect(calls).toBe(3);
    expect(made.ok ? undefined : made.problems.map(({ code }) => code)).toEqual(['stock-stopped']);
  });
});
