import type { Size } from '../geometry/point.ts';
import type { SomeSides } from '../geometry/sides.ts';
import type { FrameRequest } from './frame.ts';
import type { LayerRequest } from './layer.ts';

export interface MatRequest {
  readonly outer?: Size;
  readonly frame?: FrameRequest;
  /** Mat edge to the face opening of the top mat. */
  readonly border: SomeSides;
  readonly weighting?: Weighting;
  /** Board between any two cuts of neighbouring openings, at least. */
  readonly leastBar?: number;
  /** Top mat first; never empty. */
  readonly layers: readonly LayerRequest[];
}

export type Weighting =
  | { readonly kind: 'none' }
  | { readonly kind: 'add'; readonly length: number }
  | { readonly kind: 'ratio'; readonly ratio: number }
  | { readonly kind: 'diagonal' };
