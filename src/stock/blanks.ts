import type { Size } from '../geometry/point.ts';
import type { Job } from '../job/job.ts';
import type { Mat } from '../mat/model.ts';
import type { Board } from '../shop/board.ts';

/** A job with its mat, as far as its blanks go. */
export interface JobToCut {
  readonly job: Job;
  readonly mat: Mat;
  /** As the shop counts its jobs. */
  readonly number?: string;
}

/** What blanks are cut from: a board, or the backing of a frame. */
export type Material = Pick<
  Board,
  'id' | 'name' | 'code' | 'thickness' | 'sheets' | 'directional' | 'price' | 'areaPrice'
> & {
  /** Of a board's face. */
  readonly colour?: string;
  readonly kind: 'board' | 'backing';
};

/** One kind of blank of one job. */
export interface Blank extends Size {
  /** Index of the job. */
  readonly job: number;
  /** Index of the layer; undefined for what lies behind the artwork. */
  readonly layer?: number;
  /** `top mat`, `under mat 1` …, `backing`. */
  readonly name: string;
  readonly material: Material;
  readonly count: number;
  /** Cut already, as the job says. */
  readonly cut: boolean;
}

export const boardMaterial = (board: Board): Material => ({ ...board, kind: 'board' });

/** The blanks of all layers, job by job, trimmed back where layers are stacked. */
export function layerBlanks(jobs: readonly JobToCut[]): readonly (Blank & { readonly layer: number })[] {
  return jobs.flatMap(({ job, mat }, j) =>
    mat.layers.map(({ board, blank, name }, layer) => ({
      ...blank,
      job: j,
      layer,
      name,
      material: boardMaterial(board),
      count: job.count,
      cut: isCut(job, layer),
    })),
  );
}

/** What was measured once it was cut needs no board any more; nor does a layer with an opening in it. */
function isCut({ asCut }: Job, layer: number): boolean {
  if (asCut === undefined) return false;
  if (layer === 0 && asCut.outer !== undefined) return true;
  return asCut.blanks[layer] !== undefined || asCut.openings.some((opening) => opening.layer >= layer);
}

/** The backings of frames that name one, and one of the shop's `backing` board for each piece where there is such. */
export function backingBlanks(jobs: readonly JobToCut[], backing: Board | undefined): readonly Blank[] {
  return jobs.flatMap(({ job, mat }, j) => {
    const common = { ...mat.backing, job: j, count: job.count, cut: false };
    const part = job.mat.frame?.backing;
    const framed: Material[] =
      part === undefined
        ? []
        : [
            {
              kind: 'backing',
              id: part.id,
              name: part.name,
              thickness: part.thickness,
              sheets: part.sheets ?? [],
              directional: false,
              ...(part.price?.per === 'squareFoot' || part.price?.per === 'squareMetre'
                ? { areaPrice: part.price }
                : {}),
            },
          ];
    return [
      ...(backing === undefined ? [] : [{ ...common, name: 'backing board', material: boardMaterial(backing) }]),
      ...framed.map((material) => ({ ...common, name: 'backing', material })),
    ];
  });
}

/** What a job is called on lists of several. */
export function jobName(jobs: readonly JobToCut[], index: number): string {
  const { job, number } = jobs[index]!;
  if (number !== undefined) return number;
  const same = jobs.filter((each) => each.job.title === job.title).length > 1;
  return same ? `job ${index + 1}, ${job.title}` : job.title;
}
