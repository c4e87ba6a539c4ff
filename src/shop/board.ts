import * as z from 'zod/mini';
import type { Size } from '../geometry/point.ts';
import { defined } from '../problems/defined.ts';
import { colour, converted, described, line, needed, number, record, whole, yesNo } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import { type LengthUnit, mmFromInches } from '../units/units.ts';
import { priceField, type Rate } from './rate.ts';

export interface Board {
  /** The shop's key, or what the job calls a board given in place. */
  readonly id: string;
  readonly name: string;
  /** Its number in the list that it is ordered from. */
  readonly code?: string;
  readonly thickness: number;
  readonly plies?: number;
  /** `#rrggbb`. */
  readonly colour: string;
  readonly core: string;
  /** The sizes of sheet that it is bought in. */
  readonly sheets: readonly SheetSize[];
  /** Of a sheet that has none of its own. */
  readonly price?: number;
  /** By area, instead. */
  readonly areaPrice?: Rate;
  /** True where the board has a direction, so that blanks may not turn. */
  readonly directional: boolean;
}

/** Boards are one where their name and thickness are: jobs may call the same one differently. */
export const boardKey = ({ name, thickness }: Pick<Board, 'name' | 'thickness'>): string =>
  `${name.toLowerCase()} ${thickness.toFixed(3)}`;

/** A size of sheet that a board is bought in. */
export interface SheetSize extends Size {
  readonly price?: number;
  /** How many are left; undefined where as many can be had as are needed. */
  readonly count?: number;
  /** As it really is: sheets run oversize. The size is only its name then. */
  readonly measured?: Size;
}

/** 4-ply board measures 1.270–1.524 mm (S. Saitzyk, Art Hardware, 1987); 1.4 is its middle. */
export const BOARD_THICKNESS = 1.4;
/** The usual window board (Library of Congress, Guide to Preservation Matting and Framing: 4-ply at least). */
const PLIES = 4;
/** Off-white, and a white core: common practice, no source. */
export const BOARD_COLOUR = '#f4f1e8';
export const BOARD_CORE = 'white';

/** What a layer is made of that names no board. */
export const BOARD: Board = {
  id: 'default-4-ply',
  name: '4-ply board',
  thickness: BOARD_THICKNESS,
  plies: PLIES,
  colour: BOARD_COLOUR,
  core: BOARD_CORE,
  sheets: [],
  directional: false,
};

/** The usual full sheet of mat board: common practice, no source. */
export const SHEET = { width: mmFromInches(32), height: mmFromInches(40) };

/** No board that is sold is wider than this (60 × 104 in is the largest known from memory; common practice, no source). */
export const WIDEST_BOARD = mmFromInches(60);

/** The narrowest thing that is called a sheet, mm. */
const NARROWEST = 50;

/** The sizes of sheet that something is bought in, each alone or with its price and how many are left. */
export function sheetSizes(unit: LengthUnit) {
  const { size } = lengthFields(unit);
  const range = { least: NARROWEST };
  const expected = 'a size, or a map: size, price, count, measured';
  const sheet = record(
    {
      size: needed(size('Width x height, the board’s direction being up', ['32 x 40 in'], range)),
      price: z.optional(number('Price of one, instead of the board’s', [9.5], 0, 1e6, 'a price')),
      count: z.optional(whole('How many are left; as many as are needed without it', [12], 0, 1e6)),
      measured: z.optional(size('As measured, where it is not quite that size', ['32 1/16 x 40 1/8 in'], range)),
    },
    expected,
  );
  const alone = converted(
    size('A stock sheet', ['32 x 40 in'], range),
    (of: Size): z.output<typeof sheet> => ({ size: of }),
  );
  const list = z.array(described(z.union([alone, sheet], expected), 'A size of sheet'), 'a list of sheet sizes');
  return described(list, 'The sizes of sheet that it is bought in', [
    ['32 x 40 in', '40 x 60 in'],
    [{ size: '32 x 40 in', price: 9.5, count: 12 }],
  ]);
}

export const sheetFrom = ({
  size,
  price,
  count,
  measured,
}: z.output<ReturnType<typeof sheetSizes>>[number]): SheetSize => ({
  ...size,
  ...defined({ price, count, measured }),
});

const thickness = (unit: LengthUnit) =>
  lengthFields(unit).length('Thickness of the board, measured', ['1.4 mm', 0.055], { least: 0.1, most: 25 });

const look = () => ({
  name: z.optional(line('What documents call the board', ['Bone, 4-ply'])),
  code: z.optional(line('Its number in the list that it is ordered from', ['B-104'], 24)),
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
    'a map: thickness, plies, name, code, colour, core, sheets, price, directional',
  );
  return described(board, 'A board');
}

export const BOARD_EXPECTED = 'a board of the shop by its name, or a map with its thickness';

/** A board given in place, in a layer; it needs no shop, but a thickness. */
export const boardInPlace = (unit: LengthUnit) =>
  described(record({ thickness: needed(thickness(unit)), ...look() }, BOARD_EXPECTED), 'A board described in place');

export function boardFrom(id: string, given: z.output<ReturnType<typeof boardSchema>>): Board {
  return {
    id,
    name: given.name ?? id,
    thickness: given.thickness ?? BOARD_THICKNESS,
    colour: given.colour ?? BOARD_COLOUR,
    core: given.core ?? BOARD_CORE,
    sheets: (given.sheets ?? []).map(sheetFrom),
    directional: given.directional ?? false,
    ...boardPrice(given.price),
    ...defined({ code: given.code, plies: given.plies }),
  };
}

function boardPrice(rate: Rate | undefined): { readonly price?: number; readonly areaPrice?: Rate } {
  if (rate === undefined) return {};
  return rate.per === 'sheet' ? { price: rate.amount } : { areaPrice: rate };
}

/** A board as it is fetched: its name, and its number in the list where it has one. */
export const boardTitle = ({ name, code }: Pick<Board, 'name' | 'code'>): string =>
  code === undefined ? name : `${name} (${code})`;
