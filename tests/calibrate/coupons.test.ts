import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { calibrateBevelCoupon } from '../../src/calibrate/bevel-coupon.ts';
import { calibrateKnife } from '../../src/calibrate/knife.ts';
import { calibrateLaser } from '../../src/calibrate/laser.ts';
import { CORNER_LOSS } from '../../src/cutfiles/coupons/knife.ts';
import type { Result } from '../../src/problems/problem.ts';
import { cut, LOPSIDED } from '../cutfiles/cut.ts';
import { apart, dense, type P } from '../cutfiles/points.ts';
import { waysOf } from '../cutfiles/read-svg.ts';
import { readSvg } from '../readers/svg-elements.ts';

function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}
const codes = (result: Result<unknown>): string[] =>
  (result.ok ? result.warnings : result.problems).map(({ code }) => code);

const coupon = async (kind: string, machine: string) => {
  const shop = `units: mm\nmachines: {${kind}: {format: svg, notes: false${machine}}}\n`;
  const { texts, names, built } = await cut(LOPSIDED, shop, { machine: kind, coupon: true });
  expect(names).toEqual([`cut-${kind}-coupon.svg`]);
  return { ways: waysOf(texts[0]!), record: built.report.cutfiles![0]! };
};
const reach = (ways: readonly { points: readonly P[] }[], axis: 'x' | 'y'): number[] => {
  const all = ways.flatMap(({ points }) => points.map((p) => p[axis]));
  return [Math.min(...all), Math.max(...all)];
};

describe('the coupon of a laser', () => {
  it('gives back the kerf and the scale of the machine that cut it', async () => {
    const { ways } = await coupon('laser', ', kerf: 0.3');
    const strips = ways.filter(({ id }) => id.startsWith('strip-x-'));
    // Nine cuts 10 mm apart, in a frame of 100 mm: ten strips, whatever the kerf of the machine is said to be.
    expect(strips.map(({ points }) => points[0]!.x - 5).sort((a, b) => a - b)).toEqual([
      10, 20, 30, 40, 50, 60, 70, 80, 90,
    ]);
    const frame = ways.find(({ id }) => id === 'strips-x')!;
    const [left, right] = reach([frame], 'x');
    expect(right! - left!).toBeCloseTo(100, 4);
    const square = ways.find(({ id }) => id === 'square')!;
    const side = reach([square], 'x')[1]! - reach([square], 'x')[0]!;
    fc.assert(
      fc.property(
        fc.double({ min: 0.02, max: 0.6, noNaN: true }),
        fc.double({ min: 0.02, max: 0.6, noNaN: true }),
        fc.double({ min: 0.995, max: 1.005, noNaN: true }),
        (x, y, scale) => {
          // What this machine makes of it: every strip loses a kerf, a piece loses one, a hole gains one.
          const strip = (kerf: number) => 10 * (10 * scale - kerf);
          const found = value(
            calibrateLaser({
              stripsX: [strip(x)],
              stripsY: [strip(y)],
              square: {
                pieceX: [side * scale - x],
                holeX: [side * scale + x],
                pieceY: [side * scale - y],
                holeY: [side * scale + y],
              },
            }),
          );
          expect(found.kerf.x).toBeCloseTo(x, 9);
          expect(found.kerf.y).toBeCloseTo(y, 9);
          expect(found.scale!.x).toBeCloseTo(scale, 9);
        },
      ),
    );
  });

  it('tells how sure it is, leaves a wild reading out, and refuses what no beam makes', () => {
    const found = calibrateLaser({ stripsX: [98, 98.02, 97.98, 98, 95], stripsY: [98] });
    expect(value(found).kerf).toEqual({ x: expect.closeTo(0.2, 9), y: expect.closeTo(0.2, 9) });
    expect(value(found).kerfError.x).toBeLessThan(0.002);
    expect(codes(found)).toEqual(['coupon-reading-stands-out']);
    expect(codes(calibrateLaser({ stripsX: [101], stripsY: [98] }))).toEqual(['coupon-kerf-absurd']);
    expect(codes(calibrateLaser({ stripsX: [], stripsY: [Number.NaN] }))).toEqual([
      'coupon-reading-unusable',
      'coupon-reading-unusable',
    ]);
  });
});

it('is not corrected by the scale that it measures', async () => {
  const text = async (scale: string) => {
    const shop = `units: mm\nmachines: {laser: {format: hpgl, notes: false, comments: false${scale}}}\n`;
    return (await cut(LOPSIDED, shop, { machine: 'laser', coupon: true })).texts[0];
  };
  expect(await text(', scale: {x: 1.002, y: 0.998}')).toBe(await text(''));
});

