import { type Box, box } from '../geometry/box.ts';
import type { Size } from '../geometry/point.ts';
import type { Orientation, Pixels } from './model.ts';

/** Where the upright picture's right and down run in the file: `x' = ax·x + bx·y`, `y' = ay·x + by·y`, from a corner. */
const AXES: Readonly<Record<Orientation, readonly [ax: number, bx: number, ay: number, by: number]>> = {
  1: [1, 0, 0, 1],
  2: [-1, 0, 0, 1],
  3: [-1, 0, 0, -1],
  4: [1, 0, 0, -1],
  5: [0, 1, 1, 0],
  6: [0, 1, -1, 0],
  7: [0, -1, -1, 0],
  8: [0, -1, 1, 0],
};

export function uprightSize({ width, height }: Size, orientation: Orientation): Size {
  return orientation >= 5 ? { width: height, height: width } : { width, height };
}

/** A part of the upright picture, as it lies in the file of that size. */
export function inFile(part: Box, file: Size, orientation: Orientation): Box {
  const [ax, bx, ay, by] = AXES[orientation];
  const x = ax + bx < 0 ? file.width : 0;
  const y = ay + by < 0 ? file.height : 0;
  const [x0, y0] = [x + ax * part.x + bx * part.y, y + ay * part.x + by * part.y];
  const [w, h] = [ax * part.width + bx * part.height, ay * part.width + by * part.height];
  return box(Math.min(x0, x0 + w), Math.min(y0, y0 + h), Math.abs(w), Math.abs(h));
}

/** Pixels as they lie in the file, put upright. */
export function upright(pixels: Pixels, orientation: Orientation): Pixels {
  if (orientation === 1) return pixels;
  const [ax, bx, ay, by] = AXES[orientation];
  const { width, height } = uprightSize(pixels, orientation);
  const rgb = new Uint8Array(width * height * 3);
  const x0 = ax + bx < 0 ? pixels.width - 1 : 0;
  const y0 = ay + by < 0 ? pixels.height - 1 : 0;
  let to = 0;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const from = ((y0 + ay * x + by * y) * pixels.width + x0 + ax * x + bx * y) * 3;
      rgb[to++] = pixels.rgb[from]!;
      rgb[to++] = pixels.rgb[from + 1]!;
      rgb[to++] = pixels.rgb[from + 2]!;
    }
  }
  return { width, height, rgb };
}
