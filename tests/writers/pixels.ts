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
