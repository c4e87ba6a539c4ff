import { type Box, bottom, box, grown, right } from '../geometry/box.ts';
import type { BySide } from '../geometry/sides.ts';
import type { Job } from '../job/job.ts';
import { defined } from '../problems/defined.ts';
import { backInset } from './bevel.ts';
import { figureBox, figuresOf, type LayerFigure, measuredSize, reachOf } from './figure.ts';
import type { Artwork, MatOpening, OpeningLayer } from './model.ts';
import { openingName } from './names.ts';
import type { Sizes } from './sizes/model.ts';
import { measuredInset, seenLayers } from './sizes/unknowns.ts';

/** An opening where every box lies, before its outlines are drawn; a box of nothing has a size of 0 or less. */
export interface PlacedOpening extends Omit<MatOpening, 'layers'> {
  readonly layers: readonly PlacedLayer[];
}

export interface PlacedLayer extends Omit<OpeningLayer, 'face' | 'back'> {
  readonly figure: LayerFigure;
}

const NONE: BySide<number> = { top: 0, right: 0, bottom: 0, left: 0 };

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

function placedLayer(job: Job, index: number, opening: number, sizes: Sizes, figure: LayerFigure): PlacedLayer {
  const request = job.openings[opening]!;
  const { board, bevel } = job.mat.layers[index]!;
  const measured = measuredSize(job, request, sizes);
  const faceBox = figureBox(request, figure, measured);
  const inset = backInset(board.thickness, bevel);
  const border = insets(box(0, 0, sizes.outer.width, sizes.outer.height), faceBox);
  const reveal = sizes.reveals[index] ?? NONE;
  const seen = seenLayers(job, request).filter((each) => each < index);
  const above = index === 0 ? undefined : job.mat.layers[seen.at(-1)!];
  // A normal bevel above hides its setback of the reveal, a reversed one nothing.
  const hidden = above === undefined ? 0 : Math.max(0, backInset(above.board.thickness, above.bevel));
  return {
    figure,
    faceBox,
    backBox: figureBox(request, { frame: figure.frame, by: figure.by - inset }, measured),
    border,
    reveal,
    strip:
      above === undefined || figure.hidden
        ? border
        : {
            top: reveal.top - hidden,
            right: reveal.right - hidden,
            bottom: reveal.bottom - hidden,
            left: reveal.left - hidden,
          },
    ...defined({ hidden: figure.hidden ? (true as const) : undefined }),
  };
}

/** The artwork lies where the overlaps at the measured edge put it; what is really covered is told at the sight. */
function placedArtwork(job: Job, index: number, sizes: Sizes, measured: Box, sight: Box): Artwork | undefined {
  const request = job.openings[index]!;
  if (request.artwork === undefined || sizes.overlap === undefined) return undefined;
  const { width, height } = request.artwork;
  const place = box(measured.x - sizes.overlap.left, measured.y - sizes.overlap.top, width, height);
  return {
    size: { width, height },
    box: place,
    overlap: insets(place, sight),
    floated: request.float !== undefined,
  };
}

/** Where an opening of the job lies in every layer, and what is seen through it. */
export function placeOpening(job: Job, index: number, sizes: Sizes): PlacedOpening {
  const request = job.openings[index]!;
  const reach = reachOf(job, request, sizes);
  const at = { x: sizes.border.left + reach.left, y: sizes.border.top + reach.top };
  const figures = figuresOf(job, request, sizes, at);
  const layers = figures.map((figure, layer) => placedLayer(job, layer, index, sizes, figure));
  const seen = layers.filter((layer) => layer.hidden !== true);
  const sight = innermost(seen.flatMap((layer) => [layer.faceBox, layer.backBox]));
  const inset = measuredInset(job, request);
  const lowest = seen.at(-1)!;
  // Of slanting sides the face's box reaches further out than the measured edge moved by the bevel.
  const measured = grown(lowest.figure.frame, lowest.figure.by - inset);
  const artwork = placedArtwork(job, index, sizes, measured, sight);
  const placed = { name: openingName(job, index), shape: request.shape, sight, layers };
  return artwork === undefined ? placed : { ...placed, artwork };
}
