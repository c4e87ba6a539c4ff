/**
 * One axis of a grid of sheets. Sheets begin every `pitch` and are `pitch + lap` long, so the axis falls into zones
 * by turns: the lap before sheet c is zone 2c, what sheet c alone shows is zone 2c + 1. Sheet c shows 2c to 2c + 2.
 * Neighbours alone share: a lap is at most half a sheet.
 */
export interface Zones {
  /** Where sheet 0 begins. */
  readonly origin: number;
  readonly pitch: number;
  readonly lap: number;
  /** The sheets that are wanted at all: one further out shows nothing that its neighbour does not. */
  readonly from: number;
  readonly to: number;
  /** The first and the last zone that each drawn stretch lies in, counted from the lap before sheet `from`. */
  readonly first: Int32Array;
  readonly last: Int32Array;
}

/** Stretches that reach into a zone by less than this do not count as drawn there. */
const EPSILON = 1e-6;

export function zonesAt(origin: number, pitch: number, lap: number, lows: Float64Array, highs: Float64Array): Zones {
  const count = lows.length;
  const first = new Int32Array(count);
  const last = new Int32Array(count);
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < count; i++) {
    const a = zoneOf(lows[i]! + EPSILON - origin, pitch, lap);
    const b = Math.max(a, zoneOf(highs[i]! - EPSILON - origin, pitch, lap));
    first[i] = a;
    last[i] = b;
    if (a < lowest) lowest = a;
    if (b > highest) highest = b;
  }
  const from = Math.floor(lowest / 2);
  const to = Math.max(from, Math.floor((highest - 1) / 2));
  for (let i = 0; i < count; i++) {
    first[i] = first[i]! - 2 * from;
    last[i] = last[i]! - 2 * from;
  }
  return { origin, pitch, lap, from, to, first, last };
}

function zoneOf(distance: number, pitch: number, lap: number): number {
  const sheet = Math.floor(distance / pitch);
  return distance - sheet * pitch < lap ? 2 * sheet : 2 * sheet + 1;
}
