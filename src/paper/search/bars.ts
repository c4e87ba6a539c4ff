import { firstZone, lastZone, type Zones } from './zones.ts';

/**
 * What is drawn, as upright bars over the zones of one axis: boxes of the same columns that meet are one, and a bar
 * that lies within another is left out. It says the same of every grid with these columns, in fewer words.
 */
export interface Bars {
  /** The box that a bar begins with, and the one it ends with, by their places in the list of boxes. */
  readonly top: Int32Array;
  readonly bottom: Int32Array;
  /** `words` numbers of 30 bits a bar: the sheets that alone show some of it … */
  readonly own: Int32Array;
  /** … and the laps that some of it lies in, each named by the sheet behind it. */
  readonly laps: Int32Array;
  readonly words: number;
}

export const BITS = 30;

interface Bar {
  readonly first: number;
  readonly last: number;
  readonly top: number;
  bottom: number;
}

/**
 * `lefts` and `rights` are where the boxes begin and end along the columns, `tops` and `bottoms` downwards; `order`
 * lists them by where they begin downwards.
 */
export function barsOf(
  zones: Zones,
  lefts: Float64Array,
  rights: Float64Array,
  order: Int32Array,
  tops: Float64Array,
  bottoms: Float64Array,
): Bars {
  const open = new Map<number, Bar>();
  const all: Bar[] = [];
  for (let place = 0; place < order.length; place++) {
    const i = order[place]!;
    const first = firstZone(zones, lefts[i]!);
    const last = lastZone(zones, lefts[i]!, rights[i]!);
    const key = first * 65_536 + last;
    const bar = open.get(key);
    if (bar !== undefined && tops[i]! <= bottoms[bar.bottom]!) {
      if (bottoms[i]! > bottoms[bar.bottom]!) bar.bottom = i;
    } else {
      const fresh = { first, last, top: i, bottom: i };
      open.set(key, fresh);
      all.push(fresh);
    }
  }
  // Two bars alike in everything would have been joined, so no two lie within each other.
  const whole: Bar[] = [];
  for (const bar of all) if (!liesWithinOne(bar, all, tops, bottoms)) whole.push(bar);
  return coded(zones, whole);
}

function liesWithinOne(bar: Bar, all: readonly Bar[], tops: Float64Array, bottoms: Float64Array): boolean {
  const { first, last } = bar;
  const [top, bottom] = [tops[bar.top]!, bottoms[bar.bottom]!];
  for (let i = 0; i < all.length; i++) {
    const other = all[i]!;
    if (first < other.first || last > other.last || other === bar) continue;
    if (top >= tops[other.top]! && bottom <= bottoms[other.bottom]!) return true;
  }
  return false;
}

function coded(zones: Zones, bars: readonly Bar[]): Bars {
  const words = Math.ceil((zones.to - zones.from + 2) / BITS);
  const own = new Int32Array(bars.length * words);
  const laps = new Int32Array(bars.length * words);
  bars.forEach(({ first, last }, i) => {
    for (let zone = first; zone <= last; zone++) {
      const bit = zone >> 1;
      const at = i * words + Math.floor(bit / BITS);
      const bits = zone % 2 === 1 ? own : laps;
      bits[at] = bits[at]! | (1 << (bit % BITS));
    }
  });
  return {
    top: Int32Array.from(bars, ({ top }) => top),
    bottom: Int32Array.from(bars, ({ bottom }) => bottom),
    own,
    laps,
    words,
  };
}
