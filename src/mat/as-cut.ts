import { type BySide, SIDES, type Side } from '../geometry/sides.ts';
import type { OpeningAsCut } from '../job/as-cut.ts';
import type { Job } from '../job/job.ts';
import { defined } from '../problems/defined.ts';
import { error, fail, type Problem, type Result, succeed } from '../problems/problem.ts';
import { shapeOf } from '../shapes/shapes.ts';
import { showLength } from '../units/print.ts';
import { LEAST_OVERLAP } from './checks/opening.ts';
import { theLayer, trimOf } from './layers.ts';
import { openingName } from './names.ts';
import { placeOpening } from './placed.ts';
import { AGREEMENT } from './reasons/contradiction.ts';
import type { AllSizes, Sizes } from './sizes/model.ts';
import { solveSizes } from './sizes/sizes.ts';
import { AXES } from './sizes/unknowns.ts';
import { type Snapped, snap } from './snap/snap.ts';

/**
 * The sizes worked out again from what was cut. A mat of another size is solved anew, the sizes that were asked for giving
 * way in the order in which they are trusted; an opening that was cut is what it is, the layers below it keep their reveals
 * as long as the artwork stays covered.
 */
export function rescue(job: Job, planned: AllSizes, snapped: Snapped): Result<Snapped> {
  const anew = withOuter(job, planned, snapped);
  if (!anew.ok) return anew;
  const { sizes } = anew.value;
  const problems: Problem[] = [];
  const openings = sizes.openings.map((each, index) => withCuts(job, index, each, problems));
  if (problems.length > 0) return fail(problems);
  const least = (side: Side): number => Math.min(...openings.map((each) => each.border[side]));
  const cut = job.asCut!.openings.length > 0;
  return succeed({
    ...anew.value,
    sizes: cut ? { ...sizes, openings, border: bySide(least) } : sizes,
  });
}

const bySide = (length: (side: Side) => number): BySide<number> => ({
  top: length('top'),
  right: length('right'),
  bottom: length('bottom'),
  left: length('left'),
});

function withOuter(job: Job, planned: AllSizes, snapped: Snapped): Result<Snapped> {
  const { outer } = job.asCut!;
  if (outer === undefined) return succeed(snapped);
  if (outer.width === planned.outer.width && outer.height === planned.outer.height) return succeed(snapped);
  const { frame: _, ...mat } = job.mat;
  const solved = solveSizes({ ...job, mat: { ...mat, outer } }, planned.border);
  return solved.ok ? succeed(snap(job, solved.value)) : solved;
}

/** One opening with the layers that are cut as they were measured. */
function withCuts(job: Job, index: number, sizes: Sizes, problems: Problem[]): Sizes {
  const cuts = job.asCut!.openings.flatMap((cut, at) => (cut.opening === index ? [{ cut, at }] : []));
  const faults = cuts.flatMap(({ cut, at }) => cutProblems(job, sizes, cut, ['asCut', 'openings', at]));
  problems.push(...faults);
  if (cuts.length === 0 || faults.length > 0) return sizes;
  const planned = borders(sizes);
  const deepest = Math.max(...cuts.map(({ cut }) => cut.layer));
  let above: BySide<number> | undefined;
  const made = planned.map((plan, layer): BySide<number> | undefined => {
    if (plan === undefined) return undefined;
    const own = cuts.find(({ cut }) => cut.layer === layer);
    if (own !== undefined) above = measured(job, sizes, plan, own.cut);
    else if (layer <= deepest || above === undefined) above = plan;
    else {
      const last = above;
      above = bySide((side) => last[side] + sizes.reveals[layer]![side]);
    }
    return above;
  });
  const rescued = sizesFrom(sizes, made);
  const short = deepest < planned.length - 1 ? shortSides(job, index, rescued) : [];
  if (short.length === 0) return rescued;
  // Below what is cut the artwork's cover comes before even reveals.
  const held = shapeOf(job.openings[index]!.shape).reveals === 'any side' ? short : SIDES;
  const keeping = made.map((each, layer) => {
    if (each === undefined || layer <= deepest) return each;
    return bySide((side) => (held.includes(side) ? planned[layer]![side] : each[side]));
  });
  return sizesFrom(sizes, keeping);
}

/** Outer edge to the face line of every layer that is seen. */
function borders(sizes: Sizes): readonly (BySide<number> | undefined)[] {
  let last = sizes.border;
  return sizes.reveals.map((reveal) => {
    if (reveal === undefined) return undefined;
    const above = last;
    last = bySide((side) => above[side] + reveal[side]);
    return last;
  });
}

