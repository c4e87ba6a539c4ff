import { mirror } from '../bench/outline.ts';
import type { Item } from '../drawing/model.ts';
import { pathBox } from '../geometry/extent.ts';
import { parallelOf } from '../geometry/parallel.ts';
import { type Path, placedPath } from '../geometry/path.ts';
import { type Point, point } from '../geometry/point.ts';
import type { DecorRequest } from '../job/arrange-model.ts';
import { type Job, SIDES } from '../job/model.ts';
import type { Mat } from '../mat/model.ts';
import { printDecimal, showLength } from '../units/print.ts';

/** A line on the face of the top mat, as its job asks for it. */
export interface Decor {
  readonly opening: number;
  readonly request: DecorRequest;
  readonly number: number;
  /** On the face, in the face view. */
  readonly path: Path;
}

/** Grooves and ink lines of the top mat's face; one whose outline falls apart was refused before. */
export function decor(mat: Mat, job: Job): readonly Decor[] {
  return job.openings.flatMap((request, opening) =>
    (request.decor ?? []).flatMap((each, i): Decor[] => {
      const path = parallelOf(mat.openings[opening]!.layers[0]!.face, each.distance);
      return path === 'nothing' || path === 'parts' ? [] : [{ opening, request: each, number: i + 1, path }];
    }),
  );
}

/** Where the lines of the face run, seen from the back. */
export function decorLines(mat: Mat, job: Job, by: number): readonly Item[] {
  return decor(mat, job).map(({ opening, request, number, path }) => ({
    kind: 'path',
    pen: request.kind,
    paths: [placedPath(mirror(path, mat.outer.width), (p) => ({ x: p.x + by, y: p.y + by }))],
    id: `${request.kind}-${opening + 1}-${number}`,
  }));
}

export interface DecorWords {
  readonly what: string;
  readonly lines: readonly string[];
  readonly at: Point;
}

/** What is done on the face: the depth of a groove, and where the middle of the line lies from each edge of the mat. */
export function decorWords(mat: Mat, job: Job, by: number): readonly DecorWords[] {
  const show = (mm: number): string => showLength(mm, job.units);
  return decor(mat, job).map(({ opening, request, number, path }) => {
    const around = pathBox(path);
    const from = {
      left: around.x,
      top: around.y,
      right: mat.outer.width - around.x - around.width,
      bottom: mat.outer.height - around.y - around.height,
    };
    const edges = SIDES.map((side) => `${side} ${show(from[side])}`).join(', ');
    const name = mat.openings.length === 1 ? '' : ` round ${mat.openings[opening]!.name}`;
    const deep = grooveDepth(request);
    const how =
      request.kind === 'ink'
        ? `ink line ${printDecimal(request.width, 'mm', 1).text} mm${name}: draw it on the FACE`
        : `groove ${printDecimal(request.width, 'mm', 1).text} mm${name}: two passes on the FACE, ${printDecimal(deep, 'mm', 1).text} mm deep, not through`;
    return {
      what: `${request.kind} line ${number}${name}`,
      lines: [how, `its middle from the edges: ${edges}`],
      at: point(mat.outer.width - around.x - around.width / 2 + by, around.y + by),
    };
  });
}

/** Two bevels that meet at the bottom: half of the width times the tangent of the angle. */
export const grooveDepth = ({ width, angle }: DecorRequest): number => (width / 2) * Math.tan((angle * Math.PI) / 180);
