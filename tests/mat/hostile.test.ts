import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SomeSides } from '../../src/geometry/sides.ts';
import { SIDES } from '../../src/geometry/sides.ts';
import { solve } from '../../src/mat/solve.ts';
import { board, jobOf, layer, opening } from './job.ts';

/** Lengths that no reader lets through stand beside those that it does. */
const length = fc.oneof(
  fc.double({ min: 0.1, max: 600, noNaN: true }),
  fc.constantFrom(0, -1, 1e-12, 1e308, -1e308, Number.NaN, Number.POSITIVE_INFINITY, 5000),
);
const size = fc.record({ width: length, height: length });
const sides: fc.Arbitrary<SomeSides> = fc
  .tuple(
    ...SIDES.map((side) =>
      fc.option(
        length.map((mm) => ({ [side]: mm })),
        { nil: {} },
      ),
    ),
  )
  .map((parts) => Object.assign({}, ...parts));
/** Keys with undefined values are left out: a job has none. */
const part = <T>(key: string, value: fc.Arbitrary<T>) =>
  fc.option(
    value.map((each) => ({ [key]: each })),
    { nil: {} },
  );

const job = fc
  .record({
    opening: fc.tuple(part('artwork', size), part('size', size), part('overlap', sides), part('float', sides)),
    mat: fc.tuple(
      part('outer', size),
      part('border', sides),
      part('frame', fc.record({ inside: size, clearance: length, lip: length })),
      part(
        'weighting',
        fc.oneof(
          fc.constantFrom({ kind: 'none' }, { kind: 'diagonal' }),
          length.map((mm) => ({ kind: 'add', length: mm })),
          length.map((ratio) => ({ kind: 'ratio', ratio })),
        ),
      ),
    ),
    layers: fc.array(
      fc.record({
        thickness: length,
        angle: fc.oneof(length, fc.constantFrom(45, 90)),
        reverse: fc.boolean(),
        reveal: fc.option(length),
        trimBack: length,
      }),
      { maxLength: 3 },
    ),
    measure: fc.constantFrom('face' as const, 'sight' as const),
    snap: fc.boolean(),
    graduation: length,
    stack: fc.constantFrom('together' as const, 'apart' as const),
  })
  .map((drawn) =>
    jobOf({
      units: 'mm',
      openings: [opening({ measure: drawn.measure, ...Object.assign({}, ...drawn.opening) })],
      mat: {
        ...Object.assign({}, ...drawn.mat),
        layers: drawn.layers.map(({ thickness, angle, reverse, reveal, trimBack }, index) =>
          layer({
            board: board(thickness),
            bevel: { angle, reverse },
            trimBack,
            ...(reveal === null || index === 0 ? {} : { reveal }),
          }),
        ),
      },
      bench: { snap: drawn.snap, graduation: drawn.graduation, stack: drawn.stack },
    }),
  );

function numbersIn(value: unknown): readonly number[] {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

describe('any job at all', () => {
  it('is solved in finite numbers or told of, and never throws', () => {
    fc.assert(
      fc.property(job, (each) => {
        const result = solve(each);
        if (!result.ok) {
          expect(result.problems.some((problem) => problem.severity === 'error')).toBe(true);
          return;
        }
        for (const number of numbersIn({ ...result.value, layers: [] })) expect(Number.isFinite(number)).toBe(true);
        expect(result.value.openings[0]!.sight.width).toBeGreaterThan(0);
        expect(result.value.openings[0]!.sight.height).toBeGreaterThan(0);
      }),
      { numRuns: 1500 },
    );
  });
});
