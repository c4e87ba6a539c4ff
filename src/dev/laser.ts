import type { Raster } from './render.ts';

/** Dots that grow from the middle of a cell, as a printer with one ink makes greys; 0 is black first. */
const CELL = [
  [12, 5, 6, 13],
  [4, 0, 1, 7],
  [11, 3, 2, 8],
  [15, 10, 9, 14],
];
const STEPS = 16;

/** Black dots or none: cells of four pixels, 75 to the inch at 300 dpi (an office printer has about 100). */
export function inBlack({ width, height, rgba }: Raster): Raster {
  const printed = new Uint8Array(rgba.length).fill(255);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const i = 4 * (y * width + x);
      // Rec. 709 (ITU-R BT.709-6, 3.2), on values as they are: what drivers do.
      const grey = 0.2126 * rgba[i]! + 0.7152 * rgba[i + 1]! + 0.0722 * rgba[i + 2]!;
      const ink = (1 - grey / 255) * STEPS > CELL[y % 4]![x % 4]! + 0.5;
      if (ink) printed.fill(0, i, i + 3);
    }
  }
  return { width, height, rgba: printed };
}
