import { type Problem, warning } from '../problems/problem.ts';
import { defined } from '../read/fields/defined.ts';
import { lookUp } from '../read/fields/look-up.ts';
import * as defaults from '../shop/defaults.ts';
import type { PackagePart } from '../shop/frame.ts';
import type { Shop } from '../shop/shop.ts';
import { showLength } from '../units/print.ts';
import type { Units } from '../units/units.ts';
import type { FrameRequest } from './frame.ts';
import type { JobInput } from './job-schema.ts';
import type { LayerRequest } from './layer.ts';

type FrameInput = NonNullable<NonNullable<JobInput['mat']>['frame']>;

const PATH = ['mat', 'frame'];

/** The job's own words first, then those of a ready-made frame, then those of the moulding. */
export function frameFrom(given: FrameInput, shop: Shop, units: Units, problems: Problem[]): FrameRequest {
  const ready = lookUp('frame', given.ready, shop.frames, [...PATH, 'ready'], problems);
  const moulding = lookUp('moulding', given.moulding, shop.mouldings, [...PATH, 'moulding'], problems);
  return {
    clearance: given.clearance ?? ready?.clearance ?? moulding?.clearance ?? defaults.clearance(units),
    lip: given.lip ?? ready?.lip ?? moulding?.lip ?? defaults.LIP,
    ...defined({
      inside: given.inside ?? ready?.inside,
      nominal: given.nominal ?? ready?.nominal,
      name: ready?.name ?? moulding?.name,
      depth: given.depth ?? ready?.depth ?? moulding?.depth,
      width: given.width ?? ready?.width ?? moulding?.width,
      colour: given.colour ?? ready?.colour ?? moulding?.colour,
      price: ready?.price ?? moulding?.price,
      glazing: partFrom('glazing', given.glazing, shop.glazing, problems),
      backing: partFrom('backing', given.backing, shop.backing, problems),
      spacer: given.spacer,
      art: given.art,
    }),
  };
}

function partFrom(
  what: 'glazing' | 'backing',
  given: FrameInput['glazing'],
  known: ReadonlyMap<string, PackagePart>,
  problems: Problem[],
): PackagePart | undefined {
  if (given === undefined || typeof given === 'string') return lookUp(what, given, known, [...PATH, what], problems);
  const name = given.name ?? what;
  return { id: name, name, thickness: given.thickness, ...defined({ price: given.price }) };
}

/** What must lie in the rebate, as far as the job says, from the glazing backwards; their sum is the depth that it takes. */
export function rebateParts(
  frame: FrameRequest,
  layers: readonly LayerRequest[],
): readonly (readonly [what: string, thickness: number])[] {
  return [
    ['glazing', frame.glazing?.thickness ?? 0],
    ['mats', layers.reduce((sum, { board }) => sum + board.thickness, 0)],
    ['spacer', frame.spacer ?? 0],
    ['art', frame.art ?? 0],
    ['backing', frame.backing?.thickness ?? 0],
  ];
}

/** A warning where what must lie in the rebate is deeper than it. */
export function rebateProblems(frame: FrameRequest, layers: readonly LayerRequest[], units: Units): readonly Problem[] {
  if (frame.depth === undefined) return [];
  const parts = rebateParts(frame, layers);
  const total = parts.reduce((sum, [, thickness]) => sum + thickness, 0);
  if (total <= frame.depth + 1e-9) return [];
  const show = (mm: number): string => showLength(mm, units);
  const sum = parts.filter(([, thickness]) => thickness > 0).map(([what, thickness]) => `${what} ${show(thickness)}`);
  const message = `the rebate is ${show(frame.depth)} deep, but ${sum.join(' + ')} = ${show(total)} must lie in it`;
  const hint = `it stands ${show(total - frame.depth)} proud: take a deeper moulding, or fittings that hold it so`;
  return [warning('rebate-shallow', PATH, message, hint)];
}
