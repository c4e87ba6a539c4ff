import { describe, expect, it } from 'vitest';
import type { BlankType, Instance } from '../../src/stock/planner/instance.ts';
import { cover } from '../../src/stock/planner/search/cover.ts';
import { Patterns } from '../../src/stock/planner/search/patterns.ts';
import { Random } from '../../src/stock/planner/search/random.ts';

const type = (width: number, height: number): BlankType => ({ width, height, demand: 9, turn: false, edge: false });

const instanceOf = (types: readonly BlankType[]): Instance => ({
  stocks: [
    {
      width: 100,
      height: 100,
      limit: Infinity,
      free: false,
      cost: 0,
      bought: false,
      edgesX: 0,
      edgesY: 0,
      whole: true,
    },
  ],
  types,
  kerf: 0,
  first: 'sheets',
  longest: Infinity,
});

/** Each a list of how many copies of each type lie on a sheet. */
function patternsOf(types: number, list: readonly (readonly number[])[]): Patterns {
  const made = new Patterns(types, 0, 0);
  let at = 0;
  for (const copies of list) {
    copies.forEach((count, t) => {
      if (count === 0) return;
      made.type[at] = t;
      made.copies[at++] = count;
    });
    made.start[++made.count] = at;
  }
  return made;
}

const areaOf = ({ width, height }: BlankType): number => (width * height) / 10_000;

/** The area that stays uncovered. */
function open(
  picked: readonly number[],
  list: readonly (readonly number[])[],
  need: readonly number[],
  types: readonly BlankType[],
): number {
  return need.reduce((sum, wanted, t) => {
    const got = picked.reduce((all, p) => all + list[p]![t]!, 0);
    return sum + Math.max(0, wanted - got) * areaOf(types[t]!);
  }, 0);
}

/** Every choice of so many patterns. */
function least(
  count: number,
  list: readonly (readonly number[])[],
  need: readonly number[],
  types: readonly BlankType[],
): number {
  let best = Infinity;
  const walk = (picked: readonly number[], from: number): void => {
    if (picked.length === count) {
      best = Math.min(best, open(picked, list, need, types));
      return;
    }
    for (let p = from; p < list.length; p++) walk([...picked, p], p);
  };
  walk([], 0);
  return best;
}

describe('sheets of many plans, put together anew', () => {
  it('picks the three that hold all, out of ten that each hold more of what others hold too', () => {
    const types = [type(50, 50), type(30, 60), type(20, 40), type(10, 90)];
    const list = [
      [3, 1, 0, 0],
      [3, 0, 1, 1],
      [2, 2, 0, 0],
      [0, 4, 1, 0],
      [1, 1, 4, 0],
      [0, 0, 0, 9],
      [0, 0, 9, 1],
      [2, 0, 5, 0],
      [2, 0, 0, 5],
      [0, 2, 3, 3],
    ];
    // The second, the fourth and the ninth: no other three cover it.
    const need = [5, 4, 2, 6];
    expect(least(3, list, need, types)).toBe(0);
    const made = cover(instanceOf(types), patternsOf(4, list), Int32Array.from(need), 3, new Random(1))!;
    expect([...made.patterns].sort((a, b) => a - b)).toEqual([1, 3, 8]);
    // What it counts as it goes: too few, and the search would never end.
    expect(made.steps).toBe(382);
  });

  it('leaves no more uncovered than every choice does, in nineteen cases of twenty', () => {
    const random = new Random(7);
    let [best, worse] = [0, 0];
    for (let n = 0; n < 200; n++) {
      const types = Array.from({ length: 3 + random.below(4) }, () =>
        type(10 + random.below(50), 10 + random.below(50)),
      );
      const list = Array.from({ length: 6 + random.below(8) }, () => types.map(() => random.below(4)));
      const count = 1 + random.below(4);
      const need = types.map(() => random.below(3 * count));
      const made = cover(
        instanceOf(types),
        patternsOf(types.length, list),
        Int32Array.from(need),
        count,
        new Random(n),
      )!;
      expect(made.patterns).toHaveLength(count);
      const [got, truth] = [open([...made.patterns], list, need, types), least(count, list, need, types)];
      expect(got).toBeGreaterThanOrEqual(truth - 1e-9);
      if (got < truth + 1e-9) best++;
      worse = Math.max(worse, got - truth);
    }
    expect(best).toBeGreaterThanOrEqual(197);
    expect(worse).toBeLessThan(0.2);
  });

  it('has nothing to pick from without patterns, or where none is wanted', () => {
    const types = [type(50, 50)];
    const need = Int32Array.from([1]);
    expect(cover(instanceOf(types), patternsOf(1, []), need, 3, new Random(1))).toBeUndefined();
    expect(cover(instanceOf(types), patternsOf(1, [[1]]), need, 0, new Random(1))).toBeUndefined();
  });
});
