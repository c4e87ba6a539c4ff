import type { BlankType, Stock } from '../instance.ts';
import type { Bundle } from './bundle.ts';
import {
  COMPARED_PER_STEP,
  isSymmetric,
  NOISE,
  type Pattern,
  type PatternMaker,
  pairOf,
  patternOf,
  type Way,
  waysOf,
} from './pattern-maker.ts';
import { type Raster, rasterOf } from './raster.ts';

/** A cut that loses no more than this share of the best worth is worth trying as another pattern. */
const NEARLY = 0.03;

/**
 * The edge-to-edge pattern of the best worth for one kind of sheet: each blank has a price, and may lie on it as often
 * as there is room. Worth of a rectangle by dynamic programming over its first cuts (P. Gilmore and R. Gomory, The
 * theory and computation of knapsack functions, Operations Research 14, 1966, from memory), at raster points alone.
 */
export class BestPattern implements PatternMaker {
  /** True where it is the best; else a good one. */
  readonly complete: boolean;
  /** Steps that it took so far. */
  steps = 0;
  private readonly xs: readonly number[];
  private readonly ys: readonly number[];
  private readonly ways: readonly Way[];
  /** Where in the table the smallest rectangle lies that holds a way. */
  private readonly corner: Int32Array;
  /** For a point and a smaller one: the place of what is left, or −1. */
  private readonly restX: Int32Array;
  private readonly restY: Int32Array;
  /** Worth of the rectangle of the points i and j, at j · xs.length + i, and of the best single blank in it. */
  private readonly worth: Float64Array;
  private readonly single: Int32Array;
  private readonly jumps: Int32Array;
  /** Then the worth is known of rectangles that are higher than wide. */
  private readonly symmetric: boolean;
  private prices: Float64Array;

  constructor(stock: Stock, types: readonly BlankType[], mostPoints: number) {
    this.ways = waysOf(stock, types);
    this.symmetric = isSymmetric(stock, types);
    const rasterX = rasterOf(
      stock.width,
      this.ways.map(({ width }) => width),
      mostPoints,
    );
    const rasterY = rasterOf(
      stock.height,
      this.ways.map(({ height }) => height),
      mostPoints,
    );
    this.complete = rasterX.complete && rasterY.complete;
    [this.xs, this.ys] = [rasterX.points, rasterY.points];
    this.restX = restsOf(rasterX);
    this.restY = restsOf(rasterY);
    const first = (points: readonly number[], size: number): number => points.findIndex((point) => point >= size);
    this.corner = Int32Array.from(
      this.ways,
      (way) => first(this.ys, way.height) * this.xs.length + first(this.xs, way.width),
    );
    this.worth = new Float64Array(this.xs.length * this.ys.length);
    this.single = new Int32Array(this.worth.length);
    this.jumps = new Int32Array(this.xs.length);
    this.prices = new Float64Array(types.length);
  }

  /** Steps that one table takes, roughly. */
  get size(): number {
    const whole = (this.xs.length * this.ys.length * (this.xs.length + this.ys.length)) / 4 / COMPARED_PER_STEP;
    return this.symmetric ? whole / 2 : whole;
  }

  /** The best worth of a sheet at these prices, none of them negative. */
  best(prices: Float64Array): number {
    this.prices = prices;
    this.fillSingles();
    const ny = this.ys.length;
    let compared = 0;
    for (let j = 0; j < ny; j++) {
      const from = this.symmetric ? j : 0;
      compared += this.cutAcross(j, from) + this.cutAlong(j, from);
      if (this.symmetric) for (let i = j + 1; i < ny; i++) this.worth[i * ny + j] = this.worth[j * ny + i]!;
    }
    this.steps += Math.ceil(compared / COMPARED_PER_STEP);
    return this.worth[this.worth.length - 1] ?? 0;
  }

  /** Rectangles of height j, from width `from` on, cut into two of the same width; returns how many sums were compared. */
  private cutAcross(j: number, from: number): number {
    const { worth, restY } = this;
    const [nx, ny] = [this.xs.length, this.ys.length];
    const [row, rests] = [j * nx, j * ny];
    // The two parts change places from where the rest is the smaller one.
    let cuts = 0;
    while (cuts <= j && restY[rests + cuts]! >= cuts) cuts++;
    let b = 0;
    // Four at a time, since reading and writing the row takes as long as comparing.
    for (; b + 3 < cuts; b += 4) {
      const [a0, a1, a2, a3] = [b * nx, (b + 1) * nx, (b + 2) * nx, (b + 3) * nx];
      const r0 = restY[rests + b]! * nx;
      const r1 = restY[rests + b + 1]! * nx;
      const r2 = restY[rests + b + 2]! * nx;
      const r3 = restY[rests + b + 3]! * nx;
      for (let i = from; i < nx; i++) {
        let best = worth[row + i]!;
        const s0 = worth[a0 + i]! + worth[r0 + i]!;
        if (s0 > best) best = s0;
        const s1 = worth[a1 + i]! + worth[r1 + i]!;
        if (s1 > best) best = s1;
        const s2 = worth[a2 + i]! + worth[r2 + i]!;
        if (s2 > best) best = s2;
        const s3 = worth[a3 + i]! + worth[r3 + i]!;
        if (s3 > best) best = s3;
        worth[row + i] = best;
      }
    }
    for (; b < cuts; b++) {
      const [one, other] = [b * nx, restY[rests + b]! * nx];
      for (let i = from; i < nx; i++) {
        const sum = worth[one + i]! + worth[other + i]!;
        if (sum > worth[row + i]!) worth[row + i] = sum;
      }
    }
    return cuts * (nx - from);
  }

