import type { Job } from '../job/job.ts';
import type { Bevel } from '../job/layer.ts';
import type { Guide } from '../shop/guide.ts';
import { setback } from './bevel.ts';

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
  return (distance - guideZero(guide, thickness, bevel)) / guide.b;
}

/** The distance at which the guide reads 0. */
export function guideZero(guide: Guide, thickness: number, bevel: Bevel): number {
  const term = guide.setAt === undefined ? 0 : setback(thickness - guide.setAt, bevel);
  return guide.a - term;
}

/** What lies under the bar: a pattern that is cut through stays on the board and lifts it. */
export function underBar(job: Job, layer: number): number {
  const { thickness } = job.mat.layers[layer]!.board;
  return thickness + (job.print.transfer === 'prick' ? 0 : job.print.paperThickness);
}
