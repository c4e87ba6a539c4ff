import type { Job } from '../../job/job.ts';
import { shapeOf } from '../../shapes/shapes.ts';
import type { Plan } from './structure.ts';
import { type SumEquation, sumEquation } from './sum-equation.ts';
import {
  AXES,
  border,
  gap,
  HORIZONTAL,
  overlap,
  place,
  reveal,
  revealed,
  usualGap,
  usualStep,
  VERTICAL,
} from './unknowns.ts';

const same = (a: string, b: string, what: string): SumEquation => sumEquation({ [a]: 1, [b]: -1 }, [], { what });
const usual = (name: string, length: number, what: string, sign = 1): SumEquation =>
  sumEquation({ [name]: sign }, [{ kind: 'usual', what, length, times: 1 }]);

const coverOf = (job: Job, of: number): string => (job.openings[of]!.float === undefined ? 'overlap' : 'float');

/**
 * What is assumed where the job says nothing, in this order, each only as far as the sizes before it leave it open:
 * left = right; top = bottom, unless there is a weighting; placed openings centred where they say nothing; overlaps alike
 * on opposite sides, then on both axes, then from opening to opening; missing reveals alike, then of the usual step; the
 * overlap of the usual step; gaps alike, then the usual one; sides = top.
 */
export function assumptions(plan: Plan): readonly SumEquation[] {
  const { job, group } = plan;
  const equations: SumEquation[] = [same(border('left'), border('right'), 'left = right')];
  if (job.mat.weighting === undefined) equations.push(same(border('top'), border('bottom'), 'top = bottom'));
  for (const index of group.placed) {
    const given = job.openings[index]!.place!;
    for (const { near, far } of AXES) {
      if (given[near] === undefined && given[far] === undefined)
        equations.push(same(place(near, index), place(far, index), 'centred'));
    }
  }
  const artworks = group.kinds.filter((of) => job.openings[of]!.artwork !== undefined);
  for (const of of artworks) {
    const even = `equal ${coverOf(job, of)}s`;
    equations.push(
      same(overlap('left', of), overlap('right', of), even),
      same(overlap('top', of), overlap('bottom', of), even),
    );
    if (shapeOf(job.openings[of]!.shape).aspect === undefined)
      equations.push(same(overlap('left', of), overlap('top', of), even));
  }
  const alike = (of: number): boolean =>
    (job.openings[of]!.float === undefined) === (job.openings[artworks[0]!]!.float === undefined);
  for (const of of artworks.slice(1).filter(alike))
    equations.push(same(overlap('left', artworks[0]!), overlap('left', of), `equal ${coverOf(job, of)}s`));
  const missing = revealed(job).filter((layer) => job.mat.layers[layer]!.reveal === undefined);
  for (const layer of missing.slice(1)) equations.push(same(reveal(missing[0]!), reveal(layer), 'equal reveals'));
  for (const layer of missing) equations.push(usual(reveal(layer), usualStep(job), 'usual reveal'));
  for (const of of artworks) {
    const { artwork, float } = job.openings[of]!;
    const sign = float === undefined ? 1 : -1;
    // Where the proportion is fixed the shorter side of the artwork settles the size.
    const wide = shapeOf(job.openings[of]!.shape).aspect !== undefined && artwork!.width > artwork!.height;
    const order = wide ? (['top', 'bottom', 'left', 'right'] as const) : (['left', 'right', 'top', 'bottom'] as const);
    for (const side of order) {
      equations.push(usual(overlap(side, of), usualStep(job), `usual ${coverOf(job, of)}`, sign));
    }
  }
  if (plan.spans.width.length > 1 || plan.spans.height.length > 1) {
    equations.push(same(gap(HORIZONTAL), gap(VERTICAL), 'equal gaps'));
    for (const axis of AXES) equations.push(usual(gap(axis), usualGap(job), 'usual gap'));
  }
  equations.push(same(border('left'), border('top'), 'sides = top'));
  return equations;
}
