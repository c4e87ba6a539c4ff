import type { Axis } from './axis.ts';
import { firstZone, lastZone, type Zones } from './zones.ts';

/**
 * Four things drawn that go round the rest, as the edges of a board do: by their places in the list of boxes. Where
 * they reach into what every sheet along them alone shows, each sheet on the outside of the grid is needed, and that
 * spares counting in almost every grid.
 */
export interface Rim {
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
}

/** How far in from the outermost a part of the rim may begin, mm. */
const OUTSIDE = 2;

/** The longest things along the four sides. Whether they go round is asked of every grid. */
export function rimOf(x: Axis, y: Axis): Rim {
  return { top: along(x, y, false), bottom: along(x, y, true), left: along(y, x, false), right: along(y, x, true) };
}

function along(long: Axis, across: Axis, atEnd: boolean): number {
  let best = 0;
  let length = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < long.lows.length; i++) {
    const outside = atEnd ? across.highs[i]! >= across.to - OUTSIDE : across.lows[i]! <= across.from + OUTSIDE;
    const own = long.highs[i]! - long.lows[i]!;
    if (outside && own > length) [best, length] = [i, own];
  }
  return best;
}

/** How far the edges along an axis reach: into every sheet, into every sheet but the end ones, or less. */
export type Reach = 'whole' | 'but ends' | 'less';

/** `long` are the edges that run along the axis; `first` and `last`, across it, must lie in its end sheets. */
export function reachOf(axis: Axis, zones: Zones, long: readonly number[], first: number, last: number): Reach {
  const { lows, highs } = axis;
  const end = 2 * (zones.to - zones.from) + 1;
  if (firstZone(zones, lows[first]!) > 1 || lastZone(zones, lows[last]!, highs[last]!) < end) return 'less';
  const within = (short: number): boolean =>
    long.every((i) => firstZone(zones, lows[i]!) <= 1 + short && lastZone(zones, lows[i]!, highs[i]!) >= end - short);
  return within(0) ? 'whole' : within(2) ? 'but ends' : 'less';
}

/** Whether every sheet on the outside of a grid is needed. A sheet at a corner is, as soon as one edge reaches into it. */
export function goesRound(across: Reach, down: Reach): boolean {
  return across !== 'less' && down !== 'less' && (across === 'whole' || down === 'whole');
}

/** The sheets on the outside of a grid. */
export function sheetsOnRim(rows: number, columns: number): number {
  return rows <= 2 || columns <= 2 ? rows * columns : 2 * (rows + columns) - 4;
}
