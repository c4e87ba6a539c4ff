import pixelmatch from 'pixelmatch';
import { PNG } from 'pngjs';
import type { Raster } from '../../src/dev/render.ts';

/** The most that a reference picture may weigh, so that the repository stays light. */
export const MOST_BYTES = 50 * 1024;

const isGrey = (rgba: Uint8Array): boolean => {
  for (let i = 0; i < rgba.length; i += 4) {
    if (rgba[i] !== rgba[i + 1] || rgba[i] !== rgba[i + 2] || rgba[i + 3] !== 255) return false;
  }
  return true;
};

/** As PNG: grey where the picture is, which halves it. */
export function packed({ width, height, rgba }: Raster): Uint8Array {
  const png = new PNG({ width, height });
  png.data = Buffer.from(rgba.buffer, rgba.byteOffset, rgba.byteLength);
  const colorType = isGrey(rgba) ? 0 : 2;
  // Without a filter and with plain matching: by a third smaller for lines and words than what is usual for photographs.
  return PNG.sync.write(png, { colorType, inputColorType: 6, deflateLevel: 9, filterType: 0, deflateStrategy: 0 });
}

export function unpacked(bytes: Uint8Array): Raster {
  const { width, height, data } = PNG.sync.read(Buffer.from(bytes));
  return { width, height, rgba: data };
}

export interface Comparison {
  /** How many pixels differ, thin and softened ones included. */
  readonly pixels: number;
  readonly difference: Raster;
}

/** Pixel by pixel, nothing allowed; undefined where the sizes differ. */
export function compared(expected: Raster, actual: Raster): Comparison | undefined {
  const { width, height } = expected;
  if (width !== actual.width || height !== actual.height) return undefined;
  const rgba = new Uint8Array(width * height * 4);
  // By default softened edges are passed over: a thin line that moves by 0.1 mm would go unseen at 300 dpi.
  const options = { includeAA: true, threshold: 0 };
  const pixels = pixelmatch(expected.rgba, actual.rgba, rgba, width, height, options);
  return { pixels, difference: { width, height, rgba } };
}
