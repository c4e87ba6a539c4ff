import * as z from 'zod/mini';
import type { LengthUnit } from '../units/units.ts';
import { colour, lengthFields, line, number, record } from './fields.ts';

export const boardThickness = (unit: LengthUnit) =>
  lengthFields(unit).length({
    about: 'Measured thickness of the board',
    examples: ['1.4 mm', 0.055],
    least: 0.1,
    most: 25,
  });

/** What a board is, in the shop's list or in place in a layer, but for its thickness. */
export const boardShape = () => ({
  name: z.optional(line({ about: 'What documents call the board', examples: ['Bone, 4-ply'] })),
  plies: z.optional(
    number({
      about: 'Plies as sold',
      examples: [4],
      min: 1,
      max: 24,
      whole: true,
      expected: 'a whole number of plies',
    }),
  ),
  colour: z.optional(colour({ about: 'Colour of the face, for proofs on screen and paper', examples: ['#efe9dc'] })),
  core: z.optional(line({ about: 'Colour of the core, which a bevel shows', examples: ['white', 'black'] })),
});

/** A board given in place: it needs no shop, but a thickness. */
export const boardInPlace = (unit: LengthUnit) =>
  record(
    { thickness: boardThickness(unit), ...boardShape() },
    'a board of the shop by its name, or a map with its thickness',
  );
