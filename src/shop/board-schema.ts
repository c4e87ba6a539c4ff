import * as z from 'zod/mini';
import { colour, described, line, needed, record, whole, yesNo } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import type { LengthUnit } from '../units/units.ts';
import { priceField } from './prices-schema.ts';
import { sheetSizes } from './stock-schema.ts';

const thickness = (unit: LengthUnit) =>
  lengthFields(unit).length('Thickness of the board, measured', ['1.4 mm', 0.055], { least: 0.1, most: 25 });

const look = () => ({
  name: z.optional(line('What documents call the board', ['Bone, 4-ply'])),
  plies: z.optional(whole('Plies as sold', [4], 1, 24)),
  colour: z.optional(colour('Colour of the face, for proofs', ['#efe9dc'])),
  core: z.optional(line('Colour of the core, which a bevel shows', ['white', 'black'])),
});

/** A board of the shop. */
export function boardSchema(unit: LengthUnit) {
  const board = record(
    {
      thickness: z.optional(thickness(unit)),
      ...look(),
      sheets: z.optional(sheetSizes(unit)),
      price: z.optional(priceField('Price in the shop’s money', 'sheet', ['squareFoot', 'squareMetre'])),
      directional: z.optional(yesNo('True where it has a grain or a pattern, so that blanks may not be turned')),
    },
    'a map: thickness, plies, name, colour, core, sheets, price, directional',
  );
  return described(board, 'A board');
}

export const BOARD_EXPECTED = 'a board of the shop by its name, or a map with its thickness';

/** A board given in place, in a layer; it needs no shop, but a thickness. */
export const boardInPlace = (unit: LengthUnit) =>
  described(record({ thickness: needed(thickness(unit)), ...look() }, BOARD_EXPECTED), 'A board described in place');
