import { type Box, box } from '../geometry/box.ts';
import { placedPath } from '../geometry/path.ts';
import type { Job } from '../job/job.ts';
import type { Mat } from './model.ts';

/**
 * The mat as a layer's own board shows it: boards that are cut apart are marked from their own edges, and one that did not
 * come out in the mat's size lies with its middle on the middle of the mat. The mat itself for every other board.
 */
export function onOwnBoard(mat: Mat, job: Job, layer: number): Mat {
  if (job.bench.stack === 'together' || job.asCut?.blanks[layer] === undefined) return mat;
  const { x, y, width, height } = mat.layers[layer]!.blankBox;
  const moved = (b: Box): Box => box(b.x - x, b.y - y, b.width, b.height);
  const place = (p: { readonly x: number; readonly y: number }) => ({ x: p.x - x, y: p.y - y });
  return {
    ...mat,
    outer: { width, height },
    layers: mat.layers.map((each) => ({ ...each, blankBox: moved(each.blankBox) })),
    openings: mat.openings.map((opening) => ({
      ...opening,
      sight: moved(opening.sight),
      ...(opening.artwork === undefined ? {} : { artwork: { ...opening.artwork, box: moved(opening.artwork.box) } }),
      layers: opening.layers.map((each) => ({
        ...each,
        face: placedPath(each.face, place),
        back: placedPath(each.back, place),
        faceBox: moved(each.faceBox),
        backBox: moved(each.backBox),
        border: {
          top: each.border.top - y,
          left: each.border.left - x,
          right: each.border.right - (mat.outer.width - width - x),
          bottom: each.border.bottom - (mat.outer.height - height - y),
        },
      })),
    })),
  };
}
