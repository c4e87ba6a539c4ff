import { expect, it } from 'vitest';
import { box, centre, contains, overlaps } from '../../src/geometry/box.ts';
import { pathBox } from '../../src/geometry/extent.ts';
import { assemblyMap } from '../../src/paper/furniture/assembly-map.ts';
import { FONTS } from '../fonts/loaded.ts';
import { ringMat } from './sample.ts';

/** A drawing of 402 × 302 mm on two sheets by two, on a map half as large and 0.2 mm in; one sheet is not printed. */
const { drawing } = ringMat({ width: 400, height: 300, top: 80, right: 80, bottom: 80, left: 80 });
const SHEETS = [
  { name: 'A1', box: box(0, 0, 201, 151), skipped: false },
  { name: 'A2', box: box(201, 0, 201, 151), skipped: false },
  { name: 'B1', box: box(0, 151, 201, 151), skipped: true },
  { name: 'B2', box: box(201, 151, 201, 151), skipped: false },
];

it('shows every sheet at its place, its name on a patch within it, and none on a sheet that is not printed', () => {
  const { items, width, height } = assemblyMap(
    { work: { drawing, facts: [] }, orientation: { rotation: 0, width: 402, height: 302 }, sheets: SHEETS },
    { width: 201.4, height: 400 },
    FONTS,
  );
  expect([width, height]).toEqual([expect.closeTo(201.4, 9), expect.closeTo(151.4, 9)]);
  const small = new Map(SHEETS.map(({ name, box: b }) => [name, box(0.2 + b.x / 2, 0.2 + b.y / 2, 100.5, 75.5)]));
  const filled = items.flatMap((item) =>
    item.kind === 'path' && item.fill !== undefined ? [{ fill: item.fill, area: pathBox(item.paths[0]!) }] : [],
  );
  // Grey lies the one that is skipped, and no more.
  expect(
    filled.filter(({ fill }) => fill === 0.86).map(({ area }) => Object.values(area).map((n) => +n.toFixed(6))),
  ).toEqual([Object.values(small.get('B1')!)]);
  const names = items.flatMap((item) => (item.kind === 'text' ? [item] : []));
  expect(names.map(({ text }) => text)).toEqual(['A1', 'A2', 'B2']);
  for (const { text, at, size } of names) {
    const letters = box(at.x, at.y - 0.7 * size, 1.1 * size, 0.7 * size);
    expect(contains(small.get(text)!, letters)).toBe(true);
    expect(filled.some(({ fill, area }) => fill === 1 && contains(area, letters))).toBe(true);
  }
});

it('numbers each line to measure on a white square of 3 mm whose middle lies on it, and no two squares overlap', () => {
  const facts = [0, 1].map(() => ({
    from: { x: 20, y: 30 },
    to: { x: 380, y: 270 },
    label: 'corner to corner',
    length: 433,
    shown: '433 mm',
    group: 'cut',
  }));
  const { items } = assemblyMap(
    { work: { drawing, facts }, orientation: { rotation: 0, width: 402, height: 302 }, sheets: SHEETS },
    { width: 201.4, height: 400 },
    FONTS,
  );
  const squares = items.flatMap((item) => {
    if (item.kind !== 'path' || item.fill !== 1) return [];
    const area = pathBox(item.paths[0]!);
    return Math.abs(area.width - 3) < 1e-9 && Math.abs(area.height - 3) < 1e-9 ? [area] : [];
  });
  expect(squares).toHaveLength(2);
  for (const square of squares) {
    const middle = centre(square);
    // On the map all is half as large and 0.2 mm in: the line runs from 10.2, 15.2 with a slope of two thirds.
    expect(middle.y - 15.2).toBeCloseTo(((middle.x - 10.2) * 2) / 3, 6);
    expect(middle.x).toBeGreaterThan(10.2);
    expect(middle.x).toBeLessThan(190.2);
  }
  expect(overlaps(squares[0]!, squares[1]!)).toBe(false);
});
