import type { Weight } from '../fonts/model.ts';
import type { PlaceRequest } from './arrange.ts';

/** A text that is cut through the top mat, so that what lies below shows in the shape of its letters. Lengths are mm. */
export interface LetteringRequest {
  readonly text: string;
  readonly weight: Weight;
  /** Of the capitals. */
  readonly height: number;
  /** Added after each letter. */
  readonly spacing: number;
  /** Width of what ties an island (the inside of O, A, e) to the board, and the least board between two letters. */
  readonly bridge: number;
  /** Letters with an island are bridged, or refused. */
  readonly islands: 'bridge' | 'refuse';
  /** Upright, or with the bevel of the top mat. */
  readonly edge: 'square' | 'bevel';
  /** Of the box round all letters; centred in a direction that says nothing. */
  readonly place: PlaceRequest;
}
