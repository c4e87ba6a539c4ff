import { type Box, right } from '../../geometry/box.ts';
import { boxesApart, gapBetween, isInside, outlineOf } from '../../geometry/near.ts';
import type { Path } from '../../geometry/path.ts';
import type { Size } from '../../geometry/point.ts';
import { SIDES } from '../../geometry/sides.ts';
import type { Job } from '../../job/job.ts';
import { error, type Problem } from '../../problems/problem.ts';
import { showLength } from '../../units/print.ts';
import { mmFromInches } from '../../units/units.ts';
import { theLayer } from '../layers.ts';
import type { MatOpening } from '../model.ts';

/** A narrower bar of board between two openings does not hold: 1/4 in or 6 mm (common practice, no source). */
export const usualBar = (job: Job): number => (job.units === 'in' ? mmFromInches(1 / 4) : 6);
/** Of many that are too near, the first few are named. */
const MOST = 20;

interface Edge {
  readonly index: number;
  readonly name: string;
  readonly path: Path;
  readonly box: Box;
  readonly straight: boolean;
}

/** Openings that run off the mat, over each other, or come nearer than the bar of board between them should be wide. */
export function nearnessProblems(job: Job, outer: Size, openings: readonly MatOpening[]): readonly Problem[] {
  if (openings.length < 2) return [];
  const off = offBoard(job, outer, openings);
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

function offBoard(job: Job, outer: Size, openings: readonly MatOpening[]): readonly Found[] {
  const lip = job.mat.frame?.lip ?? 0;
  return openings.flatMap((opening, index) => {
    const [top] = opening.layers;
    return SIDES.flatMap((side): Found[] => {
      const length = top!.border[side];
      if (length > lip + 1e-9) return [];
      const show = (mm: number): string => showLength(mm, job.units);
      const where = `${opening.name} comes to ${show(length)} from the ${side} edge of the mat`;
      const need = lip > 0 ? `the frame's lip hides ${show(lip)}` : 'more than 0 is needed';
      const path = ['openings', index, ...(job.openings[index]!.place === undefined ? [] : ['place'])];
      const hint = `move it in, or make the mat larger than ${show(outer.width)} × ${show(outer.height)}`;
      return [{ problem: error('opening-beyond-border', path, `${where}, ${need}`, hint), pair: `${index} ${side}` }];
    });
  });
}

/** Neighbours are found by running over the openings from left to right; only what is near is measured. */
function pairs(job: Job, openings: readonly MatOpening[], layer: number): readonly Found[] {
  const { reverse, angle } = job.mat.layers[layer]!.bevel;
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
  const least = job.mat.leastBar ?? usualBar(job);
  const sorted = [...edges].sort((a, b) => a.box.x - b.box.x);
  const found: Found[] = [];
  let open: Edge[] = [];
  for (const edge of sorted) {
    open = open.filter((other) => right(other.box) + least > edge.box.x);
    for (const other of open) {
      if (boxesApart(other.box, edge.box) >= least - 1e-9) continue;
      const [a, b] = other.index < edge.index ? [other, edge] : [edge, other];
      const apart = distanceOf(a, b);
      if (apart >= least - 1e-6) continue;
      found.push({ problem: tooNear(job, layer, a, b, apart, least), pair: `${a.index} ${b.index}` });
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

function tooNear(job: Job, layer: number, a: Edge, b: Edge, apart: number, least: number): Problem {
  const show = (mm: number): string => showLength(mm, job.units);
  const path = ['openings', b.index];
  const where = `${a.name} and ${b.name} in ${theLayer(layer)}`;
  if (apart <= 1e-6) {
    const message = `the bevels of ${where} would meet: ${show(0)} of board is left between them`;
    return error('bevels-meet', path, message, `move them apart until ${show(least)} is left, or make them smaller`);
  }
  const message = `${where} come within ${show(apart)} of each other, ${show(least)} is the least`;
  const hint = 'move them apart, make them or their reveals smaller, or set mat.leastBar';
  return error('openings-near', path, message, hint);
}
