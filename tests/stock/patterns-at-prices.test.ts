import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BlankType, Stock } from '../../src/stock/planner/instance.ts';
import { BestPattern } from '../../src/stock/planner/orders/best-pattern.ts';
import type { Bundle } from '../../src/stock/planner/orders/bundle.ts';
import { mostWorth } from '../../src/stock/planner/orders/dual-bound.ts';
import { isSymmetric } from '../../src/stock/planner/orders/pattern-maker.ts';
import { rasterOf } from '../../src/stock/planner/orders/raster.ts';
import { StripPatterns } from '../../src/stock/planner/orders/strips.ts';

const stockOf = (width: number, height: number): Stock => ({
  width,
  height,
  limit: Infinity,
  free: false,
  cost: 0,
  bought: false,
  edgesX: 2,
  edgesY: 2,
  whole: true,
});

/** The best worth of a rectangle by every cut at every whole number. */
function everyCut(width: number, height: number, types: readonly BlankType[], prices: readonly number[]): number {
  const known = new Map<number, number>();
  const best = (w: number, h: number): number => {
    const key = w * 1000 + h;
    const before = known.get(key);
    if (before !== undefined) return before;
    let most = 0;
    types.forEach((type, t) => {
      const lies = type.width <= w && type.height <= h;
      const turned = type.turn && type.height <= w && type.width <= h;
      if (lies || turned) most = Math.max(most, prices[t]!);
    });
    for (let x = 1; 2 * x <= w; x++) most = Math.max(most, best(x, h) + best(w - x, h));
    for (let y = 1; 2 * y <= h; y++) most = Math.max(most, best(w, y) + best(w, h - y));
    known.set(key, most);
    return most;
  };
  return best(width, height);
}

const cases = fc.record({
  width: fc.integer({ min: 8, max: 34 }),
  height: fc.integer({ min: 8, max: 34 }),
  blanks: fc.array(
    fc.record({
      width: fc.integer({ min: 3, max: 16 }),
      height: fc.integer({ min: 3, max: 16 }),
      turn: fc.boolean(),
      price: fc.integer({ min: 0, max: 50 }),
    }),
    { minLength: 1, maxLength: 6 },
  ),
});

