import { describe, expect, it } from 'vitest';
import { solveJob } from '../../src/index.ts';
import { shopLocator } from '../../src/shop/read-shop.ts';
import { planBoards } from '../../src/stock/board-plans.ts';
import { MONDAY } from '../golden/stock-cases.ts';
import { faults } from './check-plan.ts';
import { QUICK } from './planned.ts';

describe('the day that comes with the program', () => {
  it('costs 47.50, and 48.00 where the fewest sheets count first', () => {
    const shop = { text: MONDAY.shop, file: 'shop.yaml' };
    const jobs = Object.values(MONDAY.jobs).map((job) => {
      const solved = solveJob(job, { shop });
      if (!solved.ok) throw new Error(solved.problems.map(({ message }) => message).join('\n'));
      return solved.value;
    });
    const located = { shop: jobs[0]!.shop, locate: shopLocator(shop.text, shop.file) };
    const made = planBoards({ jobs, shop: located, units: jobs[0]!.job.units, options: { effort: QUICK } });
    if (!made.ok) throw new Error(made.problems.map(({ message }) => message).join('\n'));
    const told = made.value.map(({ material, input, plan }) => {
      expect(faults(input, plan)).toEqual([]);
      return [material.name, plan.count, plan.cost, plan.verdict, plan.other];
    });
    expect(told).toEqual([
      ['Bone', 3, 28.5, 'optimal in cost', { first: 'sheets', count: 2, cost: 29 }],
      ['Slate', 2, 19, 'optimal in cost', undefined],
    ]);
  });
});
