import { describe, expect, it } from 'vitest';
import { hingeBoxes } from '../../src/bench/hinges.ts';
import { END_TOLERANCE, tolerance } from '../../src/bench/tolerances.ts';
import { checks } from '../../src/documents/ticket/checks.ts';
import { solveJob } from '../../src/index.ts';

/** Middles of the tabs behind an artwork that lies 40 from the left and 60 from the top. */
const middles = (width: number, floated = false): readonly number[] =>
  hingeBoxes({ x: 40, y: 60, width, height: 200 }, floated).behind.map((tab) => tab.x + tab.width / 2 - 40);

describe('hinges', () => {
  it.each([
    // A sixth of the width from each upper corner.
    [300, [50, 250]],
    // No nearer than 30 and no farther than 110 from it.
    [150, [30, 120]],
    [480, [80, 400]],
    // One in the middle too where the work is wider than 500.
    [600, [100, 300, 500]],
    [900, [110, 450, 790]],
    // A quarter of it where 30 would be more.
    [80, [20, 60]],
  ])('of a work %i mm wide stand at %j', (width, places) => {
    expect(middles(width)).toEqual(places);
    expect(middles(width, true)).toEqual(places);
  });

  it('reach up from behind the work, with a strip across above it; for a float they stay behind', () => {
    const { behind, above } = hingeBoxes({ x: 40, y: 60, width: 300, height: 200 }, false);
    for (const tab of behind) expect([tab.y, tab.height, tab.width]).toEqual([60, 6, 25]);
    expect(above).toHaveLength(4);
    for (const part of above) expect(part.y + part.height).toBeLessThanOrEqual(60 + 1e-9);
    const float = hingeBoxes({ x: 40, y: 60, width: 300, height: 200 }, true);
    expect(float.above).toEqual([]);
    // Three below the work's edge, half as high as a tab; of a low work no more than a third.
    for (const tab of float.behind) expect([tab.y, tab.height, tab.width]).toEqual([63, 16, 25]);
    const low = hingeBoxes({ x: 40, y: 60, width: 300, height: 24 }, true);
    for (const tab of low.behind) expect([tab.y, tab.height]).toEqual([63, 8]);
  });
});

describe('what may be off', () => {
  it('is 1/32 in or 0.8 mm of sizes and diagonals, half of that of reveals, 0.25 mm at the test corner (common practice, no source)', () => {
    expect([tolerance('size', 'in'), tolerance('diagonal', 'in'), tolerance('reveal', 'in')]).toEqual([
      0.79375, 0.79375, 0.396875,
    ]);
    for (const units of ['mm', 'cm'] as const)
      expect([tolerance('size', units), tolerance('diagonal', units), tolerance('reveal', units)]).toEqual([
        0.8, 0.8, 0.4,
      ]);
    expect(END_TOLERANCE).toBe(0.25);
  });

  it.each([
    ['in', '16 x 20', '1/4', ['¹⁄₃₂ in', '¹⁄₃₂ in', '¹⁄₆₄ in', '0.01 in']],
    ['mm', '400 x 500', '6', ['0.8 mm', '0.8 mm', '0.4 mm', '0.25 mm']],
    ['cm', '40 x 50', '0.6', ['0.08 cm', '0.08 cm', '0.04 cm', '0.025 cm']],
  ])('stands on the ticket in the unit of the job: %s', (units, outer, reveal, [diagonal, size, reveals, end]) => {
    const solved = solveJob(
      `units: ${units}\nmat: {outer: ${outer}, layers: [{}, {reveal: ${reveal}}]}\nopenings: [{artwork: ${units === 'in' ? '10 x 13' : units === 'cm' ? '25 x 33' : '250 x 330'}}]\n`,
    );
    if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
    const rows = checks(solved.value.mat, solved.value.job);
    const of = (what: string) =>
      [...new Set(rows.filter((row) => row.what.startsWith(what)).map((row) => row.tolerance))].map((text) =>
        text.replace('\u2009', ' '),
      );
    expect(of('Diagonals')).toEqual([diagonal]);
    expect(of('Opening')).toEqual([size]);
    expect(of('Borders')).toEqual([size]);
    expect(of('Reveal')).toEqual([reveals]);
    expect(of('Seen')).toEqual([size]);
    expect(of('Test corner')).toEqual([end]);
  });
});
