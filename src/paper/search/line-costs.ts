import { SAME, SEAM_CLEARANCE, type WeighedStretch } from './obstacle.ts';

/**
 * What the lines of the seams of a grid run through, were every seam whole, by its origin. Lines lie at origin + lap/2,
 * every pitch; a stretch is met by as many as lie inside it. Folded into one pitch, stretches are met by a number of lines that changes
 * by one where they begin and where they end, so that with both in order an origin is answered by two looks.
 */
export class LineCosts {
  private readonly pitch: number;
  private readonly half: number;
  /** At an origin before every beginning and every end. */
  private readonly base: number;
  private readonly begins: Steps;
  private readonly ends: Steps;

  /** The same stretches in the order of their beginnings and of their ends: folded, each is a few rows that rise already. */
  constructor(byBegin: readonly WeighedStretch[], byEnd: readonly WeighedStretch[], pitch: number, lap: number) {
    this.pitch = pitch;
    this.half = lap / 2;
    const begins = new Float64Array(byBegin.length);
    const ends = new Float64Array(byEnd.length);
    const clear = SEAM_CLEARANCE - SAME * pitch;
    let base = 0;
    for (let i = 0; i < byBegin.length; i++) {
      const { stretch, weight } = byBegin[i]!;
      const low = stretch[0] - clear;
      const before = Math.floor(low / pitch);
      begins[i] = low - before * pitch;
      // Its end counts from the first, its beginning from where it is.
      base -= weight * before;
    }
    for (let i = 0; i < byEnd.length; i++) {
      const { stretch, weight } = byEnd[i]!;
      const high = stretch[1] + clear;
      const within = Math.floor(high / pitch);
      ends[i] = high - within * pitch;
      base += weight * within;
    }
    this.base = base;
    this.begins = stepsOf(begins, byBegin);
    this.ends = stepsOf(ends, byEnd);
  }

  at(origin: number): number {
    const { pitch } = this;
    const line = (((origin + this.half) % pitch) + pitch) % pitch;
    return this.base + sumUpTo(this.begins, line) - sumUpTo(this.ends, line);
  }
}

/** Places in rising order, and the sum of the weights of those before each; the last sum is that of all. */
interface Steps {
  readonly places: Float64Array;
  readonly sums: Float64Array;
}

function stepsOf(places: Float64Array, stretches: readonly WeighedStretch[]): Steps {
  const order: number[] = [];
  for (let i = 0; i < places.length; i++) order.push(i);
  order.sort((a, b) => places[a]! - places[b]!);
  const sums = new Float64Array(places.length + 1);
  for (let i = 0; i < order.length; i++) sums[i + 1] = sums[i]! + stretches[order[i]!]!.weight;
  return { places: places.sort(), sums };
}

/** The weights of all that lie before a place. */
function sumUpTo({ places, sums }: Steps, at: number): number {
  let low = 0;
  let high = places.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (places[middle]! < at) low = middle + 1;
    else high = middle;
  }
  return sums[low]!;
}
