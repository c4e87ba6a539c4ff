import fc from 'fast-check';
import { expect, it } from 'vitest';
import { LineCosts } from '../../src/paper/search/line-costs.ts';
import { SEAM_CLEARANCE } from '../../src/paper/search/obstacle.ts';

const stretch = fc.record({
  from: fc.double({ min: 0, max: 900, noNaN: true }),
  long: fc.double({ min: 0, max: 400, noNaN: true }),
  weight: fc.integer({ min: 1, max: 9 }),
});

it('what the lines of a grid run through is what counting line by line gives', () => {
  let met = 0;
  fc.assert(
    fc.property(
      fc.array(stretch, { minLength: 1, maxLength: 12 }),
      fc.double({ min: 40, max: 300, noNaN: true }),
      fc.double({ min: 0, max: 20, noNaN: true }),
      fc.double({ min: -300, max: 0, noNaN: true }),
      (list, pitch, lap, origin) => {
        const all = list.map(({ from, long, weight }) => ({ stretch: [from, from + long] as const, weight }));
        const byBegin = [...all].sort((a, b) => a.stretch[0] - b.stretch[0]);
        const byEnd = [...all].sort((a, b) => a.stretch[1] - b.stretch[1]);
        const lines = Array.from({ length: 200 }, (_, k) => origin + lap / 2 + (k - 60) * pitch);
        let expected = 0;
        for (const {
          stretch: [low, high],
          weight,
        } of all)
          for (const line of lines) {
            const [before, behind] = [line - (low - SEAM_CLEARANCE), high + SEAM_CLEARANCE - line];
            // Within a rounding of an end either is right.
            if (Math.min(Math.abs(before), Math.abs(behind)) < 1e-3) return;
            if (before > 0 && behind > 0) expected += weight;
          }
        if (expected > 0) met++;
        expect(new LineCosts(byBegin, byEnd, pitch, lap).at(origin)).toBe(expected);
      },
    ),
    { numRuns: 500 },
  );
  expect(met).toBeGreaterThan(300);
});
