import type { Wait } from '../bench/work/lots.ts';
import type { JobToCut } from './blanks.ts';
import { layersBefore } from './fallout.ts';
import type { BoardLayouts } from './layouts.ts';

/** The blanks of a day that come out of fallouts of the same day: each waits for the layers that free it. */
export function falloutWaits(day: readonly BoardLayouts[], jobs: readonly JobToCut[]): readonly Wait[] {
  return day.flatMap(({ layouts }) =>
    layouts.flatMap(({ from, pieces }): readonly Wait[] => {
      if (from.kind !== 'fallout' || from.blank.layer === undefined) return [];
      const { job, layer } = from.blank;
      const source = jobs[job]!;
      const layers = layersBefore(source.mat, source.job, layer).map((index) => index + 1);
      return pieces.flatMap(({ blank }) =>
        blank.layer === undefined ? [] : [{ job: blank.job, layer: blank.layer + 1, after: { job, layers } }],
      );
    }),
  );
}
