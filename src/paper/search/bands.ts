import { EPSILON, type Zones, zoneAt } from './zones.ts';

/**
 * Everything drawn, its boxes parted by how they lie across: those that begin and end alike are one band. How a band runs
 * down is told in steps: the places where some box begins or ends and what lies between two of them, by turns.
 */
export interface Bands {
  readonly lefts: Float64Array;
  readonly rights: Float64Array;
  /** From the first step of each stretch to its last … */
  readonly first: Int32Array;
  readonly last: Int32Array;
  /** … the stretches as they begin, and as they end; and the band of each. */
  readonly byFirst: Int32Array;
  readonly byLast: Int32Array;
  readonly owner: Int32Array;
  /** The places, rising: place k is step 2k. */
  readonly places: Float64Array;
}

interface Stretch {
  readonly first: number;
  last: number;
  /** Where its lowest box ends. */
  end: number;
}

/** Along x the boxes' `lefts` and `rights`, downwards their `tops` and `bottoms`. */
export function bandsOf(lefts: Float64Array, rights: Float64Array, tops: Float64Array, bottoms: Float64Array): Bands {
  const order = [...tops.keys()].sort((a, b) => tops[a]! - tops[b]!);
  const ends = tops.map((top, i) => Math.max(top + EPSILON, bottoms[i]! - EPSILON));
  const places = risingPlaces(tops, ends);
  const bands = new Map<number, Map<number, Stretch[]>>();
  let count = 0;
  for (let n = 0; n < order.length; n++) {
    const i = order[n]!;
    const beside = bands.get(lefts[i]!) ?? new Map<number, Stretch[]>();
    bands.set(lefts[i]!, beside);
    const band = beside.get(rights[i]!) ?? [];
    beside.set(rights[i]!, band);
    const open = band.at(-1);
    const last = 2 * placeOf(places, ends[i]!);
    if (open !== undefined && tops[i]! <= open.end) {
      open.last = Math.max(open.last, last);
      open.end = Math.max(open.end, bottoms[i]!);
    } else {
      band.push({ first: 2 * placeOf(places, tops[i]! + EPSILON), last, end: bottoms[i]! });
      count++;
    }
  }
  const all = [...bands].flatMap(([left, beside]) => [...beside].map(([right, band]) => ({ left, right, band })));
  const [first, last, owner] = [new Int32Array(count), new Int32Array(count), new Int32Array(count)];
  let at = 0;
  all.forEach(({ band }, i) => {
    for (const stretch of band) {
      first[at] = stretch.first;
      last[at] = stretch.last;
      owner[at] = i;
      at++;
    }
  });
  return {
    lefts: Float64Array.from(all, ({ left }) => left),
    rights: Float64Array.from(all, ({ right }) => right),
    first,
    last,
    byFirst: inOrderOf(first),
    byLast: inOrderOf(last),
    owner,
    places,
  };
}

const inOrderOf = (steps: Int32Array): Int32Array => steps.map((_, i) => i).sort((a, b) => steps[a]! - steps[b]!);

function risingPlaces(tops: Float64Array, ends: Float64Array): Float64Array {
  const all = new Float64Array(2 * tops.length);
  for (let i = 0; i < tops.length; i++) {
    all[2 * i] = tops[i]! + EPSILON;
    all[2 * i + 1] = ends[i]!;
  }
  all.sort();
  let count = 0;
  for (let i = 0; i < all.length; i++) if (i === 0 || all[i] !== all[i - 1]) all[count++] = all[i]!;
  return all.slice(0, count);
}

/** Its number among places that hold it. */
function placeOf(places: Float64Array, at: number): number {
  let low = 0;
  let high = places.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (places[middle]! < at) low = middle + 1;
    else high = middle;
  }
  return low;
}

export const BITS = 30;
/** So many steps are one block. */
const BLOCK = 32;

/** What is drawn over some columns, step by step downwards: `words` numbers of 30 bits a step. */
export interface Shown {
  /** The sheets that alone show some of it … */
  readonly own: Levels;
  /** … and the laps that some of it lies in, each named by the sheet behind it. */
  readonly laps: Levels;
  readonly words: number;
}

/** The bits of each step, and those of each block of steps together. */
interface Levels {
  readonly steps: Int32Array;
  readonly blocks: Int32Array;
}

