import * as z from 'zod/mini';
import type { Size } from '../geometry/point.ts';
import { defined } from '../problems/defined.ts';
import { type Problem, warning } from '../problems/problem.ts';
import { converted, described, id, record } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import { lookUp } from '../read/fields/look-up.ts';
import {
  frameSizes,
  LIP,
  oneRequired,
  oneSize,
  type PackagePart,
  packagePart,
  partFrom as partOfShop,
  profile,
} from '../shop/frame.ts';
import type { Rate } from '../shop/rate.ts';
import type { Shop } from '../shop/shop.ts';
import { either } from '../shop/units.ts';
import { showLength } from '../units/print.ts';
import type { LengthUnit, Units } from '../units/units.ts';
import type { LayerRequest } from './layer.ts';
import { fallsShort } from './rule-of-thumb.ts';

/** Exactly one of `inside` (measured in the rebate; clearance comes off) and `nominal` (clearance already in it). */
export interface FrameRequest {
  readonly inside?: Size;
  readonly nominal?: Size;
  /** Over all, not per side. */
  readonly clearance: number;
  /** How much of the mat the frame's lip covers on each side. */
  readonly lip: number;
  /** Of a frame or a moulding of the shop. */
  readonly name?: string;
  /** Of the rebate. */
  readonly depth?: number;
  readonly glazing?: PackagePart;
  readonly backing?: PackagePart;
  /** Width of the moulding's face, from the edge of its sight to its outside. */
  readonly width?: number;
  /** `#rrggbb`, of the moulding's face. */
  readonly colour?: string;
  /** Of the frame or its moulding. */
  readonly price?: Rate;
  /** Of the moulding, percent. */
  readonly waste?: number;
  /** Between glazing and mat, or between mat and art. */
  readonly spacer?: number;
  /** Thickness of the artwork with its support. */
  readonly art?: number;
}

/** Over all, in the rebate: 1–3 mm by size (Fine Art Trade Guild, framing standards); the upper end. */
export const usualClearance = (units: Units): number => either(units, 1 / 8, 3);

function partOfJob(unit: LengthUnit, what: 'glazing' | 'backing', example: string) {
  const expected = `${what} of the shop by its name, or a map with its thickness`;
  const part = z.union([id(`A name in the shop’s list of ${what}`), packagePart(unit, expected)], expected);
  return described(part, `The ${what}, for the depth of the rebate and the ticket`, [example, { thickness: '2 mm' }]);
}

/** The frame of a job; a name alone is a ready-made one of the shop. */
export function frameSchema(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const expected = 'a ready-made frame of the shop by its name, or a map: inside, nominal or ready, clearance, lip …';
  const few = { least: 0, most: 100 };
  const keys = ['inside', 'nominal', 'ready'];
  const shape = {
    ...frameSizes(unit),
    ready: z.optional(id('A ready-made frame of the shop', ['ash-16x20'])),
    moulding: z.optional(id('A moulding of the shop, for its lip, clearance and depth', ['ash'])),
    ...profile(unit),
    glazing: z.optional(partOfJob(unit, 'glazing', 'clear')),
    backing: z.optional(partOfJob(unit, 'backing', 'foam')),
    spacer: z.optional(length('Spacers in the rebate', ['3 mm'], few)),
    art: z.optional(length('Thickness of the artwork with its support', ['0.5 mm'], few)),
  };
  const map = record(shape, expected).check(
    oneSize(keys, 'give inside (measured in the rebate), nominal (as sold) or ready (a frame of the shop)'),
  );
  const name = converted(id('A ready-made frame of the shop'), (ready): z.output<typeof map> => ({ ready }));
  return described(
    z.union([name, described(map, 'A frame', [], oneRequired(keys))], expected),
    'The frame that the mat goes into',
    [{ inside: '16 x 20', clearance: '1/8', lip: '1/4' }, 'ash-16x20'],
  );
}

type FrameInput = z.output<ReturnType<typeof frameSchema>>;

const PATH = ['mat', 'frame'];

/** The job's own words first, then those of a ready-made frame, then those of the moulding. */
export function frameFrom(given: FrameInput, shop: Shop, units: Units, problems: Problem[]): FrameRequest {
  const ready = lookUp('frame', given.ready, shop.frames, [...PATH, 'ready'], problems);
  const moulding = lookUp('moulding', given.moulding, shop.mouldings, [...PATH, 'moulding'], problems);
  return {
    clearance: given.clearance ?? ready?.clearance ?? moulding?.clearance ?? usualClearance(units),
    lip: given.lip ?? ready?.lip ?? moulding?.lip ?? LIP,
    ...defined({
      inside: given.inside ?? ready?.inside,
      nominal: given.nominal ?? ready?.nominal,
      name: ready?.name ?? moulding?.name,
      depth: given.depth ?? ready?.depth ?? moulding?.depth,
      width: given.width ?? ready?.width ?? moulding?.width,
      colour: given.colour ?? ready?.colour ?? moulding?.colour,
      price: ready?.price ?? moulding?.price,
      waste: ready?.waste ?? moulding?.waste,
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
  return partOfShop(given.name ?? what, given);
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
  if (!fallsShort(frame.depth, total)) return [];
  const show = (mm: number): string => showLength(mm, units);
  const sum = parts.filter(([, thickness]) => thickness > 0).map(([what, thickness]) => `${what} ${show(thickness)}`);
  const message = `the rebate is ${show(frame.depth)} deep, but ${sum.join(' + ')} = ${show(total)} must lie in it`;
  const hint = `it stands ${show(total - frame.depth)} proud: take a deeper moulding, or fittings that hold it so`;
  return [warning('rebate-shallow', PATH, message, hint)];
}
