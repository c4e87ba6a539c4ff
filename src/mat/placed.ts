import { type Box, bottom, box, grown, right } from '../geometry/box.ts';
import type { BySide, Job } from '../job/model.ts';
import { backInset } from './bevel.ts';
import type { Artwork, MatOpening, OpeningLayer } from './model.ts';
import type { Sizes } from './sizes.ts';
import { measuredInset } from './unknowns.ts';

/** An opening where every box lies, before its outlines are drawn; a box of nothing has a size of 0 or less. */
export interface PlacedOpening extends Omit<MatOpening, 'layers'> {
  readonly layers: readonly PlacedLayer[];
}

export type PlacedLayer = Omit<OpeningLayer, 'face' | 'back'>;

const allSides = (length: number): BySide<number> => ({ top: length, right: length, bottom: length, left: length });

/** Distance from each side of `outside` inwards to the same side of `inside`. */
function insets(outside: Box, inside: Box): BySide<number> {
  return {
    top: inside.y - outside.y,
    right: right(outside) - right(inside),
    bottom: bottom(outside) - bottom(inside),
    left: inside.x - outside.x,
  };
}

/** What all of the boxes have in common. */
function innermost(boxes: readonly Box[]): Box {
  const x = Math.max(...boxes.map((each) => each.x));
  const y = Math.max(...boxes.map((each) => each.y));
  return box(x, y, Math.min(...boxes.map(right)) - x, Math.min(...boxes.map(bottom)) - y);
}

function placedLayer(job: Job, sizes: Sizes, index: number, faceBox: Box): PlacedLayer {
  const { board, bevel } = job.mat.layers[index]!;
  const above = job.mat.layers[index - 1];
  const reveal = sizes.reveals[index]!;
  const border = insets(box(0, 0, sizes.outer.width, sizes.outer.height), faceBox);
  // A normal bevel above hides its setback of the reveal, a reversed one nothing.
  const hidden = above === undefined ? 0 : Math.max(0, backInset(above.board.thickness, above.bevel));
  return {
    faceBox,
    backBox: grown(faceBox, -backInset(board.thickness, bevel)),
    border,
    reveal: allSides(reveal),
    strip: above === undefined ? border : allSides(reveal - hidden),
  };
}

/** The artwork lies where the overlaps at the measured edge put it; what is really covered is told at the sight. */
function placedArtwork(job: Job, sizes: Sizes, lowest: Box, sight: Box): Artwork | undefined {
  const request = job.openings[0]!;
  if (request.artwork === undefined || sizes.overlap === undefined) return undefined;
  const measured = grown(lowest, -measuredInset(job));
  const { width, height } = request.artwork;
  const place = box(measured.x - sizes.overlap.left, measured.y - sizes.overlap.top, width, height);
  return {
    size: { width, height },
    box: place,
    overlap: insets(place, sight),
    floated: request.float !== undefined,
  };
}

/** Where the job's opening lies in every layer, and what is seen through it. */
export function placeOpening(job: Job, sizes: Sizes): PlacedOpening {
  const request = job.openings[0]!;
  const { border, outer } = sizes;
  const width = outer.width - border.left - border.right;
  const height = outer.height - border.top - border.bottom;
  let face = box(border.left, border.top, width, height);
  const layers = sizes.reveals.map((reveal, index) => {
    face = grown(face, -reveal);
    return placedLayer(job, sizes, index, face);
  });
  const sight = innermost(layers.flatMap((layer) => [layer.faceBox, layer.backBox]));
  const artwork = placedArtwork(job, sizes, face, sight);
  const placed = { name: request.name ?? 'opening 1', shape: request.shape, sight, layers };
  return artwork === undefined ? placed : { ...placed, artwork };
}
