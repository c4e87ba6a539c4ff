import type { Job } from '../job/job.ts';
import { backInset } from './bevel.ts';
import { figurePath, measuredSize } from './figure.ts';
import type { MatOpening, OpeningLayer } from './model.ts';
import type { PlacedOpening } from './placed.ts';
import type { Sizes } from './sizes/model.ts';

/** Draws the face and back lines of every layer; undefined where one of them has nothing left. */
export function outlined(job: Job, index: number, placed: PlacedOpening, sizes: Sizes): MatOpening | undefined {
  const request = job.openings[index]!;
  const measured = measuredSize(job, request, sizes);
  const layers: OpeningLayer[] = [];
  const cut = (job.asCut?.openings ?? []).filter((each) => each.opening === index).map((each) => each.layer);
  const deepest = Math.max(-1, ...cut);
  for (const [k, { figure, ...layer }] of placed.layers.entries()) {
    const { board, bevel } = job.mat.layers[k]!;
    const face = figurePath(request, figure, measured);
    // Towards the middle of the opening for a normal bevel, away from it for a reversed one.
    const back = figurePath(request, { ...figure, by: figure.by - backInset(board.thickness, bevel) }, measured);
    if (face === undefined || back === undefined) return undefined;
    layers.push({ ...layer, face, back, ...(k <= deepest ? { cut: true as const } : {}) });
  }
  return { ...placed, layers };
}
