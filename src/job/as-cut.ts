import type { Size } from '../geometry/point.ts';

/** What really came off the cutter. Lengths are mm; what is not named is as planned, or still to do. */
export interface AsCutRequest {
  /** Of the top mat's blank, which is the size of the mat. */
  readonly outer?: Size;
  /** Blanks of under mats, by the layer's index; those that are as planned have none. */
  readonly blanks: readonly (Size | undefined)[];
  readonly openings: readonly OpeningAsCut[];
}

/** The face opening in one layer, as it was measured. Layers above it count as cut too, as planned where they are not named. */
export interface OpeningAsCut {
  /** Indices, from 0. */
  readonly opening: number;
  readonly layer: number;
  readonly size: Size;
  /** Mat edge to this face opening where that was measured; else the error is taken to lie evenly on both sides. */
  readonly border: Readonly<Partial<Record<'top' | 'right' | 'bottom' | 'left', number>>>;
}
