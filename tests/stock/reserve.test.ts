import { expect, it } from 'vitest';
import type { Instance, Stock } from '../../src/stock/planner/instance.ts';
import { largest } from '../../src/stock/planner/kept.ts';
import { reserveStrips } from '../../src/stock/planner/search/reserve.ts';
import { Search } from '../../src/stock/planner/search/search.ts';
import { Forest } from '../../src/stock/planner/trees/forest.ts';

/** Counts how often its steps are asked for; where that is without end, it says that they are used up. */
class Asked extends Search {
  asked = 0;
  override get steps(): number {
    this.asked++;
    return this.asked > 10_000 ? Infinity : super.steps;
  }
}

it('a strip is left alone once the last sheet of its kind is saved', () => {
  const sheet = (width: number, height: number): Stock => ({
    width,
    height,
    limit: 1,
    free: false,
    cost: 1,
    bought: false,
    edgesX: 2,
    edgesY: 2,
    whole: true,
  });
  const instance: Instance = {
    stocks: [sheet(300, 300), sheet(100, 100)],
    types: [{ width: 20, height: 30, demand: 2, turn: false, edge: false }],
    kerf: 0,
    first: 'sheets',
    longest: Infinity,
  };
  // One blank lies on each sheet, though there is room for both on either.
  const start = new Forest(instance);
  for (const stock of [0, 1]) start.place(start.open(stock), 0, 20, 30, false);
  const search = new Asked(instance, 1, { start });
  const keeping = { least: { width: 1, height: 1 } };
  reserveStrips(search, keeping, 600_000);
  expect(search.asked).toBeLessThan(100);
  // The large one is saved. On the small one the two lie above each other, 20 wide: 80 × 100 is left.
  expect([...search.best.opened]).toEqual([0, 1]);
  expect(search.best.missingCount).toBe(0);
  expect(largest(search.best, keeping)).toBe(8000);
});
