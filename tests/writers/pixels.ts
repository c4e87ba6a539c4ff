import type { Raster } from '../../src/dev/render.ts';

/** Darkness 0 (white) to 1 (black) of a pixel. */
export function darkness({ width, rgba }: Raster, x: number, y: number): number {
  const i = 4 * (y * width + x);
  return 1 - (rgba[i]! + rgba[i + 1]! + rgba[i + 2]!) / (3 * 255);
}

/** Darkness at a place in mm. */
export function darknessAt(raster: Raster, dpi: number, x: number, y: number): number {
  return darkness(raster, Math.floor((x * dpi) / 25.4), Math.floor((y * dpi) / 25.4));
}

/** First and last of the pixels at least half dark, along a row or a column; undefined where none is. */
export function darkSpan(
  raster: Raster,
  along: 'x' | 'y',
  at: number,
): { readonly first: number; readonly last: number } | undefined {
  const count = along === 'x' ? raster.width : raster.height;
  const dark = Array.from({ length: count }, (_, i) => i).filter(
    (i) => (along === 'x' ? darkness(raster, i, at) : darkness(raster, at, i)) >= 0.5,
  );
  return dark.length === 0 ? undefined : { first: dark[0]!, last: dark.at(-1)! };
}

/** Largest difference in mean darkness over blocks of 8 × 8 pixels: two renderers blur edges in their own ways, but not over blocks. */
export function blockDifference(a: Raster, b: Raster): number {
  if (Math.abs(a.width - b.width) > 1 || Math.abs(a.height - b.height) > 1) return 1;
  let most = 0;
  for (let y = 0; y + 8 <= Math.min(a.height, b.height); y += 8) {
    for (let x = 0; x + 8 <= Math.min(a.width, b.width); x += 8) {
      let difference = 0;
      for (let k = 0; k < 64; k++) {
        const [px, py] = [x + (k % 8), y + Math.floor(k / 8)];
        difference += (darkness(a, px, py) - darkness(b, px, py)) / 64;
      }
      most = Math.max(most, Math.abs(difference));
    }
  }
  return most;
}
