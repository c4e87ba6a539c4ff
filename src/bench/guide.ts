import type { Point, Size } from '../geometry/point.ts';
import type { Bevel, Guide, Units } from '../job/model.ts';
import { setback } from '../mat/bevel.ts';
import { showLength } from '../units/print.ts';
import type { Setting } from './model.ts';

/** Within this a setting is said without "scant" or "full": half the width of a fine scale line. Common practice, no source. */
export const EXACT_WITHIN = 0.05;

/** How far the board reaches beyond the line through `at`, in the direction `towards` (a unit vector): to its edge, or to its farthest corner. */
export function reach(board: Size, at: Point, towards: Point): number {
  const farthest = Math.max(0, board.width * towards.x) + Math.max(0, board.height * towards.y);
  return farthest - (at.x * towards.x + at.y * towards.y);
}

/**
 * What the guide is set to so that the face line lies `distance` from the edge on the guide. The guide's true setting
 * is a + b·reading, and was zeroed on a board of `guide.setAt`.
 *
 * Where the bar rests on the board, the blade enters its upper surface (the back) at a fixed distance E from the guide and
 * runs down towards the bar, so the face line lies at E − t·cot θ. The guide shows the face line's distance at the
 * thickness it was set at: E = true + t_ref·cot θ. With another thickness the face line is at true + (t_ref − t)·cot θ, hence
 *
 *     true = distance + (t − t_ref)·cot θ.
 *
 * A reverse bevel has the far edge on the guide and the opening under the bar. Its line on the back lies outside the face
 * line, away from the opening, and so away from the guide: again the face line is at E − t·cot θ, and the sign is the same.
 */
export function guideReading(guide: Guide, distance: number, thickness: number, bevel: Bevel): number {
  const term = guide.setAt === undefined ? 0 : setback(thickness - guide.setAt, bevel);
  return (distance + term - guide.a) / guide.b;
}

/**
 * A reading on the nearest graduation. "Scant": the true setting is a little less than the printed one; "full": a little
 * more; `exact` within 0.05 mm.
 */
export function settingOf(reading: number, graduation: number, units: Units): Setting {
  const value = Math.round(reading / graduation + 1e-9) * graduation;
  const remainder = reading - value;
  const sense = Math.abs(remainder) <= EXACT_WITHIN ? 'exact' : remainder < 0 ? 'scant' : 'full';
  return { value, text: showLength(value, units), sense, remainder };
}
