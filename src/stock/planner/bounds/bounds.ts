import { type BlankType, fits, type Instance, type Stock } from '../instance.ts';
import { counting, cutOff, halves, type LengthWeight, plain, steps } from './dual-feasible.ts';
import { costOfWhole } from './whole-costs.ts';

export interface LowerBound {
  /** No plan opens fewer sheets, or costs less; Infinity where the stock cannot be enough. */
  readonly value: number;
  readonly by: string;
}

/** Up to this base length every parameter is tried, beyond it those at which some size changes its weight. */
const SMALL_BASE = 320;
/** Work for one set of pairs of functions: pairs times types. */
const MOST_WORK = 30_000_000;
const MOST_STEPS = 30;
/** Work to see which functions differ: functions times sizes. */
const MOST_COMPARED = 3_000_000;
/** Sums of weights are doubles; a bound is rounded down by far more than they err. */
const NOISE = 1e-9;

/**
 * Whatever lies on a sheet weighs at most f-room(width) · g-room(height) for dual-feasible f and g, blank by blank
 * f(width) · g(height). A blank that may turn weighs its lesser way. Where all may turn, so may the whole sheet: there
 * both sums are averaged, which weighs a blank the same both ways.
 */
export const boundOfSheets = (instance: Instance): LowerBound => lowerBound(instance, sheetsFor);

/** The same weights, of what sheets cost. */
export function boundOfCost(instance: Instance): LowerBound {
  const { value, by } = lowerBound(instance, costFor);
  return { value: costOfWhole(instance, value), by };
}

/** What the sheets cost, or how many they are, that hold the weight of all blanks at the least. */
type Measure = (instance: Instance, weighed: Weighed) => number;

function lowerBound(instance: Instance, measure: Measure): LowerBound {
  const { stocks, types } = instance;
  const width = Math.max(...stocks.map((stock) => stock.width));
  const height = Math.max(...stocks.map((stock) => stock.height));
  let best: LowerBound = { value: 0, by: 'nothing' };
  const better = (bound: LowerBound): void => {
    if (bound.value > best.value) best = bound;
  };
  better(fixed(instance, width, height, measure));
  if (types.some((type) => type.turn)) better(averaged(instance, Math.max(width, height), measure));
  return best;
}

/** Weights of every type under every function, as it lies and turned. */
interface Table {
  readonly weight: LengthWeight;
  readonly ofWidth: Float64Array;
  readonly ofHeight: Float64Array;
}

function fixed(instance: Instance, width: number, height: number, measure: Measure): LowerBound {
  const { types, stocks } = instance;
  const most = Math.floor(Math.sqrt(MOST_WORK / types.length));
  const across = tables(types, family(width, sizesAlong(types, 'width', width), most), width);
  const down = tables(types, family(height, sizesAlong(types, 'height', height), most), height);
  const upright = types.map((type) => fits(type.width, type.height, { width, height }));
  const turned = types.map((type) => type.turn && fits(type.height, type.width, { width, height }));
  return bestPair(instance, across, down, false, measure, (f, g) => {
    let sum = 0;
    for (let t = 0; t < types.length; t++) {
      const one = upright[t] ? f.ofWidth[t]! * g.ofHeight[t]! : Infinity;
      const other = turned[t] ? f.ofHeight[t]! * g.ofWidth[t]! : Infinity;
      sum += types[t]!.demand * Math.min(one, other);
    }
    return { sum, room: (stock) => f.weight.holds(stock.width) * g.weight.holds(stock.height), stocks };
  });
}

function averaged(instance: Instance, base: number, measure: Measure): LowerBound {
  const { types, stocks } = instance;
  const most = Math.floor(Math.sqrt((2 * MOST_WORK) / types.length));
  const both = tables(types, family(base, sizesBothWays(types), most), base);
  return bestPair(instance, both, both, true, measure, (f, g) => {
    let sum = 0;
    for (let t = 0; t < types.length; t++) {
      sum += (types[t]!.demand * (f.ofWidth[t]! * g.ofHeight[t]! + f.ofHeight[t]! * g.ofWidth[t]!)) / 2;
    }
    const room = ({ width, height }: Stock): number =>
      (f.weight.holds(width) * g.weight.holds(height) + f.weight.holds(height) * g.weight.holds(width)) / 2;
    return { sum, room, stocks };
  });
}

interface Weighed {
  readonly sum: number;
  readonly room: (stock: Stock) => number;
  readonly stocks: readonly Stock[];
}

