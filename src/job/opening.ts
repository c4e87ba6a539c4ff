import type { Size } from '../geometry/point.ts';
import type { SomeSides } from '../geometry/sides.ts';
import type { Fields } from '../shapes/shape.ts';
import type { ShapeKind } from '../shapes/shapes.ts';
import type { DecorRequest, OpeningStep, PlaceRequest } from './arrange.ts';

export interface OpeningRequest {
  readonly name?: string;
  readonly shape: ShapeKind;
  /** What the shape needs beside its size. */
  readonly fields?: Fields;
  readonly place?: PlaceRequest;
  /** One for each under mat, where this opening treats them otherwise than the mat's layers say. */
  readonly steps?: readonly OpeningStep[];
  readonly decor?: readonly DecorRequest[];
  readonly artwork?: Size;
  /** Mat over artwork, per side; only with an artwork. */
  readonly overlap: SomeSides;
  /** Paper or backing shown around the artwork, per side; undefined where the artwork is overlapped. */
  readonly float?: SomeSides;
  readonly size?: Size;
  /** The file of the artwork's picture, as the job names it: relative to the job. */
  readonly picture?: string;
  /** `face`: sizes are the face opening of the lowest layer; `sight`: the innermost of all edges. */
  readonly measure: 'face' | 'sight';
}
