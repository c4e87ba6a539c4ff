import { type Box, right } from '../../geometry/box.ts';
import { boxesApart, gapBetween, isInside, outlineOf } from '../../geometry/near.ts';
import type { Path } from '../../geometry/path.ts';
import type { Size } from '../../geometry/point.ts';
import { SIDES } from '../../geometry/sides.ts';
import type { Job } from '../../job/job.ts';
import { fallsShort } from '../../job/rule-of-thumb.ts';
import { error, type Problem, warning } from '../../problems/problem.ts';
import { showLength } from '../../units/print.ts';
import { theLayer } from '../layers.ts';
import type { MatOpening } from '../model.ts';
import { leastStay, soundStay } from './must-stay.ts';

/** Of many that are too near, the first few are named. */
const MOST = 20;

interface Edge {
  readonly index: number;
  readonly name: string;
  readonly path: Path;
  readonly box: Box;
  readonly straight: boolean;
}

/** Openings that the frame hides at an edge, that lie over each other, or come nearer than the bar of board between them should be wide. */
export function nearnessProblems(job: Job, outer: Size, openings: readonly MatOpening[]): readonly Problem[] {
  if (openings.length < 2) return [];
  const off = underLip(job, outer, openings);
  const near = job.mat.layers.flatMap((_, layer) => pairs(job, openings, layer));
  const told = new Set<string>();
  return [...off, ...near]
    .filter(({ problem, pair }) => {
      // Of one pair the first layer that is too near says enough.
      const key = `${problem.code} ${pair}`;
      return told.has(key) ? false : told.add(key) !== undefined;
    })
    .slice(0, MOST)
    .map(({ problem }) => problem);
}

interface Found {
  readonly problem: Problem;
  readonly pair: string;
}

/** What runs off the board altogether is told with what is too near to its edge (`must-stay.ts`). */
function underLip(job: Job, outer: Size, openings: readonly MatOpening[]): readonly Found[] {
  const lip = job.mat.frame?.lip ?? 0;
  if (lip === 0) return [];
  return openings.flatMap((opening, index) => {
    const [top] = opening.layers;
    return SIDES.flatMap((side): Found[] => {
      const length = top!.border[side];
      if (length > lip + 1e-9) return [];
      const show = (mm: number): string => showLength(mm, job.units);
      const where = `${opening.name} comes to ${show(length)} from the ${side} edge of the mat`;
      const path = ['openings', index, ...(job.openings[index]!.place === undefined ? [] : ['place'])];
      const message = `${where}, the frame's lip hides ${show(lip)}`;
      const hint = `move it in, or make the mat larger than ${show(outer.width)} × ${show(outer.height)}`;
      return [{ problem: error('opening-beyond-border', path, message, hint), pair: `${index} ${side}` }];
    });
  });
}

/** Neighbours are found by running over the openings from left to right; only what is near is measured. */
function pairs(job: Job, openings: readonly MatOpening[], layer: number): readonly Found[] {
  const { bevel, board } = job.mat.layers[layer]!;
  const { reverse, angle } = bevel;
  const edges = openings.map(({ name, shape, layers }, index): Edge => {
    const own = layers[layer]!;
    // The edge that reaches farther out: the back of a reversed bevel, else the face.
    const outside = reverse && angle !== 90;
    return {
      index,
      name,
      path: outside ? own.back : own.face,
      box: outside ? own.backBox : own.faceBox,
      straight: shape === 'rectangle',
    };
  });
  const least = Math.max(leastStay(board.thickness), job.mat.leastBar ?? 0);
  const sound = Math.max(soundStay(board.thickness), least);
  const sorted = [...edges].sort((a, b) => a.box.x - b.box.x);
  const found: Found[] = [];
  let open: Edge[] = [];
  for (const edge of sorted) {
    open = open.filter((other) => right(other.box) + sound > edge.box.x);
    for (const other of open) {
      if (boxesApart(other.box, edge.box) >= sound - 1e-9) continue;
      const [a, b] = other.index < edge.index ? [other, edge] : [edge, other];
      const apart = distanceOf(a, b);
      if (apart >= least - 1e-6 && !fallsShort(apart, sound)) continue;
      found.push({ problem: tooNear(job, layer, a, b, apart, { least, sound }), pair: `${a.index} ${b.index}` });
    }
    open.push(edge);
  }
  return found.sort((p, q) => (p.pair < q.pair ? -1 : 1));
}

/** 0 where one lies over the other. */
function distanceOf(a: Edge, b: Edge): number {
  if (a.straight && b.straight) return boxesApart(a.box, b.box);
  if (isInside(outlineOf(a.path), b.path.start) || isInside(outlineOf(b.path), a.path.start)) return 0;
  return gapBetween(a.path, b.path);
}

interface Bounds {
  readonly least: number;
  readonly sound: number;
}

function tooNear(job: Job, layer: number, a: Edge, b: Edge, apart: number, { least, sound }: Bounds): Problem {
  const show = (mm: number): string => showLength(mm, job.units);
  const path = ['openings', b.index];
  const where = `${a.name} and ${b.name} in ${theLayer(layer)}`;
  if (apart <= 1e-6) {
    const message = `the bevels of ${where} would meet: ${show(0)} of board is left between them`;
    return error('bevels-meet', path, message, `move them apart until ${show(least)} is left, or make them smaller`);
  }
  if (apart < least - 1e-6) {
    const message = `${where} come within ${show(apart)} of each other, ${show(least)} is the least`;
    const more = job.mat.leastBar === least ? ', or lower mat.leastBar' : '';
    return error('openings-near', path, message, `move them apart, make them or their reveals smaller${more}`);
  }
  const message = `${where} leave a bar of ${show(apart)}, below ${show(sound)} it bends easily`;
  return warning('bar-narrow', path, message, 'move them apart, or make them or their reveals smaller');
}
