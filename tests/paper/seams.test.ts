import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawnBox } from '../../src/drawing/bounds.ts';
import type { AvoidBox, FullScale } from '../../src/drawing/full-scale.ts';
import type { Drawing } from '../../src/drawing/model.ts';
import type { Box } from '../../src/geometry/box.ts';
import { seamsOf } from '../../src/paper/seams.ts';
import { wholePlan } from '../../src/paper/search/whole.ts';
import { FONTS } from '../fonts/loaded.ts';
import { raster, type Trial, trials } from './brute-force.ts';
import { even } from './laid.ts';
import { linesOnly, MIDDLING, ringMat } from './sample.ts';

const A4 = { width: 210, height: 297 };
const LAP = 13;
const MARGIN = 6;
/** A seam comes no nearer to what it keeps off than this, mm, but for the last digit. */
const CLEAR = 1.5 - 1e-6;
const WEIGHTS: Record<AvoidBox['why'], number> = { corner: 1e9, tick: 1e6, reading: 1e3, text: 1 };

/** One stretch of join line: `at` across it, from `from` to `to` along it. */
interface Stretch {
  readonly upright: boolean;
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

function costOf(stretches: readonly Stretch[], avoid: readonly { box: Box; why: AvoidBox['why'] }[]): number {
  return avoid
    .filter(({ box: b }) =>
      stretches.some(({ upright, at, from, to }) => {
        const [low, high, start, end] = upright
          ? [b.x, b.x + b.width, b.y, b.y + b.height]
          : [b.y, b.y + b.height, b.x, b.x + b.width];
        return at > low - CLEAR && at < high + CLEAR && from < end + CLEAR && to > start - CLEAR;
      }),
    )
    .reduce((sum, { why }) => sum + WEIGHTS[why], 0);
}

function stretchesOf({ x, y, columns, kept }: Trial, wide: number, high: number): readonly Stretch[] {
  const [pitchX, pitchY] = [wide - LAP, high - LAP];
  return [...kept].flatMap((one): Stretch[] => {
    const [c, row] = [one % columns, Math.floor(one / columns)];
    const [left, top] = [x + c * pitchX, y + row * pitchY];
    return [
      ...(c < columns - 1 && kept.has(one + 1)
        ? [{ upright: true, at: left + pitchX + LAP / 2, from: top, to: top + high }]
        : []),
      ...(kept.has(one + columns) ? [{ upright: false, at: top + pitchY + LAP / 2, from: left, to: left + wide }] : []),
    ];
  });
}

const turnedBox = ({ x, y, width, height }: Box, drawing: Drawing): Box => ({
  x: drawing.height - y - height,
  y: x,
  width: height,
  height: width,
});

/** What the seams of the plan run through, by its own join lines. */
function planCost({ drawing, avoid: all }: FullScale): { readonly cost: number; readonly sheets: number } {
  const plan = wholePlan({ drawing, avoid: all }, A4, LAP, { margin: even(MARGIN), join: 'lap', fonts: FONTS })!;
  const stretches = seamsOf(plan).map(({ kind, at, from, to }) => ({ upright: kind === 'beside', at, from, to }));
  const avoid =
    plan.orientation.rotation === 0 ? all : all.map(({ box: b, why }) => ({ box: turnedBox(b, drawing), why }));
  return { cost: costOf(stretches, avoid), sheets: plan.cells.length };
}

describe('seams', () => {
  it('run through no more than those of any grid of as many sheets on a fine raster of origins', () => {
    const shape = fc.record({
      width: fc.integer({ min: 220, max: 560 }),
      height: fc.integer({ min: 220, max: 560 }),
      top: fc.integer({ min: 40, max: 70 }),
      right: fc.integer({ min: 40, max: 70 }),
      bottom: fc.integer({ min: 40, max: 70 }),
      left: fc.integer({ min: 40, max: 70 }),
    });
    let worse = 0;
    fc.assert(
      fc.property(shape, (ring) => {
        const work = linesOnly(ringMat(ring));
        const { drawing } = work;
        const { cost, sheets } = planCost(work);
        for (const quarter of [false, true]) {
          const avoid = quarter
            ? work.avoid.map(({ box: b, why }) => ({ box: turnedBox(b, drawing), why }))
            : work.avoid;
          const [wide, high] = [A4.width - 2 * MARGIN, A4.height - 2 * MARGIN];
          for (const trial of trials(raster(drawing, 1, quarter), { wide, high }, LAP, 5)) {
            if (trial.kept.size !== sheets) continue;
            const tried = costOf(stretchesOf(trial, wide, high), avoid);
            expect(cost).toBeLessThanOrEqual(tried);
            if (cost < tried) worse++;
          }
        }
      }),
      { numRuns: 40, seed: 3 },
    );
    expect(worse).toBeGreaterThan(100);
  }, 120_000);

  it('keep off every corner, tick and reading of 16 × 20 in on A4', () => {
    expect(planCost(MIDDLING)).toEqual({ cost: 0, sheets: 6 });
  });

  it('lie in the middle where nothing else decides', () => {
    const work = linesOnly(ringMat({ width: 150, height: 200, top: 40, right: 40, bottom: 40, left: 40 }));
    const { drawing } = work;
    const plan = wholePlan(work, A4, LAP, { margin: even(MARGIN), join: 'lap', fonts: FONTS })!;
    const drawn = drawnBox(drawing, FONTS)!;
    expect(plan.x + plan.width / 2).toBeCloseTo(drawn.x + drawn.width / 2, 6);
    expect(plan.y + plan.height / 2).toBeCloseTo(drawn.y + drawn.height / 2, 6);
  });
});
