import { expect } from 'vitest';
import type { StockInput, StockPlan } from '../../src/stock/planner/model.ts';
import { planStock } from '../../src/stock/planner/plan.ts';
import { faults } from './check-plan.ts';

/** The plan, once the checker has found nothing wrong with it. */
export function planned(input: StockInput): StockPlan {
  const made = planStock(input);
  if (!made.ok) throw new Error(made.problems.map(({ message }) => message).join('\n'));
  expect(faults(input, made.value)).toEqual([]);
  return made.value;
}

/** A little search: enough for tests, which ask whether plans are right and not how good they are. */
export const QUICK = 0.005;
