import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Box, bottom, box, right } from '../../src/geometry/box.ts';
import { Axis } from '../../src/paper/search/axis.ts';
import { bandsOf, shownOf, stepsOf } from '../../src/paper/search/bands.ts';
import { SheetCount } from '../../src/paper/search/count.ts';
import { DrawnSquares } from '../../src/paper/search/squares.ts';
import { once } from '../../src/problems/once.ts';

function seen(boxes: readonly Box[]) {
  const x = new Axis(
    boxes.map((b) => [b.x, right(b)]),
    [],
  );
  const y = new Axis(
    boxes.map((b) => [b.y, bottom(b)]),
    [],
  );
  return { x, y, bands: once(() => bandsOf(x.lows, x.highs, y.lows, y.highs)), squares: new DrawnSquares(x, y) };
}

/** A grid none of whose sheets the rim tells of. */
function grid(
  { x, y, bands }: ReturnType<typeof seen>,
  [left, top]: readonly [number, number],
  pitch: number,
  lap: number,
) {
  const [across, down] = [x.zones(left, pitch, lap), y.zones(top, pitch, lap)];
  return {
    columns: { zones: across, reach: 'less' as const, shown: () => shownOf(across, bands()) },
    rows: { zones: down, reach: 'less' as const, steps: () => stepsOf(down, bands()) },
  };
}

const at = fc.double({ min: 0, max: 500, noNaN: true });
const long = fc.oneof(fc.constant(0), fc.constant(0.18), fc.double({ min: 0, max: 120, noNaN: true }));
const drawn = fc.record({ x: at, y: at, width: long, height: long });

/** Full everywhere. */
const rows = (apart: number): readonly Box[] =>
  Array.from({ length: 400 }, (_, i) => box(apart * (i % 20), apart * Math.floor(i / 20), apart / 2, 0.2));

test('squares never count a sheet that is not needed, and the count with them is the count without', () => {
  const told = { all: 0, more: 0, some: 0 };
  fc.assert(
    fc.property(
      fc.oneof(fc.array(drawn, { minLength: 1, maxLength: 200 }), fc.constantFrom(30, 55).map(rows)),
      fc.tuple(at, at),
      fc.double({ min: 40, max: 260, noNaN: true }),
      fc.double({ min: 0, max: 20, noNaN: true }),
      fc.integer({ min: 1, max: 60 }),
      (boxes, origin, pitch, lap, most) => {
        const all = seen(boxes);
        const { columns, rows } = grid(all, origin, pitch, lap);
        const [quick, slow] = [new SheetCount(() => all.squares), new SheetCount()];
        const counted = slow.count(columns, rows, Number.MAX_SAFE_INTEGER);
        expect(quick.count(columns, rows, Number.MAX_SAFE_INTEGER)).toBe(counted);
        expect(quick.cells(columns.zones, rows.zones)).toEqual(slow.cells(columns.zones, rows.zones));
        expect(quick.count(columns, rows, most)).toBe(Math.min(counted, most + 1));
        const needed = all.squares.neededBy(columns.zones, rows.zones, false);
        expect(needed).toBeLessThanOrEqual(counted);
        const { from, to } = columns.zones;
        if (needed === (to - from + 1) * (rows.zones.to - rows.zones.from + 1)) told.all++;
        else if (needed > most) told.more++;
        else if (needed > 0) told.some++;
      },
    ),
    { numRuns: 1000 },
  );
  expect(Math.min(told.all, told.more, told.some)).toBeGreaterThan(30);
});

test('a line in the middle of each sheet tells that each is needed; where laps lie it tells nothing', () => {
  const lines = [0, 1, 2].map((i) => box(100 * i + 60, 20, 0.2, 60));
  const all = seen([...lines, box(0, 50, 300, 0.2)]);
  const needed = (left: number) => all.squares.neededBy(all.x.zones(left, 100, 20), all.y.zones(0, 100, 20), false);
  expect([needed(0), needed(-45)]).toEqual([3, 4]);
  const few = seen([box(0, 0, 0.2, 100), box(300, 0, 0.2, 100)]);
  // What lies on an edge of its sheet has no square of it within.
  expect(few.squares.neededBy(few.x.zones(0, 100, 20), few.y.zones(0, 100, 20), false)).toBe(0);
});
