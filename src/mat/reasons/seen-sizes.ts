import { bottom, grown, right } from '../../geometry/box.ts';
import { SIDES, type Side } from '../../geometry/sides.ts';
import { backInset } from '../bevel.ts';
import { layerName } from '../layers.ts';
import { openingName } from '../names.ts';
import { placeOpening } from '../placed.ts';
import { insetSummands } from '../sizes/givens.ts';
import type { System } from '../sizes/linear.ts';
import type { SolvedSizes } from '../sizes/sizes.ts';
import { givenReveal, givenRevealSummand, type Plan } from '../sizes/structure.ts';
import { bevelSummand, type Summand } from '../sizes/sum-equation.ts';
import { AXES, opening, overlap, reveal, seenLayers } from '../sizes/unknowns.ts';
import type { Snapped } from '../snap/snap.ts';
import { moved, type Reason } from './reason.ts';
import { lengthOf, type Sum, sumOf, together } from './sums.ts';

/** Why so much is seen through each opening, and why so much of its artwork is covered: the innermost edge of all tells. */
export function seenSizes(solved: SolvedSizes, now: Snapped, system: System): readonly Reason[] {
  const { plan } = solved.laid;
  const { job, group } = plan;
  const of = (unknown: string): Sum => sumOf(system.takenFor(unknown) ?? new Map());
  return job.openings.flatMap((request, index): Reason[] => {
    const kind = group.alikes[index]!;
    const name = job.openings.length === 1 ? '' : ` of ${openingName(job, index)}`;
    const placed = placeOpening(job, index, solved.openings[index]!);
    const last = placeOpening(job, index, now.sizes.openings[index]!);
    const { figure } = placed.layers[seenLayers(job, request).at(-1)!]!;
    const lowest = grown(figure.frame, figure.by);
    const edges: Readonly<Record<Side, number>> = {
      left: lowest.x - placed.sight.x,
      top: lowest.y - placed.sight.y,
      right: right(placed.sight) - right(lowest),
      bottom: bottom(placed.sight) - bottom(lowest),
    };
    const further = (side: Side): Sum => innermost(plan, index, side, edges[side], of);
    const why = (sum: Sum): Pick<Reason, 'from' | 'rules'> => ({ from: sum.summands, rules: sum.rules });
    const sights = AXES.map((axis): Reason => {
      const { extent, near, far } = axis;
      const sum = together([once(of(opening(axis, kind))), once(further(near)), once(further(far))]);
      const value = moved(placed.sight[extent], last.sight[extent]);
      return { size: `openings[${index}].sight.${extent}`, what: `sight ${extent}${name}`, ...value, ...why(sum) };
    });
    const { artwork } = placed;
    if (artwork === undefined) return sights;
    const sign = artwork.floated ? -1 : 1;
    const covers = SIDES.map((side): Reason => {
      const inset = { summands: insetSummands(job, request, -1), rules: [] };
      const taken = [once(of(overlap(side, kind))), { sum: further(side), times: -1 }, once(inset)];
      const sum = together([{ sum: together(taken), times: sign }]);
      const value = moved(sign * artwork.overlap[side], sign * last.artwork!.overlap[side]);
      const what = artwork.floated ? 'seen around the artwork' : 'artwork covered';
      return { size: `openings[${index}].cover.${side}`, what: `${what} at the ${side}${name}`, ...value, ...why(sum) };
    });
    return [...sights, ...covers];
  });
}

const once = (sum: Sum) => ({ sum, times: 1 });

/** From the lowest face out to the innermost edge on one side: reveals of the layers between, less a bevel. */
function innermost(plan: Plan, index: number, side: Side, edge: number, of: (unknown: string) => Sum): Sum {
  const { job, group } = plan;
  const kind = group.alikes[index]!;
  let reveals: Sum = { summands: [], rules: [] };
  let least: { readonly sum: Sum; readonly value: number } | undefined;
  for (const layer of seenLayers(job, job.openings[index]!).toReversed()) {
    const { board, bevel } = job.mat.layers[layer]!;
    const inset = Math.max(0, backInset(board.thickness, bevel));
    const own: readonly Summand[] = bevelSummand(layer, layerName(layer), inset, -1);
    const sum = together([once(reveals), once({ summands: own, rules: [] })]);
    const value = lengthOf(sum);
    if (least === undefined || value < least.value) least = { sum, value };
    if (layer === 0) break;
    const given = givenReveal(job, kind, layer);
    const more: Sum =
      given === undefined
        ? of(reveal(layer))
        : { summands: [givenRevealSummand(job, kind, layer, side, given[side], 1)], rules: [] };
    reveals = together([once(reveals), once(more)]);
  }
  // Slanting sides reach in by another length than their reveal or bevel.
  const rest = edge - least!.value;
  if (Math.abs(rest) <= 1e-9) return least!.sum;
  const what = `what ${openingName(job, index)} reaches further at the ${side}`;
  return together([once(least!.sum), once({ summands: [{ kind: 'shape', what, length: rest, times: 1 }], rules: [] })]);
}
