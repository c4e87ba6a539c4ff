import { type Hit, SEAM_CLEARANCE } from './obstacle.ts';
import { type Zones, zonesAt } from './zones.ts';

/** From where to where something lies along an axis. */
export type Stretch = readonly [number, number];

export interface WeighedStretch {
  readonly stretch: Stretch;
  readonly weight: number;
}

/** Where the seams of a grid run. */
type Lines = Pick<Zones, 'origin' | 'pitch' | 'lap'>;

/** Origins nearer to each other than this are one. */
const SAME = 1e-6;

/** Everything drawn, and everything to keep seams off, seen along one axis. */
export class Axis {
  readonly lows: Float64Array;
  readonly highs: Float64Array;
  readonly from: number;
  readonly to: number;
  private readonly lastLow: number;
  private readonly obstacles: readonly WeighedStretch[];
  /** The same, those that lie alike along this axis as one: beginnings, ends and weights. */
  private readonly begins: Float64Array;
  private readonly ends: Float64Array;
  private readonly weights: Float64Array;

  constructor(drawn: readonly Stretch[], obstacles: readonly WeighedStretch[]) {
    this.lows = Float64Array.from(drawn, ([low]) => low);
    this.highs = Float64Array.from(drawn, ([, high]) => high);
    this.from = Math.min(...this.lows);
    this.to = Math.max(...this.highs);
    this.lastLow = Math.max(...this.lows);
    this.obstacles = obstacles;
    const alike = new Map<string, { low: number; high: number; weight: number }>();
    for (const { stretch, weight } of obstacles) {
      const [low, high] = stretch;
      const key = `${low} ${high}`;
      const known = alike.get(key);
      if (known === undefined) alike.set(key, { low, high, weight });
      else known.weight += weight;
    }
    const all = [...alike.values()];
    this.begins = Float64Array.from(all, ({ low }) => low);
    this.ends = Float64Array.from(all, ({ high }) => high);
    this.weights = Float64Array.from(all, ({ weight }) => weight);
  }

  zones(origin: number, pitch: number, lap: number): Zones {
    return zonesAt(origin, pitch, lap, this.from, this.lastLow, this.to);
  }

  /** Every origin at which some sheet begins where something drawn begins. */
  origins(pitch: number): readonly number[] {
    return this.distinct([...new Set(this.lows)], pitch);
  }

  /** More origins: sheets that end where something ends, seams just clear of an obstacle, the grid in the middle. */
  seamOrigins(pitch: number, lap: number, most: number): readonly number[] {
    const ends = [...new Set(this.highs)].map((high) => high - pitch - lap);
    const before = [...this.begins].map((low) => low - SEAM_CLEARANCE - lap / 2);
    const behind = [...this.ends].map((high) => high + SEAM_CLEARANCE - lap / 2);
    const all = this.distinct([this.middle(pitch, lap), ...ends, ...before, ...behind], pitch);
    return this.clearest(all, (origin) => ({ origin, pitch, lap }), most);
  }

  /** Up to `most` of some grids: those whose seams would cost least, were every seam whole. */
  clearest<T>(grids: readonly T[], lines: (grid: T) => Lines, most: number): readonly T[] {
    const costs = Float64Array.from(grids, (grid) => this.lineCost(lines(grid)));
    const order = [...grids.keys()].sort((a, b) => costs[a]! - costs[b]! || a - b);
    return order.slice(0, most).map((i) => grids[i]!);
  }

  /** Asked some ten thousand times for one layout, so it calls nothing. */
  private lineCost({ origin, pitch, lap }: Lines): number {
    const { begins, ends, weights } = this;
    let cost = 0;
    for (let i = 0; i < weights.length; i++) {
      const behind = Math.ceil((ends[i]! + SEAM_CLEARANCE - lap / 2 - origin) / pitch - SAME);
      const lines = behind - Math.floor((begins[i]! - SEAM_CLEARANCE - lap / 2 - origin) / pitch + SAME) - 1;
      if (lines > 0) cost += weights[i]! * lines;
    }
    return cost;
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
    this.obstacles.forEach(({ stretch }, obstacle) => {
      const end = behindLast(stretch[1], origin, pitch, lap);
      for (let line = firstLine(stretch[0], origin, pitch, lap); line < end; line++)
        hits.push({ obstacle, before: line - 1 });
    });
    return hits;
  }

  private distinct(origins: readonly number[], pitch: number): readonly number[] {
    const within = origins.map((origin) => this.from - pitch + ((((origin - this.from) % pitch) + pitch) % pitch));
    within.sort((a, b) => a - b);
    return within.filter((origin, i) => i === 0 || origin - within[i - 1]! > SAME);
  }
}

/** The seam behind sheet c − 1 is line c, at origin + c·pitch + lap/2: the first that comes near a stretch … */
function firstLine(low: number, origin: number, pitch: number, lap: number): number {
  return Math.floor((low - SEAM_CLEARANCE - lap / 2 - origin) / pitch + SAME) + 1;
}

/** … and the first behind it that does not. */
function behindLast(high: number, origin: number, pitch: number, lap: number): number {
  return Math.ceil((high + SEAM_CLEARANCE - lap / 2 - origin) / pitch - SAME);
}
