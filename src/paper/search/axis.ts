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
  /** The same, those that lie alike along this axis as one. */
  private readonly alike: readonly WeighedStretch[];

  constructor(drawn: readonly Stretch[], obstacles: readonly WeighedStretch[]) {
    this.lows = Float64Array.from(drawn, ([low]) => low);
    this.highs = Float64Array.from(drawn, ([, high]) => high);
    this.from = Math.min(...this.lows);
    this.to = Math.max(...this.highs);
    this.lastLow = Math.max(...this.lows);
    this.obstacles = obstacles;
    const alike = new Map<string, { readonly stretch: Stretch; weight: number }>();
    for (const { stretch, weight } of obstacles) {
      const key = `${stretch[0]} ${stretch[1]}`;
      const known = alike.get(key);
      if (known === undefined) alike.set(key, { stretch, weight });
      else known.weight += weight;
    }
    this.alike = [...alike.values()];
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
    const before = this.alike.map(({ stretch }) => stretch[0] - SEAM_CLEARANCE - lap / 2);
    const behind = this.alike.map(({ stretch }) => stretch[1] + SEAM_CLEARANCE - lap / 2);
    const all = this.distinct([this.middle(pitch, lap), ...ends, ...before, ...behind], pitch);
    return this.clearest(all, (origin) => origin, pitch, lap, most);
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
    const lines = new LineCosts(this.alike, pitch, lap);
    const costs = Float64Array.from(grids, (grid) => lines.at(originOf(grid)));
    // Sorting keeps the order of equals.
    const order = [...grids.keys()].sort((a, b) => costs[a]! - costs[b]!);
    return order.slice(0, most).map((i) => grids[i]!);
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

  private distinct(origins: readonly number[], pitch: number): readonly number[] {
    // Numbers in an array of their own kind are sorted without being asked one by one.
    const within = Float64Array.from(
      origins,
      (origin) => this.from - pitch + ((((origin - this.from) % pitch) + pitch) % pitch),
    ).sort();
    return [...within].filter((origin, i) => i === 0 || origin - within[i - 1]! > SAME);
  }
}
