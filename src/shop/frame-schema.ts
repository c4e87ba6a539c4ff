import * as z from 'zod/mini';
import { check, colour, converted, described, id, line, needed, record } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import type { LengthUnit } from '../units/units.ts';
import { priceField } from './prices-schema.ts';
import { sheetSizes } from './stock-schema.ts';

/** What every frame and moulding may say. */
function profile(unit: LengthUnit) {
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

function sizes(unit: LengthUnit) {
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
const oneSize = (keys: readonly string[], hint: string) =>
  check<Readonly<Record<string, unknown>>>((frame) => {
    const given = keys.filter((key) => frame[key] !== undefined);
    if (given.length === 1) return undefined;
    const message = given.length === 0 ? 'the frame has no size' : `the frame has both ${given.join(' and ')}`;
    return { code: 'frame-size', message, hint };
  });

const oneRequired = (keys: readonly string[]) => ({ oneOf: keys.map((key) => ({ required: [key] })) });

export function mouldingSchema(unit: LengthUnit) {
  const price = priceField('Price of the moulding', 'piece', ['foot', 'metre', 'unitedInch']);
  const shape = {
    name: z.optional(line('What documents call it', ['Ash'])),
    ...profile(unit),
    price: z.optional(price),
  };
  return described(
    record(shape, 'a map: name, lip, clearance, depth, width, colour, price'),
    'A moulding that frames of any size are made of',
  );
}

export function readyFrameSchema(unit: LengthUnit) {
  const shape = {
    name: z.optional(line('What documents call it', ['Ash, 16 x 20'])),
    ...sizes(unit),
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

function partOfJob(unit: LengthUnit, what: 'glazing' | 'backing', example: string) {
  const expected = `${what} of the shop by its name, or a map with its thickness`;
  const part = z.union([id(`A name in the shop’s list of ${what}`), packagePart(unit, expected)], expected);
  return described(part, `The ${what}, for the depth of the rebate and the ticket`, [example, { thickness: '2 mm' }]);
}

/** The frame of a job; a name alone is a ready-made one of the shop. */
export function jobFrame(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const expected = 'a ready-made frame of the shop by its name, or a map: inside, nominal or ready, clearance, lip …';
  const few = { least: 0, most: 100 };
  const keys = ['inside', 'nominal', 'ready'];
  const shape = {
    ...sizes(unit),
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
