import type { JpegHead } from './jpeg-head.ts';

/** One row of a component: its samples, each standing for `1 / step` pixels. */
export interface SampleRow {
  readonly plane: Uint8ClampedArray;
  readonly at: number;
  /** Samples a pixel: 1, or ½ where the component is half as wide. */
  readonly step: number;
}

/** Colours of one row of pixels (luminance and colour difference as in ITU-T T.871, 7, from memory). */
export function rowToRgb(head: JpegHead, rows: readonly SampleRow[], width: number, to: Uint8ClampedArray): void {
  const [a, b, c] = rows;
  const sample = (row: SampleRow, x: number): number => row.plane[row.at + Math.floor(x * row.step)]!;
  if (head.colours === 'grey') {
    for (let x = 0, i = 0; x < width; x++, i += 3) to[i] = to[i + 1] = to[i + 2] = sample(a!, x);
    return;
  }
  if (head.colours === 'rgb') {
    for (let x = 0, i = 0; x < width; x++, i += 3) {
      to[i] = sample(a!, x);
      to[i + 1] = sample(b!, x);
      to[i + 2] = sample(c!, x);
    }
    return;
  }
  for (let x = 0, i = 0; x < width; x++, i += 3) {
    const y = sample(a!, x);
    const cb = sample(b!, x) - 128;
    const cr = sample(c!, x) - 128;
    to[i] = y + 1.402 * cr;
    to[i + 1] = y - 0.344136286 * cb - 0.714136286 * cr;
    to[i + 2] = y + 1.772 * cb;
  }
}
