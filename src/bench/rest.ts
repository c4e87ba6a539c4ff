import type { Point, Size } from '../geometry/point.ts';
import { mmFromInches, type Units } from '../units/units.ts';
import { reach, settingOf } from './guide.ts';
import type { Rest, Stroke } from './model.ts';

/** What a rule on the board is read to: a 32nd of an inch, half a millimetre (as pencil marks are). */
export const finest = (units: Units): number => (units === 'in' ? mmFromInches(1 / 32) : 0.5);

/**
 * Where a stroke is laid by a rule, since the guide cannot be set: what is measured from the edge that the guide would
 * rest on (`towards` it) is the bar's edge where a bar is used, the straightedge, else the line that is followed.
 */
export function restOf(
  board: Size,
  {
    bar,
    straightedge,
    line,
  }: Pick<Stroke, 'line'> & { readonly [rest in 'bar' | 'straightedge']: Stroke[rest] | undefined },
  towards: Point,
  units: Units,
): Rest {
  const to = straightedge !== undefined ? 'straightedge' : bar !== undefined ? 'bar' : 'line';
  const distance = reach(board, (straightedge ?? bar ?? line).from, towards);
  const from = Math.abs(towards.x * towards.y) > 1e-9 ? 'corner' : 'edge';
  return { to, from, distance, setting: settingOf(distance, finest(units), units) };
}
