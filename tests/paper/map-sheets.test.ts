import { expect, it } from 'vitest';
import { scaleFigure } from '../../src/paper/furniture/scale-figure.ts';
import type { Plan } from '../../src/paper/plan.ts';
import { mapSheets } from '../../src/paper/plan-pages.ts';

it('sheets on the map meet in the middle of their laps and show no more beyond the outermost', () => {
  const plan: Plan = {
    sheet: {} as Plan['sheet'],
    orientation: { rotation: 0, width: 300, height: 200 },
    x: -5,
    y: -7,
    pitchX: 90,
    pitchY: 66,
    width: 100,
    height: 80,
    rows: 2,
    columns: 3,
    cells: [0, 1].flatMap((row) => [0, 1, 2].map((column) => ({ row, column }))),
  };
  // Laps are 10 across and 14 down; sheets begin at −5, 85, 175 and at −7, 59.
  expect(mapSheets(plan).map(({ box: { x, y, width, height } }) => [x, y, width, height])).toEqual([
    [-5, -7, 95, 73],
    [90, -7, 90, 73],
    [180, -7, 95, 73],
    [-5, 66, 95, 73],
    [90, 66, 90, 73],
    [180, 66, 95, 73],
  ]);
});

it('the figure to measure is as large as its lines reach, and a millimetre more', () => {
  const figure = scaleFigure(200, 200, 'check')!;
  const ends = figure.items.flatMap((item) => (item.kind === 'line' ? [item.from, item.to] : []));
  const [across, down] = [Math.max(...ends.map(({ x }) => x)), Math.max(...ends.map(({ y }) => y))];
  expect([figure.width - across, figure.height - down]).toEqual([expect.closeTo(1, 6), expect.closeTo(1, 6)]);
});