describe('the best pattern at prices', () => {
  it('is worth what trying every cut at every whole number finds, and holds what it is worth', () => {
    let some = 0;
    fc.assert(
      fc.property(cases, ({ width, height, blanks }) => {
        const types = blanks.map((blank) => ({ ...blank, demand: 1, edge: false }));
        const prices = blanks.map(({ price }) => price);
        const maker = new BestPattern(stockOf(width, height), types, 1000);
        expect(maker.complete).toBe(true);
        const worth = maker.best(Float64Array.from(prices));
        expect(worth).toBe(everyCut(width, height, types, prices));
        for (const [i, { bundle, copies }] of maker.patterns(8).entries()) {
          const value = copies.reduce((sum, count, type) => sum + count * prices[type]!, 0);
          if (i === 0) expect(value).toBe(worth);
          expect(value).toBeLessThanOrEqual(worth);
          expect(bundle.width).toBeLessThanOrEqual(width);
          expect(bundle.height).toBeLessThanOrEqual(height);
          some += check(bundle, types);
        }
      }),
      { numRuns: 150, seed: 5 },
    );
    expect(some).toBeGreaterThan(500);
  });

  it('comes with others that are as good, two equal halves among them', () => {
    const blank = { demand: 1, turn: false, edge: false };
    for (const [sheet, types] of [
      [stockOf(12, 5), [4, 6].map((width) => ({ ...blank, width, height: 5 }))],
      [stockOf(5, 12), [4, 6].map((height) => ({ ...blank, width: 5, height }))],
    ] as const) {
      const maker = new BestPattern(sheet, types, 1000);
      expect(maker.best(Float64Array.from([4, 6]))).toBe(12);
      // Three of 4 or two of 6, and no other pattern is full.
      expect(maker.patterns(8).map(({ copies }) => [...copies])).toEqual([
        [3, 0],
        [3, 0],
        [0, 2],
      ]);
    }
  });

  it('is found by half the work on a square sheet whose blanks may all turn', () => {
    fc.assert(
      fc.property(cases, ({ width, blanks }) => {
        const types = blanks.map((blank) => ({ ...blank, turn: true, demand: 1, edge: false }));
        const prices = blanks.map(({ price }) => price);
        const maker = new BestPattern(stockOf(width, width), types, 1000);
        expect(maker.best(Float64Array.from(prices))).toBe(everyCut(width, width, types, prices));
        for (const { bundle } of maker.patterns(8)) check(bundle, types);
      }),
      { numRuns: 80, seed: 6 },
    );
  });

  it('of sections and strips is worth no more than the best, mostly as much, and holds what it is worth', () => {
    let [equal, all] = [0, 0];
    fc.assert(
      fc.property(cases, ({ width, height, blanks }) => {
        const types = blanks.map((blank) => ({ ...blank, demand: 1, edge: false }));
        const prices = Float64Array.from(blanks, ({ price }) => price);
        const stock = stockOf(width, height);
        const best = new BestPattern(stock, types, 1000).best(prices);
        const maker = new StripPatterns(stock, types);
        const worth = maker.best(prices);
        expect(worth).toBeLessThanOrEqual(best);
        all++;
        if (worth === best) equal++;
        for (const [i, { bundle, copies }] of maker.patterns(8).entries()) {
          const value = copies.reduce((sum, count, type) => sum + count * prices[type]!, 0);
          if (i === 0) expect(value).toBe(worth);
          expect(value).toBeLessThanOrEqual(worth);
          expect(bundle.width).toBeLessThanOrEqual(width);
          expect(bundle.height).toBeLessThanOrEqual(height);
          check(bundle, types);
        }
      }),
      { numRuns: 150, seed: 7 },
    );
    expect(equal).toBeGreaterThan(0.8 * all);
  });

  it('of sections and strips begins either way, unless the sheet lies alike both ways', () => {
    const turned = <T extends { readonly width: number; readonly height: number }>(size: T): T => ({
      ...size,
      width: size.height,
      height: size.width,
    });
    fc.assert(
      fc.property(cases, ({ width, height, blanks }) => {
        const types = blanks.map((blank) => ({ ...blank, demand: 1, edge: false }));
        const prices = Float64Array.from(blanks, ({ price }) => price);
        const own = new StripPatterns(stockOf(width, height), types).best(prices);
        expect(new StripPatterns(stockOf(height, width), types.map(turned)).best(prices)).toBe(own);
      }),
      { numRuns: 150, seed: 8 },
    );
    const blank = (width: number, height: number, turn: boolean): BlankType => ({
      width,
      height,
      turn,
      demand: 1,
      edge: false,
    });
    const alike = (...types: readonly BlankType[]): boolean => isSymmetric(stockOf(20, 20), types);
    expect(alike(blank(3, 4, true), blank(5, 5, false))).toBe(true);
    expect(alike(blank(3, 4, true), blank(3, 4, false))).toBe(false);
    expect(isSymmetric(stockOf(20, 21), [blank(3, 4, true)])).toBe(false);
  });

  it('is looked for at points evenly chosen where there are too many', () => {
    expect(rasterOf(100, [1], 7)).toEqual({ points: [14, 28, 42, 57, 71, 85, 100], complete: false });
    expect(rasterOf(10, [3, 4], 7)).toEqual({ points: [3, 4, 6, 7, 10], complete: true });
  });

  it('is worth no more than what a coarse grid says, on which all is rounded down', () => {
    const sizes = fc.integer({ min: 60, max: 500 });
    const fine = fc.record({
      width: fc.integer({ min: 600, max: 900 }),
      height: fc.integer({ min: 600, max: 900 }),
      blanks: fc.array(
        fc.record({ width: sizes, height: sizes, turn: fc.boolean(), price: fc.integer({ min: 1, max: 50 }) }),
        { minLength: 1, maxLength: 4 },
      ),
    });
    fc.assert(
      fc.property(fine, ({ width, height, blanks }) => {
        const types = blanks.map((blank) => ({ ...blank, demand: 1, edge: false }));
        const prices = Float64Array.from(blanks, ({ price }) => price);
        const stock = stockOf(width, height);
        const rest = { kerf: 0, first: 'sheets', longest: Infinity } as const;
        const most = mostWorth({ stocks: [stock], types, ...rest }, prices).best[0]!;
        const best = new BestPattern(stock, types, 1000).best(prices);
        expect(most).toBeGreaterThanOrEqual(best);
        expect(most).toBeLessThanOrEqual(1.5 * best + 50);
      }),
      { numRuns: 60, seed: 9 },
    );
  });

  it('is a good one where there are too many points to look at', () => {
    const types = [
      { width: 401, height: 307, demand: 1, turn: true, edge: false },
      { width: 211, height: 173, demand: 1, turn: true, edge: false },
      { width: 97, height: 151, demand: 1, turn: true, edge: false },
    ];
    const prices = Float64Array.from(types, ({ width, height }) => width * height);
    const [all, few] = [1000, 60].map((most) => new BestPattern(stockOf(1000, 1200), types, most));
    expect(few!.complete).toBe(false);
    const [best, good] = [all!.best(prices), few!.best(prices)];
    expect(good).toBeLessThanOrEqual(best);
    expect(good).toBeGreaterThan(0.9 * best);
  });
});

/** Every pair is as large as its parts; returns how many blanks there are. */
function check(bundle: Bundle, types: readonly BlankType[]): number {
  if ('type' in bundle) {
    const { width, height, turn } = types[bundle.type]!;
    const lies = bundle.width === width && bundle.height === height;
    expect(lies || (turn && bundle.width === height && bundle.height === width)).toBe(true);
    return 1;
  }
  const [first, second] = bundle.parts;
  const sum = { x: first.width + second.width, y: first.height + second.height };
  expect(bundle.along === 'x' ? bundle.width : bundle.height).toBe(sum[bundle.along]);
  expect(bundle.along === 'x' ? bundle.height : bundle.width).toBe(
    bundle.along === 'x' ? Math.max(first.height, second.height) : Math.max(first.width, second.width),
  );
  return check(first, types) + check(second, types);
}

describe('raster points', () => {
  it('are what is left beside sums of the sizes: 3 and 5 in 11', () => {
    // Sums up to 11: 0 3 5 6 8 9 10 11; what is left of 11 beside each: 11 8 6 5 3 2 1 0, rounded down to sums.
    expect(rasterOf(11, [3, 5, 5, 20], 100)).toEqual({ points: [3, 5, 6, 8, 11], complete: true });
  });

  it('are few where so many are wanted, the longest among them', () => {
    const { points, complete } = rasterOf(1000, [97, 101, 173], 20);
    expect(complete).toBe(false);
    expect(points.length).toBe(20);
    expect(points.at(-1)).toBe(rasterOf(1000, [97, 101, 173], 5000).points.at(-1));
  });
});