function sizesFrom(planned: Sizes, made: readonly (BySide<number> | undefined)[]): Sizes {
  const was = borders(planned)
    .filter((each) => each !== undefined)
    .at(-1)!;
  const lowest = made.filter((each) => each !== undefined).at(-1)!;
  let above: BySide<number> | undefined;
  const reveals = made.map((each) => {
    if (each === undefined) return undefined;
    const last = above ?? each;
    above = each;
    return bySide((side) => each[side] - last[side]);
  });
  const moved = bySide((side) => lowest[side] - was[side]);
  const { overlap } = planned;
  return {
    ...planned,
    border: made[0]!,
    reveals,
    opening: {
      width: planned.opening.width - moved.left - moved.right,
      height: planned.opening.height - moved.top - moved.bottom,
    },
    ...defined({ overlap: overlap === undefined ? undefined : bySide((side) => overlap[side] + moved[side]) }),
  };
}

/** Sides on which less of the artwork is covered, or left free, than it needs. */
function shortSides(job: Job, index: number, sizes: Sizes): readonly Side[] {
  const { artwork } = placeOpening(job, index, sizes);
  if (artwork === undefined) return [];
  const sign = artwork.floated ? -1 : 1;
  return SIDES.filter((side) => sign * artwork.overlap[side] < LEAST_OVERLAP - 1e-9);
}

/** Mat edge to an opening as it was cut. */
function measured(job: Job, sizes: Sizes, plan: BySide<number>, cut: OpeningAsCut): BySide<number> {
  const found: Record<Side, number> = { ...plan };
  for (const { extent, near, far } of AXES) {
    const [start, end] = [edge(job, sizes, cut, near), edge(job, sizes, cut, far)];
    const more = cut.size[extent] - (sizes.outer[extent] - plan[near] - plan[far]);
    const rest = sizes.outer[extent] - cut.size[extent];
    found[near] = start ?? (end === undefined ? plan[near] - more / 2 : rest - end);
    found[far] = end ?? (start === undefined ? plan[far] - more / 2 : rest - start);
  }
  return found;
}

/** A border that was measured, from the edge of its own board, taken to the edge of the mat. */
function edge(job: Job, sizes: Sizes, cut: OpeningAsCut, side: Side): number | undefined {
  const length = cut.border[side];
  const blank = job.asCut!.blanks[cut.layer];
  if (length === undefined || job.bench.stack === 'together') return length;
  const extent = side === 'left' || side === 'right' ? 'width' : 'height';
  return length + (blank === undefined ? trimOf(job, cut.layer) : (sizes.outer[extent] - blank[extent]) / 2);
}

function cutProblems(job: Job, sizes: Sizes, cut: OpeningAsCut, path: Problem['path']): readonly Problem[] {
  const { shape } = job.openings[cut.opening]!;
  const name = openingName(job, cut.opening);
  const show = (mm: number): string => showLength(mm, job.units);
  const { growsUnevenly, aspect } = shapeOf(shape);
  if (growsUnevenly === true) {
    const message = `${name} is a ${shape}, which is not worked out again from a width and a height`;
    const hint = 'cut it again, or give the whole job the sizes as they are now';
    return [error('as-cut-shape', path, message, hint)];
  }
  if (aspect !== undefined && Math.abs(cut.size.width - cut.size.height) > AGREEMENT) {
    const message = `${name} is a ${shape}, but ${show(cut.size.width)} wide and ${show(cut.size.height)} high as cut`;
    return [error('as-cut-shape', [...path, 'size'], message, 'measure it again, or cut it again')];
  }
  if (sizes.reveals[cut.layer] === undefined) {
    const message = `${name} shows nothing of ${theLayer(cut.layer)}`;
    return [error('as-cut-layer', [...path, 'layer'], message, 'give a layer that is seen in it')];
  }
  return AXES.flatMap(({ extent, near, far }) => {
    const [start, end] = [edge(job, sizes, cut, near), edge(job, sizes, cut, far)];
    if (start === undefined || end === undefined) return [];
    const off = start + cut.size[extent] + end - sizes.outer[extent];
    if (Math.abs(off) <= AGREEMENT) return [];
    const message = `the ${near} and ${far} borders and the ${extent} of ${name} as cut make ${show(off + sizes.outer[extent])}, the mat is ${show(sizes.outer[extent])} (difference ${show(Math.abs(off))})`;
    return [
      error('as-cut-contradicts', [...path, 'border'], message, 'measure again, or leave one of the borders out'),
    ];
  });
}
