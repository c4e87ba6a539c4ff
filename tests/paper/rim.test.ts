import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Box, bottom, box, right } from '../../src/geometry/box.ts';
import { Axis } from '../../src/paper/search/axis.ts';
import { bandsOf, shownOf, stepsOf } from '../../src/paper/search/bands.ts';
import { type Columns, type Rows, SheetCount } from '../../src/paper/search/count.ts';
import { goesRound, reachOf, rimOf, sheetsOnRim } from '../../src/paper/search/rim.ts';
import { DrawnSquares } from '../../src/paper/search/squares.ts';

/** The four edges of a board as lines of a width, and other things within it. */
function ring(width: number, height: number, pen: number, inside: readonly Box[]): readonly Box[] {
  const half = pen / 2;
  return [
    ...inside,
    box(0, -half, width, pen),
    box(0, height - half, width, pen),
    box(-half, 0, pen, height),
    box(width - half, 0, pen, height),
  ];
}

function axesOf(boxes: readonly Box[]) {
  const x = new Axis(
    boxes.map((b) => [b.x, right(b)]),
    [],
  );
  const y = new Axis(
    boxes.map((b) => [b.y, bottom(b)]),
    [],
  );
  return { x, y, bands: bandsOf(x.lows, x.highs, y.lows, y.highs), rim: rimOf(x, y) };
}

function gridOf(boxes: readonly Box[], origin: readonly [number, number], pitch: number, lap: number) {
  const { x, y, bands, rim } = axesOf(boxes);
  const h = x.zones(origin[0], pitch, lap);
  const v = y.zones(origin[1], pitch, lap);
  const columns: Columns = {
    zones: h,
    reach: reachOf(x, h, [rim.top, rim.bottom], rim.left, rim.right),
    shown: () => shownOf(h, bands),
  };
  const rows: Rows = {
    zones: v,
    reach: reachOf(y, v, [rim.left, rim.right], rim.top, rim.bottom),
    steps: () => stepsOf(v, bands),
  };
  return { columns, rows, squares: () => new DrawnSquares(x, y) };
}

const spot = fc.record({
  x: fc.integer({ min: 1, max: 400 }),
  y: fc.integer({ min: 1, max: 400 }),
  width: fc.integer({ min: 1, max: 60 }),
  height: fc.integer({ min: 1, max: 60 }),
});

test('counting by the rim says the same as counting everything', () => {
  const seen = { all: 0, some: 0, none: 0, ends: 0 };
  fc.assert(
    fc.property(
      fc.integer({ min: 30, max: 500 }),
      fc.integer({ min: 30, max: 500 }),
      fc.constantFrom(0.2, 0.3, 3, 3.8),
      fc.array(spot, { maxLength: 8 }),
      fc.tuple(fc.integer({ min: -180, max: 0 }), fc.integer({ min: -180, max: 0 })),
      fc.integer({ min: 40, max: 180 }),
      fc.integer({ min: 0, max: 18 }),
      fc.integer({ min: 1, max: 60 }),
      (width, height, pen, spots, origin, pitch, lap, most) => {
        const inside = spots.filter((b) => right(b) < width && bottom(b) < height);
        const { columns, rows, squares } = gridOf(ring(width, height, pen, inside), origin, pitch, lap);
        const [quick, slow, both] = [new SheetCount(), new SheetCount(), new SheetCount(squares)];
        const counted = slow.count({ ...columns, reach: 'less' }, rows, most);
        expect(quick.count(columns, rows, most)).toBe(counted);
        expect(both.count(columns, rows, most)).toBe(counted);
        const rimmed = goesRound(columns.reach, rows.reach);
        if (rimmed && columns.reach !== rows.reach) seen.ends++;
        const [across, down] = [columns.zones.to - columns.zones.from + 1, rows.zones.to - rows.zones.from + 1];
        seen[!rimmed ? 'none' : sheetsOnRim(down, across) === across * down ? 'all' : 'some']++;
        if (counted <= most)
          for (const each of [quick, both])
            expect(each.cells(columns.zones, rows.zones)).toEqual(slow.cells(columns.zones, rows.zones));
      },
    ),
    { numRuns: 8000, seed: 5 },
  );
  // Each way through the counting was taken.
  expect(Math.min(...Object.values(seen))).toBeGreaterThan(20);
});

test('four edges go round whatever the pen, and a drawing without edges does not', () => {
  const edges = gridOf(ring(400, 500, 0.3, []), [-20, -20], 150, 10);
  expect([edges.columns.reach, edges.rows.reach]).toEqual(['whole', 'whole']);
  const corners = [box(0, 0, 30, 30), box(370, 0, 30, 30), box(0, 470, 30, 30), box(370, 470, 30, 30)];
  const open = gridOf(corners, [-20, -20], 150, 10);
  expect(goesRound(open.columns.reach, open.rows.reach)).toBe(false);
  expect(new SheetCount().count(open.columns, open.rows, 20)).toBe(4);
});

test('of many columns each sheet that shows something is counted, and no other', () => {
  // More than two words of bits, a small thing in the middle of each sheet of a random set.
  const cell = fc.record({ row: fc.nat(4), column: fc.nat(69) });
  fc.assert(
    fc.property(
      fc.uniqueArray(cell, { minLength: 1, maxLength: 60, selector: (c) => c.row * 70 + c.column }),
      (set) => {
        const boxes = set.map(({ row, column }) => box(10 * column + 4, 10 * row + 4, 2, 2));
        const { columns, rows } = gridOf(boxes, [0, 0], 10, 0);
        const count = new SheetCount();
        expect(count.count({ ...columns, reach: 'less' }, rows, 400)).toBe(set.length);
        const found = count.cells(columns.zones, rows.zones).map(({ row, column }) => row * 70 + column);
        expect([...found].sort((a, b) => a - b)).toEqual(
          set.map(({ row, column }) => row * 70 + column).sort((a, b) => a - b),
        );
      },
    ),
    { numRuns: 100 },
  );
});

test('of many columns what lies in a lap alone takes one of its two sheets', () => {
  // In the lap before sheet k of a row: either that or the one before it shows it, and two laps side by side share one.
  for (const [laps, sheets] of [
    [[3], 1],
    [[31], 1],
    [[30, 60], 2],
    [[3, 4, 30, 31, 32, 62, 63], 4],
  ] as const) {
    const boxes = laps.map((k) => box(10 * k + 0.5, 14, 1, 1));
    const { columns, rows } = gridOf(boxes, [0, 0], 10, 2);
    const count = new SheetCount();
    expect(count.count({ ...columns, reach: 'less' }, rows, 400)).toBe(sheets);
    const shown = count.cells(columns.zones, rows.zones).map(({ column }) => column);
    expect(shown).toHaveLength(sheets);
    for (const k of laps) expect(shown.some((column) => column === k || column === k - 1)).toBe(true);
  }
  // What is kept for a thing of its own shows the laps at both of its ends, in whatever row and column it stands.
  for (const k of [3, 29, 30, 31, 59, 60, 61]) {
    const boxes = [box(10 * k + 5, 34, 1, 1), box(10 * k + 0.5, 36, 1, 1), box(10 * k + 10.5, 36, 1, 1)];
    const { columns, rows } = gridOf([box(5, 4, 1, 1), ...boxes], [0, 0], 10, 2);
    const count = new SheetCount();
    expect(count.count({ ...columns, reach: 'less' }, rows, 400)).toBe(2);
    expect(count.cells(columns.zones, rows.zones)).toEqual([
      { row: 0, column: 0 },
      { row: 3, column: k },
    ]);
  }
});
