import type { Size } from './point.ts';

/** The diagonal of a rectangle. */
export const diagonal = ({ width, height }: Size): number => Math.hypot(width, height);

/** How much longer one diagonal is than the other where a rectangle is sheared sideways by `shear` over its height. */
export const diagonalDifference = ({ width, height }: Size, shear: number): number =>
  Math.hypot(width + shear, height) - Math.hypot(width - shear, height);

/**
 * The shear over the height that a difference of the diagonals means. With diagonals A and B, A² − B² = 4·w·shear and
 * A − B is the difference, which leaves one square root; the difference must be smaller than twice the width.
 */
export function shearOf({ width, height }: Size, difference: number): number {
  if (difference === 0) return 0;
  const square = (width ** 2 + height ** 2 - difference ** 2 / 4) / (4 * (width / difference) ** 2 - 1);
  return Math.sign(difference) * Math.sqrt(square);
}
