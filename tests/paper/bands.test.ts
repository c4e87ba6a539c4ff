import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Bands, BITS, bandsOf, bitsIn, shownOf, stepsOf } from '../../src/paper/search/bands.ts';
import { EPSILON, type Zones } from '../../src/paper/search/zones.ts';

interface Drawn {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

const bandsFor = (drawn: readonly Drawn[]): Bands => {
  const numbers = (of: (each: Drawn) => number): Float64Array => Float64Array.from(drawn, of);
  return bandsOf(
    numbers(({ left }) => left),
    numbers(({ left, width }) => left + width),
    numbers(({ top }) => top),
    numbers(({ top, height }) => top + height),
  );
};

const whole = (min: number, max: number) => fc.integer({ min, max });
const drawn = fc.array(
  fc.record({ left: whole(0, 300), top: whole(0, 90), width: whole(0, 200), height: whole(0, 40) }),
  {
    minLength: 1,
    maxLength: 30,
  },
);
/** Sheets of 10 mm with laps of 3, so many of them that one word does not hold them. */
const across: Zones = { origin: -4, pitch: 7, lap: 3, from: 0, to: 75 };

/** Whether a sheet shows any of a stretch alone, and whether the lap before it does: by their places, not by zones. */
function shownBy(sheet: number, { left, width }: Drawn): readonly [alone: boolean, lap: boolean] {
  const begin = across.origin + sheet * across.pitch;
  const [from, to] = [left + EPSILON, Math.max(left + EPSILON, left + width - EPSILON)];
  const meets = (low: number, high: number): boolean => from < high && to >= low;
  return [meets(begin + across.lap, begin + across.pitch), meets(begin, begin + across.lap)];
}

describe('what is drawn over columns', () => {
  it('changes at places that rise, each told once', () => {
    fc.assert(
      fc.property(drawn, (boxes) => {
        const places = [...bandsFor(boxes).places];
        const wished = boxes.flatMap(({ top, height }) => [
          top + EPSILON,
          Math.max(top + EPSILON, top + height - EPSILON),
        ]);
        expect(places).toEqual([...new Set(wished)].sort((a, b) => a - b));
      }),
      { numRuns: 100 },
    );
  });

  it('is told step by step downwards as looking at every box tells it, and for many steps at once', () => {
    let some = 0;
    fc.assert(
      fc.property(drawn, whole(0, 120), whole(0, 60), (boxes, from, more) => {
        const bands = bandsFor(boxes);
        const { own, laps, words } = shownOf(across, bands);
        expect(words).toBe(Math.ceil((across.to + 2) / BITS));
        const { places } = bands;
        const steps = 2 * places.length - 1;
        const at = (step: number): number =>
          step % 2 === 0 ? places[step / 2]! : (places[(step - 1) / 2]! + places[(step + 1) / 2]!) / 2;
        const open = (step: number): readonly Drawn[] =>
          boxes.filter(({ top, height }) => {
            const y = at(step);
            return y >= top + EPSILON && y <= Math.max(top + EPSILON, top + height - EPSILON);
          });
        // Boxes of one band that touch are one stretch: the hair between them counts as drawn.
        const apart = new Set(boxes.map(({ left, width }) => `${left} ${width}`)).size === boxes.length;
        const until = Math.min(steps, from + more);
        for (let sheet = 0; sheet <= across.to; sheet++) {
          const [word, bit] = [Math.floor(sheet / BITS), 1 << (sheet % BITS)];
          const [alone, lap] = [0, 1].map((which) =>
            Array.from({ length: Math.max(0, until - from) }, (_, i) => open(from + i)).some((all) =>
              all.some((each) => shownBy(sheet, each)[which]),
            ),
          );
          const [a, b] = [own, laps].map((levels) => (bitsIn(levels, words, word, from, until) & bit) !== 0);
          if (!apart) continue;
          expect([a, b], `sheet ${sheet}, steps ${from} to ${until}`).toEqual([alone, lap]);
          if (a || b) some++;
        }
      }),
      { numRuns: 60 },
    );
    expect(some).toBeGreaterThan(200);
  });

  it('has its steps in rows of sheets: the places in each, or what lies between two', () => {
    const bands = bandsFor([{ left: 0, top: 10, width: 5, height: 30 }]);
    // Places at 10 and 40, which are steps 0 and 2; rows of 9 mm with laps of 2, so that zones begin at 0, 2, 9, 11 …
    const down: Zones = { origin: 0, pitch: 9, lap: 2, from: 0, to: 4 };
    const ranges = [...stepsOf(down, bands)];
    const of = (zone: number): readonly number[] => ranges.slice(2 * zone, 2 * zone + 2);
    expect([of(0), of(1)]).toEqual([
      [0, 0],
      [0, 0],
    ]);
    expect(of(2)).toEqual([0, 1]);
    for (const zone of [3, 4, 5, 6, 7, 8]) expect(of(zone), `${zone}`).toEqual([1, 2]);
    expect(of(9)).toEqual([2, 3]);
    expect(ranges).toHaveLength(22);
  });
});
