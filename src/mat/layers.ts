import { type Box, box, grown } from '../geometry/box.ts';
import type { Size } from '../geometry/point.ts';
import type { Job } from '../job/job.ts';
import type { LayerRequest } from '../job/layer.ts';
import { bevelFace, setback } from './bevel.ts';
import type { MatLayer } from './model.ts';

/** What messages and documents call a layer: `top mat`, `under mat 1` … */
export const layerName = (index: number): string => (index === 0 ? 'top mat' : `under mat ${index}`);
/** The same within a sentence: `the top mat`, `under mat 1` … */
export const theLayer = (index: number): string => theNamed(layerName(index));
/** And of a layer known by its name. */
export const theNamed = (name: string): string => (name === layerName(0) ? `the ${name}` : name);

/**
 * What comes off each edge of a layer's board: the top mat and boards that are cut apart are full size, an under mat
 * that is cut together with the top mat stays short of every edge.
 */
export function trimOf(job: Job, index: number): number {
  return index === 0 || job.bench.stack === 'apart' ? 0 : job.mat.layers[index]!.trimBack;
}

/** Where a layer's blank lies over the top mat; one that was cut in another size lies in the middle. */
function blankOf(job: Job, index: number, outer: Size): Box {
  const cut = index === 0 ? undefined : job.asCut?.blanks[index];
  if (cut === undefined) return grown(box(0, 0, outer.width, outer.height), -trimOf(job, index));
  return box((outer.width - cut.width) / 2, (outer.height - cut.height) / 2, cut.width, cut.height);
}

function matLayer(job: Job, request: LayerRequest, index: number, outer: Size): MatLayer {
  const blankBox = blankOf(job, index, outer);
  const trim = job.bench.stack === 'apart' ? 0 : Math.min(blankBox.x, blankBox.y);
  return {
    name: layerName(index),
    board: request.board,
    bevel: request.bevel,
    setback: setback(request.board.thickness, request.bevel),
    bevelFace: bevelFace(request.board.thickness, request.bevel),
    blank: { width: blankBox.width, height: blankBox.height },
    trimBack: trim,
    blankBox,
  };
}

export function matLayers(job: Job, outer: Size): readonly MatLayer[] {
  return job.mat.layers.map((request, index) => matLayer(job, request, index, outer));
}
