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
}

/** Stretches that reach into a zone by less than this do not count as drawn there. */
export const EPSILON = 1e-6;

/** The zone of a place, counted from the lap before sheet `from`. */
export function zoneAt({ origin, pitch, lap, from }: Zones, at: number): number {
  return zoneOf(at - origin, pitch, lap) - 2 * from;
}

/** The zone that a stretch begins in. */
export const firstZone = (zones: Zones, low: number): number => zoneAt(zones, low + EPSILON);

/** The zone that it ends in. */
export function lastZone(zones: Zones, low: number, high: number): number {
  return Math.max(firstZone(zones, low), zoneAt(zones, high - EPSILON));
}

/** The zones of stretches that begin from `lowest` to `lastLow` and end at `highest` at the latest. */
export function zonesAt(
  origin: number,
  pitch: number,
  lap: number,
  lowest: number,
  lastLow: number,
  highest: number,
): Zones {
  const first = zoneOf(lowest + EPSILON - origin, pitch, lap);
  const last = Math.max(zoneOf(lastLow + EPSILON - origin, pitch, lap), zoneOf(highest - EPSILON - origin, pitch, lap));
  const from = Math.floor(first / 2);
  return { origin, pitch, lap, from, to: Math.max(from, Math.floor((last - 1) / 2)) };
}

function zoneOf(distance: number, pitch: number, lap: number): number {
  const sheet = Math.floor(distance / pitch);
  return distance - sheet * pitch < lap ? 2 * sheet : 2 * sheet + 1;
}
