import { mirror } from '../../bench/outline.ts';
import type { Item } from '../../drawing/model.ts';
import { pathBox } from '../../geometry/extent.ts';
import { placedPath } from '../../geometry/path.ts';
import { type Point, point } from '../../geometry/point.ts';
import { SIDES } from '../../geometry/sides.ts';
import type { Job } from '../../job/job.ts';
import { decor, grooveDepth } from '../../mat/decor.ts';
import type { Mat } from '../../mat/model.ts';
import { printDecimal, showNear } from '../../units/print.ts';

/** Where the lines of the face run, seen from the back. */
export function decorLines(mat: Mat, job: Job, by: number): readonly Item[] {
  return decor(mat, job).map(({ opening, request, number, runs }) => ({
    kind: 'path',
    pen: request.kind,
    paths: runs.map((run) => placedPath(mirror(run, mat.outer.width), (p) => ({ x: p.x + by, y: p.y + by }))),
    id: `${request.kind}-${opening + 1}-${number}`,
  }));
}

export interface DecorWords {
  readonly what: string;
  readonly lines: readonly string[];
  readonly at: Point;
}

/** What is done on the face: the depth of a groove, and where the middle of the line lies from each edge of the mat. */
export function decorWords(mat: Mat, job: Job, by: number, view: 'face' | 'back' = 'back'): readonly DecorWords[] {
  const show = (mm: number): string => showNear(mm, job.units);
  return decor(mat, job).map(({ opening, request, number, whole }) => {
    const around = pathBox(whole);
    const middle = around.x + around.width / 2;
    const from = {
      left: around.x,
      top: around.y,
      right: mat.outer.width - around.x - around.width,
      bottom: mat.outer.height - around.y - around.height,
    };
    const edges = (request.sides ?? SIDES).map((side) => `${side} ${show(from[side])}`).join(', ');
    const name = mat.openings.length === 1 ? '' : ` round ${mat.openings[opening]!.name}`;
    const deep = grooveDepth(request);
    const how =
      request.kind === 'ink'
        ? `ink line ${printDecimal(request.width, 'mm', 1).text} mm${name}: draw it on the FACE`
        : `groove ${printDecimal(request.width, 'mm', 1).text} mm${name}: two passes on the FACE, ${printDecimal(deep, 'mm', 1).text} mm deep, not through`;
    return {
      what: `${request.kind} line ${number}${name}`,
      lines: [how, `its middle from the edges: ${edges}`],
      at: point((view === 'back' ? mat.outer.width - middle : middle) + by, around.y + by),
    };
  });
}
