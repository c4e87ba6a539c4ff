import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Stretch, shortTravel, travelOf } from '../../src/cutfiles/toolpaths/order.ts';

const coordinate = fc.integer({ min: 0, max: 500 });
const place = fc.record({ x: coordinate, y: coordinate });
const stretch: fc.Arbitrary<Stretch> = fc.oneof(
  fc.record({ start: place, end: place, reversible: fc.boolean() }),
  place.map((at) => ({ start: at, end: at, reversible: false })),
);
const ORIGIN = { x: 0, y: 500 };

/** The shortest of all, by trying each. */
function shortest(stretches: readonly Stretch[]): number {
  const visit = (left: readonly number[], at: { x: number; y: number }, sum: number, best: number): number => {
    if (sum >= best) return best;
    if (left.length === 0) return sum;
    for (const index of left) {
      const { start, end, reversible } = stretches[index]!;
      for (const [from, to] of reversible ? [[start, end] as const, [end, start] as const] : [[start, end] as const]) {
        const way = Math.hypot(from.x - at.x, from.y - at.y);
        const rest = left.filter((other) => other !== index);
        best = Math.min(best, visit(rest, to, sum + way, best));
      }
    }
    return best;
  };
  return visit([...stretches.keys()], ORIGIN, 0, Number.POSITIVE_INFINITY);
}

describe('the way between stretches', () => {
  it('takes each once, and turns only those that may be turned', () => {
    fc.assert(
      fc.property(fc.array(stretch, { maxLength: 30 }), (stretches) => {
        const steps = shortTravel(stretches, ORIGIN);
        expect(steps.map(({ index }) => index).sort((a, b) => a - b)).toEqual([...stretches.keys()]);
        for (const { index, backwards } of steps) if (backwards) expect(stretches[index]!.reversible).toBe(true);
      }),
    );
  });

  it('is never longer than taking the nearest next, and seldom much longer than the shortest of all', () => {
    let [ours, best] = [0, 0];
    fc.assert(
      fc.property(fc.array(stretch, { minLength: 1, maxLength: 6 }), (stretches) => {
        const way = travelOf(shortTravel(stretches, ORIGIN), stretches, ORIGIN);
        const least = shortest(stretches);
        expect(way).toBeGreaterThan(least - 1e-6);
        [ours, best] = [ours + way, best + least];
      }),
      { numRuns: 200 },
    );
    expect(ours / best).toBeLessThan(1.06);
  });

  it('cannot be made shorter by turning any stretch of the order about', () => {
    fc.assert(
      fc.property(fc.array(stretch, { minLength: 2, maxLength: 12 }), (stretches) => {
        const steps = [...shortTravel(stretches, ORIGIN)];
        const now = travelOf(steps, stretches, ORIGIN);
        for (let i = 0; i < steps.length; i++) {
          for (let k = i; k < steps.length; k++) {
            const turned = steps
              .slice(i, k + 1)
              .reverse()
              .map(({ index, backwards }) => ({
                index,
                backwards: stretches[index]!.reversible ? !backwards : backwards,
              }));
            const other = [...steps.slice(0, i), ...turned, ...steps.slice(k + 1)];
            expect(travelOf(other, stretches, ORIGIN)).toBeGreaterThan(now - 1e-5);
          }
        }
      }),
      { numRuns: 60 },
    );
  });
});