export function shownOf(zones: Zones, bands: Bands): Shown {
  const { lefts, rights, places } = bands;
  const words = Math.ceil((zones.to - zones.from + 2) / BITS);
  const steps = Math.max(0, 2 * places.length - 1);
  const [ownBits, lapBits] = [new Int32Array(lefts.length * words), new Int32Array(lefts.length * words)];
  for (let band = 0; band < lefts.length; band++) {
    const from = zoneAt(zones, lefts[band]! + EPSILON);
    const to = Math.max(from, zoneAt(zones, rights[band]! - EPSILON));
    for (let zone = from; zone <= to; zone++) {
      const bit = zone >> 1;
      const bits = zone % 2 === 1 ? ownBits : lapBits;
      const at = band * words + Math.floor(bit / BITS);
      bits[at] = bits[at]! | (1 << (bit % BITS));
    }
  }
  const levels = (bits: Int32Array): Levels => levelsOf(spread(bits, words, steps, bands), words);
  return { own: levels(ownBits), laps: levels(lapBits), words };
}

/** The bits of every band at each of its steps: of those that have begun and not ended, how many have each of the bits. */
function spread(bits: Int32Array, words: number, steps: number, bands: Bands): Int32Array {
  const { first, last, byFirst, byLast, owner } = bands;
  const all = new Int32Array(steps * words);
  const open = new Int32Array(words);
  const counts = new Int32Array(words * BITS);
  const change = (stretch: number, by: 1 | -1): void => {
    for (let w = 0; w < words; w++) {
      for (let left = bits[owner[stretch]! * words + w]!; left !== 0; left &= left - 1) {
        const bit = 31 - Math.clz32(left & -left);
        const count = counts[w * BITS + bit]! + by;
        counts[w * BITS + bit] = count;
        if (count === 0 || (count === 1 && by === 1)) open[w] = open[w]! ^ (1 << bit);
      }
    }
  };
  let [begun, ended] = [0, 0];
  for (let step = 0; step < steps; step++) {
    for (; begun < byFirst.length && first[byFirst[begun]!] === step; begun++) change(byFirst[begun]!, 1);
    for (let w = 0; w < words; w++) all[step * words + w] = open[w]!;
    for (; ended < byLast.length && last[byLast[ended]!] === step; ended++) change(byLast[ended]!, -1);
  }
  return all;
}

function levelsOf(steps: Int32Array, words: number): Levels {
  const blocks = new Int32Array(Math.ceil(steps.length / words / BLOCK) * words);
  for (let at = 0; at < steps.length; at++) {
    const block = Math.floor(Math.floor(at / words) / BLOCK) * words + (at % words);
    blocks[block] = blocks[block]! | steps[at]!;
  }
  return { steps, blocks };
}

/** All bits of a word from a step up to another, which does not count. */
export function bitsIn({ steps, blocks }: Levels, words: number, word: number, from: number, to: number): number {
  let bits = 0;
  let step = from;
  while (step < to) {
    if (step % BLOCK === 0 && step + BLOCK <= to) {
      bits |= blocks[(step / BLOCK) * words + word]!;
      step += BLOCK;
    } else {
      bits |= steps[step * words + word]!;
      step++;
    }
  }
  return bits;
}

/** The steps of every zone downwards, from one up to another that does not count: one that holds no place is what lies between two. */
export function stepsOf(zones: Zones, { places }: Bands): Int32Array {
  const count = 2 * (zones.to - zones.from + 1) + 1;
  const ranges = new Int32Array(2 * count);
  let before = 0;
  for (let zone = 0; zone < count; zone++) {
    const behind = firstBeyond(zones, places, zone, before);
    const between = 2 * before - 1;
    const isBetween = behind === before && before > 0 && before < places.length;
    ranges[2 * zone] = isBetween ? between : 2 * before;
    ranges[2 * zone + 1] = isBetween ? between + 1 : Math.max(2 * before, 2 * behind - 1);
    before = behind;
  }
  return ranges;
}

/** The first place, from one on, that lies beyond a zone. */
function firstBeyond(zones: Zones, places: Float64Array, zone: number, from: number): number {
  let low = from;
  let high = places.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (zoneAt(zones, places[middle]!) <= zone) low = middle + 1;
    else high = middle;
  }
  return low;
}
