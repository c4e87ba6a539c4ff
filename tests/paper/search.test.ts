import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lapX, lapY } from '../../src/paper/plan.ts';
import { fewestFor } from '../../src/paper/search/leftover.ts';
import { wholePlan } from '../../src/paper/search/whole.ts';
import { findPaper } from '../../src/papers/find.ts';
import { FONTS } from '../fonts/loaded.ts';
import { allShown, fewestByTrial, raster } from './brute-force.ts';
import { drawnPoints, even, isShown, laid, sheetsIn } from './laid.ts';
import { LARGE, linesOnly, MIDDLING, ringMat } from './sample.ts';

const PAPERS = ['letter', 'a4', 'legal', 'a3', 'tabloid', '200 x 250 mm'] as const;
const CELL = 1;
const MARGIN = 6;
const LAP = 13;

const sizeOf = (name: string): { width: number; height: number } => {
  const found = findPaper(name);
  if (!found.ok || found.value.kind !== 'sheet') throw new Error(name);
  // Whole millimetres, so that the raster of the brute force says the same as the search.
  return { width: Math.floor(found.value.width), height: Math.floor(found.value.height) };
};

const shape = fc
  .record({
    width: fc.integer({ min: 150, max: 700 }),
    height: fc.integer({ min: 150, max: 900 }),
    top: fc.integer({ min: 30, max: 70 }),
    right: fc.integer({ min: 30, max: 70 }),
    bottom: fc.integer({ min: 30, max: 70 }),
    left: fc.integer({ min: 30, max: 70 }),
  })
  .map((ring) => linesOnly(ringMat(ring)));

describe('the fewest sheets', () => {
  it('no origin on a fine grid, in either orientation, upright or turned, takes fewer: 200 mats on 6 papers', () => {
    let better = 0;
    fc.assert(
      fc.property(shape, (work) => {
        const { drawing } = work;
        const rasters = [raster(drawing, CELL, false), raster(drawing, CELL, true)];
        for (const name of PAPERS) {
          const paper = sizeOf(name);
          const plan = wholePlan(work, paper, LAP, { margin: even(MARGIN), join: 'lap', fonts: FONTS })!;
          const [wide, high] = [paper.width - 2 * MARGIN, paper.height - 2 * MARGIN];
          // A quarter turn of the paper and of the pattern together is the same grid, so two of the four suffice.
          const tried = Math.min(
            fewestByTrial(rasters[0]!, { wide, high }, LAP, 9),
            fewestByTrial(rasters[1]!, { wide, high }, LAP, 9),
          );
          expect(plan.cells.length, `${name}: ${drawing.width} × ${drawing.height}`).toBeLessThanOrEqual(tried);
          if (plan.cells.length < tried) better++;
          // And nothing is lost for it.
          const [w, h] = [plan.width, plan.height];
          const windows = plan.cells.map(({ row, column }) => {
            const [x, y] = [plan.x + column * plan.pitchX, plan.y + row * plan.pitchY];
            return { x0: x / CELL, y0: y / CELL, x1: (x + w) / CELL, y1: (y + h) / CELL };
          });
          expect(allShown(rasters[plan.orientation.rotation === 0 ? 0 : 1]!, windows, 0.5)).toBe(true);
        }
      }),
      { numRuns: 200, seed: 20 },
    );
    // The coarse grid of trials misses some, or the comparison would prove little.
    expect(better).toBeGreaterThan(0);
  }, 240_000);

  it.each([
    ['32 × 40 in, 4 in borders, on Letter', LARGE, 'letter', 14],
    ['16 × 20 in on Letter', MIDDLING, 'letter', 6],
    ['16 × 20 in on A3', MIDDLING, 'a3', 2],
    ['16 × 20 in on A2', MIDDLING, 'a2', 1],
    ['16 × 20 in on ARCH C', MIDDLING, 'arch-c', 1],
  ] as const)('%s: %#', (_, work, paper, sheets) => {
    expect(laid(work, paper).sheets).toBe(sheets);
  });

  it('leaves out the blank middle of a ring, and says how many', () => {
    const layout = laid(LARGE, 'letter');
    expect(layout.skipped).toBe(6);
    expect(layout.summary).toContain('15 pages of Letter: 14 sheets (6 blank');
    expect(layout.summary).toContain('6 blank ones left out');
  });

  it('shows every point of the drawing on some sheet, for both joins', () => {
    for (const join of ['lap', 'butt'] as const) {
      for (const paper of ['letter', 'a4', '120 x 160 mm']) {
        const sheets = sheetsIn(laid(LARGE, paper, { join }));
        expect(drawnPoints(LARGE.drawing).every((p) => sheets.some((sheet) => isShown(p, sheet)))).toBe(true);
      }
    }
  });

  it('lays the paper on its side rather than turn the pattern, where both take as many', () => {
    const strip = linesOnly(ringMat({ width: 500, height: 180, top: 40, right: 40, bottom: 40, left: 40 }));
    const [sheet] = sheetsIn(laid(strip, 'a4'));
    expect(sheet!.rotation).toBe(0);
    expect(sheet!.paper).toEqual({ width: 297, height: 210 });
  });

  it('turns the pattern where margins make one way of laying the paper better than the other', () => {
    const strip = linesOnly(ringMat({ width: 500, height: 180, top: 40, right: 40, bottom: 40, left: 40 }));
    // Upright, 191 × 270 mm can be drawn on: two of them show 527 mm. On its side, two show 497 mm, and 502 are needed.
    const margin = { top: 5, bottom: 5, left: 5, right: 20 };
    const layout = laid(strip, '216 x 280 mm', { margin });
    expect(layout.sheets).toBe(2);
    expect(sheetsIn(layout)[0]!.rotation).toBe(90);
  });
});

