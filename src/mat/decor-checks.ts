import { box, contains, grown } from '../geometry/box.ts';
import { pathBox } from '../geometry/extent.ts';
import { parallelOf } from '../geometry/parallel.ts';
import type { Size } from '../geometry/point.ts';
import type { Job } from '../job/model.ts';
import { error, type Problem } from '../problems/problem.ts';
import { showLength } from '../units/print.ts';
import type { MatOpening } from './model.ts';

/** Grooves and ink lines that run off the mat, under the frame's lip, or cannot be drawn round their opening. */
export function decorProblems(job: Job, outer: Size, openings: readonly MatOpening[]): readonly Problem[] {
  const seen = grown(box(0, 0, outer.width, outer.height), -(job.mat.frame?.lip ?? 0));
  return job.openings.flatMap((request, index) =>
    (request.decor ?? []).flatMap(({ kind, distance }, at): Problem[] => {
      const opening = openings[index]!;
      const line = parallelOf(opening.layers[0]!.face, distance);
      if (typeof line !== 'string' && contains(seen, pathBox(line))) return [];
      const what = `the ${kind === 'ink' ? 'ink line' : 'groove'} ${showLength(distance, job.units)} round ${opening.name}`;
      const message = `${what} runs off the part of the mat that is seen`;
      const hint = 'bring it nearer to the opening, or make the border wider';
      return [error('line-off-mat', ['openings', index, 'lines', at], message, hint)];
    }),
  );
}
