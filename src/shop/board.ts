import type { Size } from '../geometry/point.ts';
import type { Rate } from './rate.ts';

export interface Board {
  /** The shop's key, or what the job calls a board given in place. */
  readonly id: string;
  readonly name: string;
  readonly thickness: number;
  readonly plies?: number;
  /** `#rrggbb`. */
  readonly colour: string;
  readonly core: string;
  /** The sizes of sheet that it is bought in. */
  readonly sheets: readonly SheetSize[];
  /** Of a sheet that has none of its own. */
  readonly price?: number;
  /** By area, instead. */
  readonly areaPrice?: Rate;
  /** True where the board has a direction, so that blanks may not turn. */
  readonly directional: boolean;
}

/** A size of sheet that a board is bought in. */
export interface SheetSize extends Size {
  readonly price?: number;
  /** How many are left; undefined where as many can be had as are needed. */
  readonly count?: number;
}
