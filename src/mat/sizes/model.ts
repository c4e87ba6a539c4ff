import type { Size } from '../../geometry/point.ts';
import type { BySide } from '../../geometry/sides.ts';

/** The lengths that settle one opening of a mat. */
export interface Sizes {
  readonly outer: Size;
  /** Outer edge to this opening's face line in the top mat. */
  readonly border: BySide<number>;
  /** One for each layer, 0 for the top mat; undefined where the opening shows nothing of the layer. */
  readonly reveals: readonly (BySide<number> | undefined)[];
  /** Face opening of the lowest layer that is seen. */
  readonly opening: Size;
  /** Over the artwork at the edge that the job measures at, negative where it floats. */
  readonly overlap?: BySide<number>;
}

/** Every length of a mat. */
export interface AllSizes {
  readonly outer: Size;
  /** Outer edge to the nearest of the openings, on each side. */
  readonly border: BySide<number>;
  /** One for each opening of the job, same order. */
  readonly openings: readonly Sizes[];
}

/** An opening by itself, before it is placed. */
export type Unplaced = Omit<Sizes, 'outer' | 'border'>;