describe('laps', () => {
  it('are never less than asked, and grow where that costs nothing', () => {
    fc.assert(
      fc.property(shape, fc.constantFrom(...PAPERS), fc.integer({ min: 6, max: 30 }), (work, name, lap) => {
        const plan = wholePlan(work, sizeOf(name), lap, { margin: even(MARGIN), join: 'lap', fonts: FONTS })!;
        expect(lapX(plan)).toBeGreaterThanOrEqual(lap - 1e-9);
        expect(lapY(plan)).toBeGreaterThanOrEqual(lap - 1e-9);
        expect(Math.max(lapX(plan), lapY(plan))).toBeLessThanOrEqual(2 * lap + 1e-9);
      }),
      { numRuns: 60 },
    );
  });

  it('twice as wide for two sheets with room to spare', () => {
    const plan = wholePlan(
      linesOnly(ringMat({ width: 150, height: 300, top: 40, right: 40, bottom: 40, left: 40 })),
      sizeOf('a4'),
      12,
      { margin: even(6), join: 'lap', fonts: FONTS },
    )!;
    expect(plan.cells).toHaveLength(2);
    expect(Math.max(lapX(plan), lapY(plan))).toBeCloseTo(24, 9);
  });
});

describe('what lies in laps only', () => {
  it('goes to the fewest sheets, as every subset tried shows', () => {
    const strips = fc.array(fc.uniqueArray(fc.integer({ min: 0, max: 8 }), { minLength: 1, maxLength: 4 }), {
      maxLength: 9,
    });
    fc.assert(
      fc.property(strips, (sets) => {
        let least = Number.POSITIVE_INFINITY;
        for (let mask = 0; mask < 512; mask++) {
          const size = mask.toString(2).replaceAll('0', '').length;
          if (size < least && sets.every((set) => set.some((sheet) => (mask & (1 << sheet)) !== 0))) least = size;
        }
        const found = fewestFor(sets, 9)!;
        expect(found).toHaveLength(least);
        expect(sets.every((set) => set.some((sheet) => found.includes(sheet)))).toBe(true);
        if (least > 0) expect(fewestFor(sets, least - 1)).toBeUndefined();
      }),
    );
  });

  it('many strips still all get a sheet, no sheet in vain', () => {
    const strip = fc.uniqueArray(fc.integer({ min: 0, max: 60 }), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(fc.array(strip, { minLength: 60, maxLength: 120 }), (sets) => {
        const found = fewestFor(sets, 1000)!;
        expect(sets.every((set) => set.some((sheet) => found.includes(sheet)))).toBe(true);
        expect(new Set(found).size).toBe(found.length);
        expect(fewestFor(sets, found.length - 20)).toBeUndefined();
      }),
      { numRuns: 50 },
    );
  });
});
