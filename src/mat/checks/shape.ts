import type { Job } from '../../job/job.ts';
import { error, type Problem } from '../../problems/problem.ts';
import { shapeOf } from '../../shapes/shapes.ts';
import { fieldsOf, measuredSize } from '../figure.ts';
import type { MatOpening } from '../model.ts';
import { openingName } from '../names.ts';
import type { AllSizes } from '../sizes/model.ts';

/** Sizes that their shapes cannot have. */
export function shapeProblems(job: Job, sizes: AllSizes): readonly Problem[] {
  return job.openings.flatMap((request, index) => {
    const size = measuredSize(job, request, sizes.openings[index]!);
    if (!(size.width > 0 && size.height > 0)) return [];
    const fault = shapeOf(request.shape).fault?.(size, fieldsOf(request, size));
    if (fault === undefined) return [];
    const path = ['openings', index, ...(fault.field === undefined ? ['shape'] : [fault.field])];
    return [error('shape-unfit', path, `${openingName(job, index)} ${fault.message}`, fault.hint)];
  });
}

/** Outlines of which nothing, or several pieces, are left in a layer. */
export function fallenApart(job: Job, openings: readonly (MatOpening | undefined)[]): readonly Problem[] {
  return openings.flatMap((opening, index) => {
    if (opening !== undefined) return [];
    const { shape } = job.openings[index]!;
    const message = `${openingName(job, index)}, ${shape}, is so narrow somewhere that its line falls apart in one of the layers`;
    const hint = 'make it larger or plainer, the reveals smaller, or the bevel steeper';
    return [error('outline-falls-apart', ['openings', index, 'shape'], message, hint)];
  });
}
