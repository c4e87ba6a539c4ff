import { dot, minus } from '../geometry/point.ts';
import type { Job } from '../job/job.ts';
import { theNamed } from '../mat/layers.ts';
import type { MatLayer, MatOpening } from '../mat/model.ts';
import { type Problem, warning } from '../problems/problem.ts';
import { showLength } from '../units/print.ts';
import type { TravelledSide } from './outline.ts';
import { sideName } from './side-name.ts';

/** A side so short that the bevels beside it meet before the back has no line there. */
export const hasLine = ({ moved, direction }: TravelledSide): boolean =>
  dot(minus(moved.to, moved.from), direction) > 0;

export function tooShort(
  job: Job,
  layer: MatLayer,
  opening: MatOpening,
  openingIndex: number,
  { from, to, moved, direction, outward }: TravelledSide,
): Problem {
  const length = dot(minus(to, from), direction);
  const need = length - dot(minus(moved.to, moved.from), direction);
  const show = (mm: number): string => showLength(mm, job.units);
  const oblique = Math.abs(direction.x * direction.y) > 1e-9 ? 'slanting ' : '';
  const message = `the ${oblique}${sideName(outward)} side of ${opening.name} in ${theNamed(layer.name)}, ${show(length)} on the face, is too short for its bevel: the bevels beside it meet before the back, so that it has no line and no stroke there`;
  const hint = `make it longer than ${show(need)}, or cut it from the face with a knife, by template, after its neighbours`;
  return warning('side-too-short', ['openings', openingIndex], message, hint);
}
