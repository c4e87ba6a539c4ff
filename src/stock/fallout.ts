import { type Box, box, centre, grown } from '../geometry/box.ts';
import { meetsBox } from '../geometry/clip.ts';
import { flattened } from '../geometry/flatten.ts';
import type { Path } from '../geometry/path.ts';
import type { Point, Size } from '../geometry/point.ts';
import type { Job } from '../job/job.ts';
import type { Mat } from '../mat/model.ts';

/** Nothing narrower is worth squaring, mm. */
const LEAST = 50;
/** Chords keep that near to a curve, and rectangles that far from them, mm. */
const NEAR = 0.01;
const WIDTHS = 24;
const HALVINGS = 16;

/** The layers that must be cut before what drops out of a layer's openings is free: with mats cut together it is the slip sheet of those below. */
export function layersBefore(mat: Mat, { bench }: Pick<Job, 'bench'>, layer: number): readonly number[] {
  const last = bench.stack === 'together' ? mat.layers.length - 1 : layer;
  return Array.from({ length: last - layer + 1 }, (_, i) => layer + i);
}

/**
 * What drops out of each opening of a layer and can be squared: the rectangle that its face and its back hold, so that no
 * bevel is left, and that the blade did not scratch while it lay under the mats below; less what the strokes run past
 * their corners, and `margin`, on each side. What is too small to be stock is left out.
 */
export function falloutsOf(mat: Mat, job: Pick<Job, 'bench'>, layer: number, margin: number): readonly Size[] {
  return mat.openings.flatMap(({ layers }) => {
    const net = layersBefore(mat, job, layer).map((below) => {
      const { face, faceBox, back, backBox } = layers[below]!;
      return faceBox.width < backBox.width ? within(face, faceBox) : within(back, backBox);
    });
    const inner = net.filter((each) => each !== undefined);
    if (inner.length < net.length) return [];
    const off = 2 * (margin + job.bench.head.overrun);
    const width = Math.min(...inner.map((each) => each.width)) - off;
    const height = Math.min(...inner.map((each) => each.height)) - off;
    return Math.min(width, height) < LEAST ? [] : [{ width, height }];
  });
}

/** The largest rectangle inside an outline that has its middle where the outline's box has it. */
function within(path: Path, bounds: Box): Box | undefined {
  const corners = flattened(path, NEAR);
  const middle = centre(bounds);
  const around = (width: number, height: number): Box =>
    box(middle.x - width / 2, middle.y - height / 2, width, height);
  let best: Box | undefined;
  for (let share = WIDTHS; share > 0; share--) {
    const width = (bounds.width * share) / WIDTHS;
    let [low, high] = [0, bounds.height];
    if (clear(corners, around(width, high))) low = high;
    else
      for (let i = 0; i < HALVINGS; i++) {
        const height = (low + high) / 2;
        if (clear(corners, around(width, height))) low = height;
        else high = height;
      }
    if (low > 0 && (best === undefined || width * low > best.width * best.height)) best = around(width, low);
  }
  return best;
}

/** True where no side of the outline enters the box, and the box lies inside it. */
function clear(corners: readonly Point[], outside: Box): boolean {
  const { x, y, width, height } = grown(outside, -NEAR);
  if (width <= 0 || height <= 0) return false;
  const sides = corners.map((from, i) => ({ from, to: corners[(i + 1) % corners.length]! }));
  return !sides.some((side) => meetsBox(side, x, y, x + width, y + height)) && holds(sides, centre(outside));
}

/** Even-odd: crossings of a ray to the right. */
function holds(sides: readonly { readonly from: Point; readonly to: Point }[], { x, y }: Point): boolean {
  const crossed = sides.filter(
    ({ from, to }) => from.y > y !== to.y > y && x < from.x + ((y - from.y) / (to.y - from.y)) * (to.x - from.x),
  );
  return crossed.length % 2 === 1;
}
