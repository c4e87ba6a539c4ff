import * as z from 'zod/mini';
import type { Size } from '../geometry/point.ts';
import { defined } from '../problems/defined.ts';
import type { Problem } from '../problems/problem.ts';
import { check, colour, described, id, line, needed, number, record } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import { lookUp } from '../read/fields/look-up.ts';
import type { LengthUnit } from '../units/units.ts';
import { type SheetSize, sheetFrom, sheetSizes } from './board.ts';
import { priceField, type Rate } from './rate.ts';

/** Glazing or backing: what lies in the rebate before or behind the mat. */
export interface PackagePart {
  /** The shop's key, or what the job calls one given in place. */
  readonly id: string;
  readonly name: string;
  readonly thickness: number;
  readonly price?: Rate;
  /** Of a backing: the sizes of sheet that it is bought in. */
  readonly sheets?: readonly SheetSize[];
}

/** A length of moulding made up into frames of any size. */
export interface Moulding {
  readonly id: string;
  readonly name: string;
  readonly lip: number;
  readonly depth?: number;
  readonly clearance?: number;
  /** Of its face, from the edge of its sight to its outside. */
  readonly width?: number;
  readonly colour?: string;
  readonly price?: Rate;
  /** Bought beside what the outside of the frame takes, percent of it: for the saw and for faults. */
  readonly waste?: number;
}

/** A ready-made frame: exactly one of `inside` and `nominal`, as in a job. */
export interface ReadyFrame extends Moulding {
  readonly inside?: Size;
  readonly nominal?: Size;
}

/** A frame covers nothing of the mat where nothing is said. */
export const LIP = 0;

/** What every frame and moulding may say. */
export function profile(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const lip = 'How much of the mat the frame’s lip covers on each side';
  const depth = 'Depth of the rebate, which must hold glazing, mats, art and backing';
  return {
    lip: z.optional(length(lip, ['1/4'], { least: 0, most: 100 })),
    clearance: z.optional(length('Play of the mat in the rebate, over all', ['1/8'], { least: 0, most: 25 })),
    depth: z.optional(length(depth, ['5/8'], { least: 1, most: 200 })),
    width: z.optional(length('Width of the moulding’s face, for proofs', ['3/4'], { least: 2, most: 300 })),
    colour: z.optional(colour('Colour of the moulding’s face, for proofs', ['#3a2a1c'])),
  };
}

export function frameSizes(unit: LengthUnit) {
  const { size } = lengthFields(unit);
  const least = 25;
  const inside = 'Size of the rebate, measured; the clearance comes off it';
  const nominal = 'Size that the frame is sold as, its clearance already in it';
  return {
    inside: z.optional(size(inside, ['16 1/8 x 20 1/8'], { least })),
    nominal: z.optional(size(nominal, ['16 x 20'], { least })),
  };
}

/** A frame has one size, said in one of several ways. */
export const oneSize = (keys: readonly string[], hint: string) =>
  check<Readonly<Record<string, unknown>>>((frame) => {
    const given = keys.filter((key) => frame[key] !== undefined);
    if (given.length === 1) return undefined;
    const message = given.length === 0 ? 'the frame has no size' : `the frame has both ${given.join(' and ')}`;
    return { code: 'frame-size', message, hint };
  });

export const oneRequired = (keys: readonly string[]) => ({ oneOf: keys.map((key) => ({ required: [key] })) });

export function mouldingSchema(unit: LengthUnit) {
  const price = priceField('Price of the moulding', 'piece', ['foot', 'metre', 'unitedInch']);
  const shape = {
    name: z.optional(line('What documents call it', ['Ash'])),
    ...profile(unit),
    price: z.optional(price),
    waste: z.optional(
      number(
        'Bought beside what the frame takes, for the saw and for faults; counts where its price is by length',
        [10],
        0,
        100,
        'a percentage from 0 to 100',
      ),
    ),
  };
  return described(
    record(shape, 'a map: name, lip, clearance, depth, width, colour, price, waste'),
    'A moulding that frames of any size are made of',
  );
}

export function readyFrameSchema(unit: LengthUnit) {
  const shape = {
    name: z.optional(line('What documents call it', ['Ash, 16 x 20'])),
    ...frameSizes(unit),
    moulding: z.optional(id('The moulding of this file that it is made of', ['ash'])),
    ...profile(unit),
    price: z.optional(priceField('Price of the frame', 'piece', ['unitedInch'])),
  };
  const keys = ['inside', 'nominal'];
  const frame = record(
    shape,
    'a map: inside or nominal, moulding, lip, clearance, depth, width, colour, price, name',
  ).check(oneSize(keys, 'give inside (measured in the rebate) or nominal (as sold)'));
  return described(frame, 'A ready-made frame', [], oneRequired(keys));
}

function partShape(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  return {
    thickness: needed(length('Thickness', ['2 mm'], { least: 0.1, most: 50 })),
    name: z.optional(line('What documents call it', ['Clear glass'])),
    price: z.optional(priceField('Price', 'piece', ['squareFoot', 'squareMetre', 'unitedInch'])),
  };
}

/** Glazing or backing, in the shop's lists or in place. */
export const packagePart = (unit: LengthUnit, expected: string) =>
  described(record(partShape(unit), expected), 'Glazing or backing');

/** A backing of the shop, which may be cut from sheets. */
export const backingSchema = (unit: LengthUnit) =>
  described(
    record({ ...partShape(unit), sheets: z.optional(sheetSizes(unit)) }, 'a map: thickness, name, price, sheets'),
    'A backing',
  );

export function mouldingFrom(id: string, given: z.output<ReturnType<typeof mouldingSchema>>): Moulding {
  return {
    id,
    name: given.name ?? id,
    lip: given.lip ?? LIP,
    ...defined({
      clearance: given.clearance,
      depth: given.depth,
      width: given.width,
      colour: given.colour,
      price: given.price,
      waste: given.waste,
    }),
  };
}

/** What the frame does not say itself, its moulding does. */
export function readyFrameFrom(
  id: string,
  given: z.output<ReturnType<typeof readyFrameSchema>>,
  mouldings: ReadonlyMap<string, Moulding>,
  problems: Problem[],
): ReadyFrame {
  const moulding = lookUp('moulding', given.moulding, mouldings, ['frames', id, 'moulding'], problems);
  return {
    id,
    name: given.name ?? id,
    lip: given.lip ?? moulding?.lip ?? LIP,
    ...defined({
      inside: given.inside,
      nominal: given.nominal,
      clearance: given.clearance ?? moulding?.clearance,
      depth: given.depth ?? moulding?.depth,
      width: given.width ?? moulding?.width,
      colour: given.colour ?? moulding?.colour,
      price: given.price ?? moulding?.price,
      waste: moulding?.waste,
    }),
  };
}

export function partFrom(id: string, given: z.output<ReturnType<typeof packagePart>>): PackagePart {
  return { id, name: given.name ?? id, thickness: given.thickness, ...defined({ price: given.price }) };
}

export function backingFrom(id: string, { sheets, ...given }: z.output<ReturnType<typeof backingSchema>>): PackagePart {
  return { ...partFrom(id, given), ...defined({ sheets: sheets?.map(sheetFrom) }) };
}
