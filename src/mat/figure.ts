import { type Box, box, grown } from '../geometry/box.ts';
import { pathBox } from '../geometry/extent.ts';
import { type Path, placedPath } from '../geometry/path.ts';
import type { Size } from '../geometry/point.ts';
import { type BySide, SIDES } from '../geometry/sides.ts';
import type { Job } from '../job/job.ts';
import type { OpeningRequest } from '../job/opening.ts';
import type { Fields } from '../shapes/shape.ts';
import { shapeOf } from '../shapes/shapes.ts';
import { backInset } from './bevel.ts';
import type { Excess } from './sizes/group.ts';
import type { Unplaced } from './sizes/model.ts';
import { measuredInset } from './sizes/unknowns.ts';

/** The outline of a shape in a frame, moved outwards in parallel: the exact shape is at the edge that the job measures. */
export interface Figure {
  readonly frame: Box;
  readonly by: number;
}

/** The face edge in one layer. */
export interface LayerFigure extends Figure {
  /** True where nothing is seen of the layer: its edge keeps behind the layer above. */
  readonly hidden: boolean;
}

/** How far a layer that is not to be seen stays behind the edge above it. Common practice, no source. */
const HIDDEN_BY = 3;

/** The shape's own values, the usual ones filled in for this size. */
export function fieldsOf(request: OpeningRequest, size: Size): Fields {
  const filled: Record<string, Fields[string]> = { ...request.fields };
  for (const [name, field] of Object.entries(shapeOf(request.shape).fields)) {
    if (filled[name] !== undefined) continue;
    if (field.kind === 'length' && field.usual !== undefined) filled[name] = field.usual(size);
    if ((field.kind === 'count' || field.kind === 'choice') && field.usual !== undefined) filled[name] = field.usual;
  }
  return filled;
}

/** Outlines by size and distance, at 0 0: the same is asked for many times over while a mat is solved. */
const DRAWN = new WeakMap<OpeningRequest, Map<string, Path | undefined>>();

export function figurePath(request: OpeningRequest, { frame, by }: Figure, measured: Size): Path | undefined {
  if (!(frame.width > 0 && frame.height > 0)) return undefined;
  const known = DRAWN.get(request) ?? new Map<string, Path | undefined>();
  DRAWN.set(request, known);
  const key = `${frame.width} ${frame.height} ${by} ${measured.width} ${measured.height}`;
  if (!known.has(key)) known.set(key, drawn(request, box(0, 0, frame.width, frame.height), by, measured));
  const path = known.get(key);
  return path === undefined ? undefined : placedPath(path, (p) => ({ x: p.x + frame.x, y: p.y + frame.y }));
}

function drawn(request: OpeningRequest, frame: Box, by: number, measured: Size): Path | undefined {
  const fields = fieldsOf(request, measured);
  const shape = shapeOf(request.shape);
  return by === 0 ? shape.outline(frame, fields) : shape.parallel(frame, by, fields);
}

/** The box of a figure, which is its frame grown unless the shape has slanting sides; a size of 0 or less holds nothing. */
export function figureBox(request: OpeningRequest, figure: Figure, measured: Size): Box {
  const plain = grown(figure.frame, figure.by);
  if (shapeOf(request.shape).growsUnevenly !== true || plain.width <= 0 || plain.height <= 0) return plain;
  const path = figurePath(request, figure, measured);
  // Of an outline that falls apart this is told where it is drawn.
  return path === undefined ? plain : pathBox(path);
}

/** The size at the edge that the job measures. */
export function measuredSize(job: Job, request: OpeningRequest, { opening }: Pick<Unplaced, 'opening'>): Size {
  const inset = measuredInset(job, request);
  return { width: opening.width - 2 * inset, height: opening.height - 2 * inset };
}

/** Where the reveal differs by side, the frame itself grows by what is more than the least of them. */
function stepOut(figure: Figure, reveal: BySide<number>): Figure {
  const least = Math.min(...SIDES.map((side) => reveal[side]));
  const { x, y, width, height } = figure.frame;
  const more = (side: keyof BySide<number>): number => reveal[side] - least;
  const frame = box(
    x - more('left'),
    y - more('top'),
    width + more('left') + more('right'),
    height + more('top') + more('bottom'),
  );
  return { frame, by: figure.by + least };
}

/** The face edge in every layer, top mat first, around a measured edge whose top left is `at`. */
export function figuresOf(
  job: Job,
  request: OpeningRequest,
  sizes: Pick<Unplaced, 'opening' | 'reveals'>,
  at: { readonly x: number; readonly y: number },
): readonly LayerFigure[] {
  const size = measuredSize(job, request, sizes);
  let face: Figure = { frame: box(at.x, at.y, size.width, size.height), by: measuredInset(job, request) };
  const faces: (Figure | undefined)[] = sizes.reveals.map(() => undefined);
  for (let layer = sizes.reveals.length - 1; layer >= 0; layer--) {
    const reveal = sizes.reveals[layer];
    if (reveal === undefined) continue;
    faces[layer] = face;
    if (layer > 0) face = stepOut(face, reveal);
  }
  return faces.map((own, layer): LayerFigure => {
    if (own !== undefined) return { ...own, hidden: false };
    // The nearest layer above that is seen; the top mat always is.
    const above = faces.slice(0, layer).findLastIndex((each) => each !== undefined);
    const { board: aboveBoard, bevel: aboveBevel } = job.mat.layers[above]!;
    const { board, bevel } = job.mat.layers[layer]!;
    const reach = Math.max(0, -backInset(aboveBoard.thickness, aboveBevel));
    const inset = Math.max(0, backInset(board.thickness, bevel));
    const base = faces[above]!;
    return { frame: base.frame, by: base.by + reach + HIDDEN_BY + inset, hidden: true };
  });
}

/** How much farther the top mat's face reaches, on each side, than the reveals sum up to. */
export function excessOf(job: Job, made: ReadonlyMap<number, Unplaced>): Excess {
  const found = new Map<number, BySide<number>>();
  for (const [of, sizes] of made) {
    const request = job.openings[of]!;
    if (shapeOf(request.shape).growsUnevenly !== true) continue;
    const measured = measuredSize(job, request, sizes);
    if (!(measured.width > 0 && measured.height > 0)) continue;
    const reach = reachOf(job, request, sizes);
    const inset = measuredInset(job, request);
    const sum = (side: keyof BySide<number>): number =>
      sizes.reveals.reduce((total, reveal) => total + (reveal?.[side] ?? 0), inset);
    found.set(of, {
      top: reach.top - sum('top'),
      right: reach.right - sum('right'),
      bottom: reach.bottom - sum('bottom'),
      left: reach.left - sum('left'),
    });
  }
  return found;
}

/** From the measured edge's frame out to the box of the top mat's face, by side. */
export function reachOf(
  job: Job,
  request: OpeningRequest,
  sizes: Pick<Unplaced, 'opening' | 'reveals'>,
): BySide<number> {
  const measured = measuredSize(job, request, sizes);
  const [top] = figuresOf(job, request, sizes, { x: 0, y: 0 });
  const outside = figureBox(request, top!, measured);
  return {
    top: -outside.y,
    left: -outside.x,
    right: outside.x + outside.width - measured.width,
    bottom: outside.y + outside.height - measured.height,
  };
}
