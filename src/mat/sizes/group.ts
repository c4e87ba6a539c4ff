import type { BySide, Side } from '../../geometry/sides.ts';
import type { ArrangeRequest } from '../../job/arrange.ts';
import type { Job } from '../../job/job.ts';
import type { OpeningRequest } from '../../job/opening.ts';

/** How the openings of a job are solved together. */
export interface Group {
  /** For each opening the first one that asks for the same; they share their unknowns. */
  readonly alikes: readonly number[];
  /** The first of each kind. */
  readonly kinds: readonly number[];
  /** Openings that the borders go round, by index, row by row. */
  readonly arranged: readonly (readonly number[])[];
  readonly arrange: ArrangeRequest;
  /** Openings with a place of their own on the mat, and those that lie below another. */
  readonly placed: readonly number[];
  readonly below: readonly number[];
}

const ONE: ArrangeRequest = { rows: [1], columns: false, align: 'centre', fill: false };

export function groupOf(job: Job): Group {
  const keys = new Map<string, number>();
  const alikes = job.openings.map((request, index) => {
    const key = sizeKey(request);
    const first = keys.get(key) ?? index;
    keys.set(key, first);
    return first;
  });
  const indices = [...job.openings.keys()];
  const placed = indices.filter((i) => hasPlace(job.openings[i]!));
  const below = indices.filter((i) => job.openings[i]!.place?.below !== undefined);
  const free = indices.filter((i) => !placed.includes(i) && !below.includes(i));
  const arrange = job.arrange ?? { ...ONE, rows: [free.length] };
  let taken = 0;
  const arranged = arrange.rows.map((count) => {
    taken += count;
    return free.slice(taken - count, taken);
  });
  return {
    alikes,
    kinds: [...new Set(alikes)],
    arranged: arranged.filter((row) => row.length > 0),
    arrange,
    placed,
    below,
  };
}

const hasPlace = ({ place }: OpeningRequest): boolean => place !== undefined && place.below === undefined;

/** What settles an opening's size; names, places and decoration do not. */
function sizeKey({ name: _, place: _p, decor: _d, ...rest }: OpeningRequest): string {
  return JSON.stringify(rest);
}

/** How much farther out each opening's face in the top mat lies than its reveals say, by kind: slanting sides reach farther. */
export type Excess = ReadonlyMap<number, BySide<number>>;
export const NO_EXCESS: Excess = new Map();
export const excessAt = (excess: Excess, of: number, side: Side): number => excess.get(of)?.[side] ?? 0;
