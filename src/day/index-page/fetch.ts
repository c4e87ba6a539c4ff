import { size } from '../../documents/proof/words.ts';
import type { IndexedJob } from './model.ts';

/** One kind of thing, the pieces of all jobs together. */
export interface ToFetch {
  readonly what: string;
  readonly count: number;
  /** `6 of 16 × 20 in` and so on, the most first. */
  readonly sizes: readonly string[];
}

/** Boards in the order in which jobs first name them, then glazing and backing. */
export function toFetch(jobs: readonly IndexedJob[]): readonly ToFetch[] {
  const found = new Map<string, Map<string, number>>();
  const add = (what: string, shown: string, count: number): void => {
    const sizes = found.get(what) ?? new Map<string, number>();
    found.set(what, sizes.set(shown, (sizes.get(shown) ?? 0) + count));
  };
  for (const { report } of jobs)
    for (const { board, blank } of report.layers) add(`Board ${board}`, size(blank, report.units), report.count);
  for (const { report } of jobs) add('Glazing', size(report.glazing, report.units), report.count);
  for (const { report } of jobs) add('Backing', size(report.backing, report.units), report.count);
  return [...found].map(([what, sizes]) => ({
    what,
    count: [...sizes.values()].reduce((sum, count) => sum + count, 0),
    sizes: [...sizes].sort(([, a], [, b]) => b - a).map(([shown, count]) => `${count} of ${shown}`),
  }));
}