  /** Rectangles of height j cut into two of the same height, the narrower one where the worth rises; returns how many sums were compared. */
  private cutAlong(j: number, from: number): number {
    const { worth, restX, jumps } = this;
    const nx = this.xs.length;
    const row = j * nx;
    let [count, before, compared] = [0, 0, 0];
    for (let i = 0; i < nx; i++) {
      let value = worth[row + i]!;
      if (before > value) value = before;
      const rests = i * nx;
      let k = i < from ? count : 0;
      for (; k < count; k++) {
        const a = jumps[k]!;
        const rest = restX[rests + a]!;
        if (rest < a) break;
        const sum = worth[row + a]! + worth[row + rest]!;
        if (sum > value) value = sum;
      }
      if (i >= from) compared += k;
      worth[row + i] = value;
      if (value > before) jumps[count++] = i;
      before = value;
    }
    return compared;
  }

  /** The best pattern, and others whose first cut is nearly as good, at the prices of the last call. */
  patterns(most: number): Pattern[] {
    const { worth } = this;
    const [nx, ny] = [this.xs.length, this.ys.length];
    if (worth.length === 0) return [];
    const whole = worth.length - 1;
    const least = worth[whole]! * (1 - NEARLY);
    const cuts: { readonly worth: number; readonly make: () => Bundle | undefined }[] = [];
    const last = (ny - 1) * nx;
    for (let a = 0; a < nx; a++) {
      const rest = this.restX[(nx - 1) * nx + a]!;
      if (rest < a) break;
      const sum = worth[last + a]! + worth[last + rest]!;
      if (sum >= least) cuts.push({ worth: sum, make: () => this.pair('x', last + a, last + rest) });
    }
    for (let b = 0; b < ny; b++) {
      const rest = this.restY[(ny - 1) * ny + b]!;
      if (rest < b) break;
      const [one, other] = [b * nx + nx - 1, rest * nx + nx - 1];
      const sum = worth[one]! + worth[other]!;
      if (sum >= least) cuts.push({ worth: sum, make: () => this.pair('y', one, other) });
    }
    cuts.sort((a, b) => b.worth - a.worth);
    const bundles = [this.trace(whole), ...cuts.slice(0, most - 1).map(({ make }) => make())];
    return bundles.flatMap((bundle) => (bundle === undefined ? [] : [patternOf(bundle, this.prices.length)]));
  }

  private fillSingles(): void {
    const { worth, single, ways, corner, prices } = this;
    const [nx, ny] = [this.xs.length, this.ys.length];
    worth.fill(0);
    single.fill(-1);
    ways.forEach(({ type }, way) => {
      const at = corner[way]!;
      if (prices[type]! > worth[at]!) {
        worth[at] = prices[type]!;
        single[at] = way;
      }
    });
    const take = (at: number, from: number): void => {
      if (worth[from]! <= worth[at]!) return;
      worth[at] = worth[from]!;
      single[at] = single[from]!;
    };
    for (let j = 0; j < ny; j++) {
      for (let i = 0; i < nx; i++) {
        const at = j * nx + i;
        if (i > 0) take(at, at - 1);
        if (j > 0) take(at, at - nx);
      }
    }
  }

  /** The blanks of a rectangle whose worth is known; undefined where that is nothing. */
  private trace(at: number): Bundle | undefined {
    const { worth, single, ways, prices, restX, restY } = this;
    const [nx, ny] = [this.xs.length, this.ys.length];
    const value = worth[at]!;
    if (value <= 0) return undefined;
    const near = value * (1 - NOISE);
    const way = ways[single[at]!];
    if (way !== undefined && prices[way.type]! >= near) return { type: way.type, width: way.width, height: way.height };
    const [i, j] = [at % nx, Math.floor(at / nx)];
    if (i > 0 && worth[at - 1]! >= near) return this.trace(at - 1);
    if (j > 0 && worth[at - nx]! >= near) return this.trace(at - nx);
    for (let a = 0; a < i; a++) {
      const rest = restX[i * nx + a]!;
      if (rest < 0) break;
      if (worth[j * nx + a]! + worth[j * nx + rest]! >= near) return this.pair('x', j * nx + a, j * nx + rest);
    }
    for (let b = 0; b < j; b++) {
      const rest = restY[j * ny + b]!;
      if (rest < 0) break;
      if (worth[b * nx + i]! + worth[rest * nx + i]! >= near) return this.pair('y', b * nx + i, rest * nx + i);
    }
    return undefined;
  }

  private pair(along: 'x' | 'y', one: number, other: number): Bundle | undefined {
    const [first, second] = [this.trace(one), this.trace(other)];
    if (first === undefined || second === undefined) return first ?? second;
    return pairOf(along, first, second);
  }
}

function restsOf({ points }: Raster): Int32Array {
  const count = points.length;
  const rests = new Int32Array(count * count).fill(-1);
  for (let i = 0; i < count; i++) {
    let rest = i;
    for (let a = 0; a < i; a++) {
      const room = points[i]! - points[a]!;
      while (rest >= 0 && points[rest]! > room) rest--;
      rests[i * count + a] = rest;
    }
  }
  return rests;
}
