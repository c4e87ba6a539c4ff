import type { Box } from '../../geometry/box.ts';

/** Something that a seam had better not run through. */
export interface Obstacle {
  readonly box: Box;
  readonly weight: number;
}

/** How near to an obstacle a seam may come, mm. */
export const SEAM_CLEARANCE = 1.5;

/** Origins nearer to each other than this, mm, are one; lines of seams nearer to where one may run by this share of a pitch. */
export const SAME = 1e-6;

/** An obstacle as it lies along one axis. */
export interface WeighedStretch {
  readonly stretch: readonly [number, number];
  readonly weight: number;
}

/** An obstacle that the line of a seam runs through. */
export interface Hit {
  /** Its place in the list of obstacles. */
  readonly obstacle: number;
  /** The sheet before that line. */
  readonly before: number;
}