describe('the coupon of a drag knife', () => {
  /** The tip drawn after the axis; the piece inside of its way is measured. */
  function measured(points: readonly P[], offset: number, inner: P): { side: number; diagonal: number } {
    const way = dense(points, 0.005, false);
    let tip = { x: way[0]!.x, y: way[0]!.y + offset };
    const tips = way.map((at) => {
      const long = apart(at, tip);
      tip = { x: at.x + ((tip.x - at.x) * offset) / long, y: at.y + ((tip.y - at.y) * offset) / long };
      return tip;
    });
    const along = (x: number, y: number): number => {
      // Between the jaws of a caliper: the last of the piece that they meet, from its middle, where the lead is away.
      const near = tips.filter((p) => Math.abs((p.x - inner.x) * y - (p.y - inner.y) * x) < 1.5);
      return Math.max(...near.map((p) => (p.x - inner.x) * x + (p.y - inner.y) * y).filter((far) => far < 30));
    };
    const h = Math.SQRT1_2;
    return { side: along(1, 0) + along(-1, 0), diagonal: along(h, h) + along(-h, -h) };
  }

  it.each([0.15, 0.25, 0.45])(
    'gives back an offset of %s mm, by the corners that the tip cut short',
    async (offset) => {
      const { ways } = await coupon('knife', ', offset: 0.9');
      expect(ways.map(({ id }) => id)).toEqual(['square-1', 'square-2', 'square-3']);
      const [minY, maxY] = reach(ways, 'y');
      expect(maxY! - minY!).toBeGreaterThan(40);
      // The middle of the square: its lower side lies at the largest y.
      const [left] = reach([ways[0]!], 'x');
      const inner = { x: left! + 20, y: maxY! - 20 };
      const { side, diagonal } = measured(ways[0]!.points, offset, inner);
      expect(side).toBeCloseTo(40, 2);
      const found = value(calibrateKnife({ sides: [side, side], diagonals: [diagonal, diagonal] }));
      expect(found.offset).toBeCloseTo(offset, 2);
    },
  );

  it('has its squares in a row, as far apart as the first is from the edge', async () => {
    const { ways } = await coupon('knife', ', offset: 0.25, lead: 3');
    const spans = ways.map((way) => reach([way], 'x'));
    const clear = spans[0]![0]!;
    expect(clear).toBeGreaterThan(1);
    for (const [i, [left, right]] of spans.entries()) {
      expect(right! - left!).toBeCloseTo(40, 4);
      if (i > 0) expect(left! - spans[i - 1]![1]!).toBeCloseTo(clear, 4);
    }
  });

  it('loses 0.6232 of the offset at a right corner', () => {
    // Derived from the tractrix: ln cot(π/8) / √2.
    expect(CORNER_LOSS).toBeCloseTo(0.623225, 6);
    expect(value(calibrateKnife({ sides: [40], diagonals: [40 * Math.SQRT2] })).offset).toBe(0);
    expect(codes(calibrateKnife({ sides: [40], diagonals: [40] }))).toEqual(['coupon-offset-absurd']);
    expect(codes(calibrateKnife({ sides: [40], diagonals: [60] }))).toEqual(['coupon-offset-absurd']);
    expect(codes(calibrateKnife({ sides: [0], diagonals: [56] }))).toContain('coupon-reading-unusable');
  });
});

describe('the coupon of a bevel head', () => {
  it('gives back offsets, angle and how far the blade comes out aside', async () => {
    const { ways, record } = await coupon('bevel', ', start: 5, stop: 2, overrun: 1');
    expect(ways.length).toBe(4);
    expect(record.operations[0]!.tilts).toEqual([{ angle: 90 }]);
    // 80 mm and three at each end, whatever the machine says of its offsets.
    for (const { points } of ways) expect(apart(points[0]!, points.at(-1)!)).toBeCloseTo(86, 4);
    const past = (end: 'start' | 'stop', mm: number) => ({ end, past: mm });
    const found = value(
      calibrateBevelCoupon({
        thickness: 1.5,
        // e_start 1.2: the cut begins 1.2 mm ahead of the mark, 1.8 past the corner. e_stop −0.4: it ends 2.6 past it.
        ends: [1.7, 1.9, 1.8, 1.8].flatMap((mm) => [past('start', mm), past('stop', mm + 0.8)]),
        face: [80.1, 80.1],
        back: [80.1 - 2 * 1.5, 80.1 - 2 * 1.5],
      }),
    );
    expect(found.start).toEqual([{ thickness: 1.5, offset: expect.closeTo(1.2, 9) }]);
    expect(found.stop).toEqual([{ thickness: 1.5, offset: expect.closeTo(-0.4, 9) }]);
    expect(found.angle!.degrees).toBeCloseTo(45, 9);
    expect(found.aside).toBeCloseTo(0.05, 9);
    // At 60° the fallout's back is smaller by 2·t/tan 60°: a slip of tangent and cotangent would show.
    const steep = calibrateBevelCoupon({
      thickness: 3,
      ends: [past('start', 3), past('stop', 3)],
      face: [80],
      back: [80 - (2 * 3) / Math.tan(Math.PI / 3)],
    });
    expect(value(steep).angle!.degrees).toBeCloseTo(60, 9);
  });

  it('refuses a fallout of something else, and readings that are none', () => {
    const ends = [
      { end: 'start' as const, past: 3 },
      { end: 'stop' as const, past: 3 },
    ];
    expect(codes(calibrateBevelCoupon({ thickness: 1.5, ends, face: [60], back: [57] }))).toContain(
      'coupon-fallout-absurd',
    );
    expect(codes(calibrateBevelCoupon({ thickness: 1.5, ends: [] }))).toEqual(['calibrate-readings-none']);
    expect(value(calibrateBevelCoupon({ thickness: 1.5, ends })).angle).toBeUndefined();
  });
});

describe('every coupon', () => {
  it.each(['laser', 'knife', 'bevel'])('says how it is measured, and what to beware of: %s', async (kind) => {
    const shop = `machines: {${kind}: {format: svg}}\n`;
    const { texts, built } = await cut(LOPSIDED, shop, { machine: kind, coupon: true });
    const { allowances, cautions } = built.report.cutfiles![0]!;
    expect(allowances.join(' ')).toMatch(/[Mm]easure/u);
    expect(cautions.join(' ')).toMatch(/manual/u);
    const { remarks } = readSvg(texts[0]!);
    for (const line of [...allowances, ...cautions]) {
      expect(remarks[0]).toContain(line);
    }
  });

  it('is refused where the bed is too small for it', async () => {
    const small = cut(LOPSIDED, 'units: mm\nmachines: {laser: {bed: 100 x 100}}\n', { machine: 'laser', coupon: true });
    await expect(small).rejects.toThrow('the coupon takes');
  });
});
