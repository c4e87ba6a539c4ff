import { type Box, bottom, box, grown, right } from '../../geometry/box.ts';
import type { Size } from '../../geometry/point.ts';
import type { MatOpening } from '../../mat/model.ts';
import { artBox } from './piece.ts';

/** So much of the picture goes on under the board's edge, so that no seam shows. */
const UNDER = 0.5;
/** Measuring explains this much between the proportions of a picture and of the artwork. */
const SLACK = 0.02;

/**
 * What of a picture (its size in pixels, upright) is seen through an opening. The picture stands for the whole artwork (for what is seen, where no
 * artwork is known): as large as covers it, its middle on the artwork's middle. Undefined without a picture.
 */
export function cropOf(
  opening: MatOpening,
  picture: Size | undefined,
): { readonly box: Box; readonly pixels: Box; readonly cut: boolean } | undefined {
  if (picture === undefined) return undefined;
  const floated = opening.artwork?.floated === true;
  const art = opening.artwork?.box ?? grown(opening.sight, UNDER);
  const seen = floated ? artBox(opening) : common(grown(opening.sight, UNDER), art);
  const pixel = Math.min(picture.width / art.width, picture.height / art.height);
  const left = art.x + art.width / 2 - picture.width / pixel / 2;
  const top = art.y + art.height / 2 - picture.height / pixel / 2;
  const pixels = box((seen.x - left) * pixel, (seen.y - top) * pixel, seen.width * pixel, seen.height * pixel);
  const odd = (picture.width * art.height) / (picture.height * art.width);
  const cut = Math.max(odd, 1 / odd) > 1 + SLACK;
  // Whole pixels, where the mat hides how much there is.
  if (!floated) {
    const whole = outwards(within(pixels, picture), picture);
    const placed = box(left + whole.x / pixel, top + whole.y / pixel, whole.width / pixel, whole.height / pixel);
    return { box: placed, pixels: whole, cut };
  }
  return { box: seen, pixels: within(pixels, picture), cut };
}

function common(a: Box, b: Box): Box {
  const [x, y] = [Math.max(a.x, b.x), Math.max(a.y, b.y)];
  return box(x, y, Math.min(right(a), right(b)) - x, Math.min(bottom(a), bottom(b)) - y);
}

/** Rounding may have left it a hair outside. */
function within(part: Box, { width, height }: Size): Box {
  const [x, y] = [Math.max(0, part.x), Math.max(0, part.y)];
  return box(x, y, Math.min(width, right(part)) - x, Math.min(height, bottom(part)) - y);
}

function outwards(part: Box, { width, height }: Size): Box {
  const [x, y] = [Math.floor(part.x + 1e-6), Math.floor(part.y + 1e-6)];
  return box(
    x,
    y,
    Math.min(width, Math.ceil(right(part) - 1e-6)) - x,
    Math.min(height, Math.ceil(bottom(part) - 1e-6)) - y,
  );
}