function bestPair(
  instance: Instance,
  across: readonly Table[],
  down: readonly Table[],
  symmetric: boolean,
  measure: Measure,
  weigh: (f: Table, g: Table) => Weighed,
): LowerBound {
  let best: LowerBound = { value: -1, by: '' };
  across.forEach((f, i) => {
    for (let j = symmetric ? i : 0; j < down.length; j++) {
      const g = down[j]!;
      const value = measure(instance, weigh(f, g));
      if (value <= best.value) continue;
      const names = f.weight.name === g.weight.name ? f.weight.name : `${f.weight.name} × ${g.weight.name}`;
      best = { value, by: names };
    }
  });
  return best;
}

/** What is free holds its share first; then the roomiest sheets are taken. */
function sheetsFor(instance: Instance, { sum, room }: Weighed): number {
  let left = sum;
  const counted: { readonly room: number; readonly limit: number }[] = [];
  for (const stock of instance.stocks) {
    if (stock.free) left -= room(stock) * stock.limit;
    else counted.push({ room: room(stock), limit: stock.limit });
  }
  counted.sort((a, b) => b.room - a.room);
  let sheets = 0;
  for (const { room: each, limit } of counted) {
    if (left <= NOISE) return sheets;
    if (each <= 0) break;
    const here = Math.min(limit, Math.ceil(left / each - NOISE));
    sheets += here;
    left -= here * each;
  }
  return left <= NOISE ? sheets : Infinity;
}

/** What is free holds its share first; then the sheets whose room is cheapest are taken, the last one in part. */
function costFor({ stocks }: Instance, { sum, room }: Weighed): number {
  let left = sum;
  for (const stock of stocks) if (stock.free) left -= room(stock) * stock.limit;
  const counted = stocks
    .filter((stock) => !stock.free)
    .map((stock) => ({ room: room(stock), limit: stock.limit, cost: stock.cost }))
    .filter((stock) => stock.room > 0)
    .sort((a, b) => a.cost * b.room - b.cost * a.room);
  let cost = 0;
  for (const { room: each, limit, cost: one } of counted) {
    if (left <= NOISE) return cost;
    const here = Math.min(limit, left / each);
    cost += here * one;
    left -= here * each;
  }
  return left <= NOISE ? cost : Infinity;
}

function sizesAlong(types: readonly BlankType[], side: 'width' | 'height', base: number): number[] {
  const other = side === 'width' ? 'height' : 'width';
  return types
    .flatMap((type) =>
      (type.turn ? [type[side], type[other]] : [type[side]])
        .filter((size) => size <= base)
        .flatMap((size) => Array<number>(type.demand).fill(size)),
    )
    .sort((a, b) => a - b);
}

const sizesBothWays = (types: readonly BlankType[]): number[] =>
  types
    .flatMap(({ width, height, demand }) => [
      ...Array<number>(demand).fill(width),
      ...Array<number>(demand).fill(height),
    ])
    .sort((a, b) => a - b);

function parameters(base: number, sizes: readonly number[]): number[] {
  const out = new Set<number>();
  const add = (value: number): void => {
    if (value >= 1 && 2 * value <= base) out.add(value);
  };
  if (base <= SMALL_BASE) {
    for (let value = 1; 2 * value <= base; value++) add(value);
  } else {
    for (const size of sizes) for (const value of [size, base - size, base - size + 1]) add(value);
  }
  return [...out].sort((a, b) => a - b);
}

/** Different weights for the sizes, at most `most` of them, evenly chosen; `sizes` ascend. */
function family(base: number, sizes: readonly number[], most: number): LengthWeight[] {
  const distinct = [...new Set(sizes)];
  const all: LengthWeight[] = [];
  for (let k = 1; k <= MOST_STEPS; k++) all.push(steps(base, k));
  // A third each for the three kinds that have a parameter.
  const each = Math.ceil(MOST_COMPARED / (3 * distinct.length));
  for (const value of evenly(parameters(base, distinct), each)) all.push(cutOff(base, value), halves(base, value));
  for (const size of evenly(distinct, each)) {
    const weight = 2 * size <= base ? counting(base, size, sizes) : undefined;
    if (weight !== undefined) all.push(weight);
  }
  const seen = new Set<string>();
  const different = [plain(base), ...all].filter((weight) => {
    const key = distinct.map(weight.of).join(' ');
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
  return evenly(different, most);
}

const evenly = <T>(list: readonly T[], most: number): T[] =>
  list.length <= most ? [...list] : Array.from({ length: most }, (_, i) => list[Math.floor((i * list.length) / most)]!);

function tables(types: readonly BlankType[], weights: readonly LengthWeight[], base: number): Table[] {
  const under = (weight: LengthWeight, size: number): number => (size <= base ? weight.of(size) : 0);
  return weights.map((weight) => ({
    weight,
    ofWidth: Float64Array.from(types, (type) => under(weight, type.width)),
    ofHeight: Float64Array.from(types, (type) => under(weight, type.height)),
  }));
}
