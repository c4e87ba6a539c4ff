import type { Size } from '../geometry/point.ts';
import type { SheetSize } from './board.ts';
import type { Rate } from './rate.ts';

/** Glazing or backing: what lies in the rebate before or behind the mat. */
export interface PackagePart {
  /** The shop's key, or what the job calls one given in place. */
  readonly id: string;
  readonly name: string;
  readonly thickness: number;
  readonly price?: Rate;
  /** Of a backing: the sizes of sheet that it is bought in. */
  readonly sheets?: readonly SheetSize[];
}

/** A length of moulding made up into frames of any size. */
export interface Moulding {
  readonly id: string;
  readonly name: string;
  readonly lip: number;
  readonly depth?: number;
  readonly clearance?: number;
  /** Of its face, from the edge of its sight to its outside. */
  readonly width?: number;
  readonly colour?: string;
  readonly price?: Rate;
}

/** A ready-made frame: exactly one of `inside` and `nominal`, as in a job. */
export interface ReadyFrame extends Moulding {
  readonly inside?: Size;
  readonly nominal?: Size;
}
