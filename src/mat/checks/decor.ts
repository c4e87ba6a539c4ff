import { box, contains, grown } from '../../geometry/box.ts';
import { pathBox } from '../../geometry/extent.ts';
import { parallelOf } from '../../geometry/parallel.ts';
import type { Size } from '../../geometry/point.ts';
import type { Job } from '../../job/job.ts';
import { error, type Problem } from '../../problems/problem.ts';
import { showLength } from '../../units/print.ts';
import { grooveDepth, runsAlong } from '../decor.ts';
import type { MatOpening } from '../model.ts';

/** Grooves and ink lines that run off the mat, under the frame's lip, or cannot be drawn round their opening. */
export function decorProblems(job: Job, outer: Size, openings: readonly MatOpening[]): readonly Problem[] {
  const seen = grown(box(0, 0, outer.width, outer.height), -(job.mat.frame?.lip ?? 0));
  return job.openings.flatMap((request, index) =>
    (request.decor ?? []).flatMap((each, at): Problem[] => {
      const { kind, distance, sides } = each;
      const opening = openings[index]!;
      const line = parallelOf(opening.layers[0]!.face, distance);
      const what = `the ${kind === 'ink' ? 'ink line' : 'groove'} ${showLength(distance, job.units)} round ${opening.name}`;
      const path = ['openings', index, 'lines', at];
      const deep = grooveDepth(each);
      const { thickness } = job.mat.layers[0]!.board;
      if (kind === 'groove' && deep >= thickness - 1e-9) {
        const message = `${what} would be ${showLength(deep, 'mm')} deep, the board is ${showLength(thickness, 'mm')} thick`;
        return [error('groove-deep', [...path, 'width'], message, 'make it narrower: a groove must not go through')];
      }
      if (typeof line !== 'string') {
        const none = sides?.find((side) => runsAlong(line, [side]).length === 0);
        if (none !== undefined) {
          const message = `${what}, ${request.shape}, has no straight ${none} side`;
          return [error('line-side-none', [...path, 'sides'], message, 'take it out, or leave sides out')];
        }
        if (runsAlong(line, sides).every((run) => contains(seen, pathBox(run)))) return [];
      }
      const message = `${what} runs off the part of the mat that is seen`;
      const hint = 'bring it nearer to the opening, or make the border wider';
      return [error('line-off-mat', path, message, hint)];
    }),
  );
}
