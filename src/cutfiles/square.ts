import type { Job } from '../job/job.ts';
import type { Mat } from '../mat/model.ts';
import type { SightChange } from './model.ts';

/** The same job with every layer cut square: a beam or an upright blade makes no bevel. */
export function squared(job: Job): Job {
  const layers = job.mat.layers.map((layer) => ({ ...layer, bevel: { angle: 90, reverse: false } }));
  return { ...job, mat: { ...job.mat, layers } };
}

const SAME = 1e-6;

/** Openings through which more or less is seen than with the job's own bevels. */
export function sightChanges(own: Mat, cut: Mat): readonly SightChange[] {
  return own.openings.flatMap((opening, i) => {
    const job = { width: opening.sight.width, height: opening.sight.height };
    const now = cut.openings[i]!.sight;
    const same = Math.abs(job.width - now.width) < SAME && Math.abs(job.height - now.height) < SAME;
    return same ? [] : [{ opening: opening.name, job, cut: { width: now.width, height: now.height } }];
  });
}
