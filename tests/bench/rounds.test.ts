import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Demand, roundsOf, settingsOver, type Visit } from '../../src/bench/work/rounds.ts';
import { add, fewest, type Reads, type Score, type Tally } from '../simulate/fewest.ts';

/** Boards' settings read alike where their numbers are alike, one board a step higher than the one before it. */
const reads: Reads = (group, setting) => `${10 * (setting + group)}`;

function scoreOf(demands: readonly Demand[], visits: readonly Visit[]): Score {
  let tally: Tally = { score: [0, 0] };
  for (const { group, setting } of visits) if (setting !== undefined) tally = add(tally, group, setting, reads);
  expect(tally.score[1]).toBe(settingsOver(visits, reads));
  const cut = visits.flatMap(({ setting, demands: met }) => met.map((i) => `${i} ${setting}`)).sort();
  expect(cut).toEqual(demands.flatMap(({ settings }, i) => settings.map((setting) => `${i} ${setting}`)).sort());
  return tally.score;
}

/** Tops and under mats of up to three boards, as many strokes as brute force takes again and again. */
const days = fc
  .array(
    fc.record({
      layers: fc.array(
        fc.record({
          group: fc.constantFrom(0, 0, 1, 2),
          settings: fc.uniqueArray(fc.integer({ min: 0, max: 3 }), { minLength: 1, maxLength: 3 }),
        }),
        { minLength: 1, maxLength: 3 },
      ),
      waits: fc.boolean(),
    }),
    { minLength: 1, maxLength: 4 },
  )
  .map((jobs): readonly Demand[] => {
    const demands: Demand[] = [];
    for (const { layers, waits } of jobs) {
      layers.forEach(({ group, settings }, k) => {
        const strokes = demands.reduce((sum, demand) => sum + demand.settings.length, 0);
        const few = settings.slice(0, Math.max(0, 8 - strokes));
        if (few.length === 0) return;
        // The first of a job may wait for the job before it, whose fallout is its blank.
        const after = k > 0 || waits ? [demands.length - 1].filter((i) => i >= 0) : [];
        demands.push({ group, settings: [...few].sort((a, b) => a - b), after });
      });
    }
    return demands;
  });

describe('rounds of a day', () => {
  test('are as few as in the best of all sequences, with as few settings of the guide, on 400 random days', () => {
    fc.assert(
      fc.property(days, (demands) => {
        expect(scoreOf(demands, roundsOf(demands, reads))).toEqual(fewest(demands, reads));
      }),
      { numRuns: 400, seed: 7 },
    );
  }, 120_000);

  test('what must come before wins over fewer settings, and rises within its round where it can', () => {
    const top = { group: 0, settings: [1], after: [] };
    const rising: Demand[] = [top, { group: 0, settings: [2], after: [0] }];
    expect(roundsOf(rising, reads).map(({ setting }) => setting)).toEqual([1, 2]);
    const falling: Demand[] = [
      { ...top, settings: [1, 3] },
      { group: 0, settings: [2], after: [0] },
    ];
    expect(roundsOf(falling, reads).map(({ setting }) => setting)).toEqual([1, 3, 2]);
  });

  test('what has no setting is done as soon as it may be', () => {
    const demands: Demand[] = [
      { group: 0, settings: [], after: [1] },
      { group: 0, settings: [2], after: [] },
      { group: 0, settings: [2], after: [0] },
    ];
    expect(roundsOf(demands, reads)).toEqual([{ group: 0, setting: 2, demands: [1, 0, 2] }]);
  });

  test('demands that wait for each other are a slip of the program', () => {
    const demands: Demand[] = [
      { group: 0, settings: [1], after: [1] },
      { group: 0, settings: [2], after: [0] },
    ];
    expect(() => roundsOf(demands, reads)).toThrow('wait for each other');
  });
});
