import { LineCosts } from './line-costs.ts';
import { type Hit, SAME, SEAM_CLEARANCE, type WeighedStretch } from './obstacle.ts';
import { type Zones, zonesAt } from './zones.ts';

/** From where to where something lies along an axis. */
export type Stretch = WeighedStretch['stretch'];

/** Where the seams of a grid run. */
type Lines = Pick<Zones, 'origin' | 'pitch' | 'lap'>;

/** Everything drawn, and everything to keep seams off, seen along one axis. */
export class Axis {
  readonly lows: Float64Array;
  readonly highs: Float64Array;
  readonly from: number;
  readonly to: number;
  private readonly lastLow: number;
  private readonly obstacles: readonly WeighedStretch[];
  /** The same, those that lie alike along this axis as one, in the order in which they begin and end. */
  private readonly alike: readonly WeighedStretch[];
  private readonly alikeByEnd: readonly WeighedStretch[];
  /** Each once, rising. */
  private readonly begins: Float64Array;
  private readonly ends: Float64Array;

  constructor(drawn: readonly Stretch[], obstacles: readonly WeighedStretch[]) {
    const lows = new Float64Array(drawn.length);
    const highs = new Float64Array(drawn.length);
    for (let i = 0; i < drawn.length; i++) [lows[i], highs[i]] = drawn[i]!;
    this.lows = lows;
    this.highs = highs;
    this.begins = eachOnce(lows);
    this.ends = eachOnce(highs);
    this.from = this.begins[0] ?? Number.POSITIVE_INFINITY;
    this.to = this.ends.at(-1) ?? Number.NEGATIVE_INFINITY;
    this.lastLow = this.begins.at(-1) ?? Number.NEGATIVE_INFINITY;
    this.obstacles = obstacles;
    const alike: { readonly stretch: Stretch; weight: number }[] = [];
    for (const { stretch, weight } of [...obstacles].sort(byBegin)) {
      const last = alike.at(-1);
      if (last !== undefined && last.stretch[0] === stretch[0] && last.stretch[1] === stretch[1]) last.weight += weight;
      else alike.push({ stretch, weight });
    }
    this.alike = alike;
    this.alikeByEnd = [...alike].sort((a, b) => a.stretch[1] - b.stretch[1]);
  }

  zones(origin: number, pitch: number, lap: number): Zones {
    return zonesAt(origin, pitch, lap, this.from, this.lastLow, this.to);
  }

  /** Every origin at which some sheet begins where something drawn begins. */
  origins(pitch: number): readonly number[] {
    return this.distinct(this.begins, pitch);
  }

  /** More origins: sheets that end where something ends, seams just clear of an obstacle, the grid in the middle. */
  seamOrigins(pitch: number, lap: number, most: number): readonly number[] {
    const { alike, ends } = this;
    const all = new Float64Array(1 + ends.length + 2 * alike.length);
    let count = 0;
    all[count++] = this.middle(pitch, lap);
    for (let i = 0; i < ends.length; i++) all[count++] = ends[i]! - pitch - lap;
    for (let i = 0; i < alike.length; i++) {
      const { stretch } = alike[i]!;
      all[count++] = stretch[0] - SEAM_CLEARANCE - lap / 2;
      all[count++] = stretch[1] + SEAM_CLEARANCE - lap / 2;
    }
    return this.clearest(this.distinct(all, pitch), (origin) => origin, pitch, lap, most);
  }

  /** Up to `most` of some grids of one pitch and lap: those whose seams would cost least, were every seam whole. */
  clearest<T>(
    grids: readonly T[],
    originOf: (grid: T) => number,
    pitch: number,
    lap: number,
    most: number,
  ): readonly T[] {
    if (grids.length <= 1) return grids;
    const lines = new LineCosts(this.alike, this.alikeByEnd, pitch, lap);
    const costs = new Float64Array(grids.length);
    for (let i = 0; i < grids.length; i++) costs[i] = lines.at(originOf(grids[i]!));
    return leastOf(costs, most).map((i) => grids[i]!);
  }

  /** The origin at which the fewest sheets in a row stick out as far at both ends. */
  middle(pitch: number, lap: number): number {
    const count = Math.max(1, Math.ceil((this.to - this.from - lap) / pitch - SAME));
    return (this.from + this.to - count * pitch - lap) / 2;
  }

  /** How far the middle of the sheets lies off the middle of what is drawn. */
  offCentre({ origin, pitch, from, to }: Zones, window: number): number {
    return Math.abs(origin + ((from + to) * pitch + window) / 2 - (this.from + this.to) / 2);
  }

  /** The obstacles that the seams' lines run through, each with the sheet before that line. */
  hits({ origin, pitch, lap }: Lines): readonly Hit[] {
    const hits: Hit[] = [];
    // The seam behind sheet c − 1 is line c.
    const first = origin + lap / 2;
    for (let obstacle = 0; obstacle < this.obstacles.length; obstacle++) {
      const { stretch } = this.obstacles[obstacle]!;
      const end = Math.ceil((stretch[1] + SEAM_CLEARANCE - first) / pitch - SAME);
      let line = Math.floor((stretch[0] - SEAM_CLEARANCE - first) / pitch + SAME) + 1;
      for (; line < end; line++) hits.push({ obstacle, before: line - 1 });
    }
    return hits;
  }

  private distinct(origins: Float64Array, pitch: number): readonly number[] {
    const { from } = this;
    const within = new Float64Array(origins.length);
    for (let i = 0; i < origins.length; i++)
      within[i] = from - pitch + ((((origins[i]! - from) % pitch) + pitch) % pitch);
    // Numbers in an array of their own kind are sorted without being asked one by one.
    within.sort();
    const apart: number[] = [];
    for (let i = 0; i < within.length; i++) if (i === 0 || within[i]! - within[i - 1]! > SAME) apart.push(within[i]!);
    return apart;
  }
}

const byBegin = (a: WeighedStretch, b: WeighedStretch): number =>
  a.stretch[0] - b.stretch[0] || a.stretch[1] - b.stretch[1];

/** The same numbers, each once, rising. */
function eachOnce(numbers: Float64Array): Float64Array {
  const sorted = numbers.slice().sort();
  let count = 0;
  for (let i = 0; i < sorted.length; i++) if (i === 0 || sorted[i] !== sorted[i - 1]) sorted[count++] = sorted[i]!;
  return sorted.subarray(0, count);
}

/** The places of the `most` least numbers, the least first; of equals those that stand first. */
function leastOf(numbers: Float64Array, most: number): readonly number[] {
  let limit = Number.POSITIVE_INFINITY;
  let atLimit = numbers.length;
  if (numbers.length > most) {
    const sorted = numbers.slice().sort();
    limit = sorted[most - 1]!;
    atLimit = most - sorted.indexOf(limit);
  }
  const found: number[] = [];
  for (let i = 0; i < numbers.length; i++) {
    if (numbers[i]! < limit || (numbers[i] === limit && atLimit-- > 0)) found.push(i);
  }
  // Sorting keeps the order of equals.
  return found.sort((a, b) => numbers[a]! - numbers[b]!);
}
