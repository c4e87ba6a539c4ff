import * as z from 'zod/mini';
import type { Size } from '../geometry/point.ts';
import { allSides, type BySide } from '../geometry/sides.ts';
import { defined } from '../problems/defined.ts';
import { error, type Problem } from '../problems/problem.ts';
import { word } from '../problems/quoted.ts';
import { described, id, line, needed, number, oneOf, record, yesNo } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import { lookUp } from '../read/fields/look-up.ts';
import type { LengthUnit, Units } from '../units/units.ts';
import { either } from './units.ts';

/** A piece of board that is left from earlier work. */
export interface ShelfOffcut extends Size {
  /** What is written on it; unique on the shelf. */
  readonly id: string;
  /** A board or a backing of the shop. */
  readonly board: string;
  readonly note?: string;
}

/** How sheets of board are broken down. */
export interface StockSettings {
  /** Comes off each edge of a sheet before anything else. */
  readonly trim: BySide<number>;
  /** Width of a cut: 0 for a knife. */
  readonly kerf: number;
  /** What is smaller than this, either way round, is not worth keeping. */
  readonly leastOffcut: Size;
  /** The longest cut that the trimming head makes; undefined where it reaches across every sheet. */
  readonly longestCut?: number;
  /** The widest and the narrowest that the cutter's stop can be set to; undefined where it does for all. */
  readonly longestStop?: number;
  readonly shortestStop?: number;
  /** True where every blank must have an edge of its sheet, untrimmed. */
  readonly factoryEdge: boolean;
  /** Off each side of what drops out of an opening, before it is stock. */
  readonly falloutMargin: number;
  /** The board that each piece gets another blank of, behind the artwork. */
  readonly backing?: string;
  /** What counts first of a board with prices: what its sheets cost, or how many they are. */
  readonly first: 'cost' | 'sheets';
  /** What an offcut that is kept is worth, as a share of its part of the sheet's price. */
  readonly offcutCredit: number;
}

/** What lies on the shelf. */
export function shelfSchema(unit: LengthUnit) {
  const { size } = lengthFields(unit);
  const offcut = record(
    {
      id: needed(id('What is written on it; each has its own', ['S7'])),
      board: needed(id('The board or backing of this file', ['bone-4'])),
      size: needed(size('Width x height, the board’s direction being up', ['11 1/2 x 32 in'], { least: 10 })),
      note: z.optional(line('Where it comes from, or what is odd about it', ['one corner bruised'])),
    },
    'a map: id, board, size, note',
  );
  return described(
    z.array(described(offcut, 'An offcut'), 'a list of offcuts'),
    'Offcuts that lie on the shelf; stock uses them before it opens a sheet, and can write them',
    [[{ id: 'S7', board: 'bone-4', size: '11 1/2 x 32 in' }]],
  );
}

/** How sheets are broken down. */
export function stockSchema(unit: LengthUnit) {
  const { length, size, sides } = lengthFields(unit);
  const few = { least: 0, most: 200 };
  const longest = 'The longest cut that the trimming head makes; without it every cut can be made';
  const least = 'What is smaller, either way round, is not kept';
  const widest = 'The widest that the stop can be set to; beyond it the cut is marked by rule';
  const narrowest = 'The narrowest that the stop can be set to; below it the cut is marked by rule';
  const credit = 'What a kept offcut is worth, in percent of its part of the sheet’s price';
  const margin = 'Comes off each side of what drops out of an opening, beside its bevel, before it is stock';
  const stock = record(
    {
      trim: z.optional(sides('Comes off each edge of a new sheet before anything else', ['1/4 in'], few)),
      kerf: z.optional(length('Width of a cut: 0 for a knife', [0, '3 mm'], { least: 0, most: 20 })),
      leastOffcut: z.optional(size(least, ['5 x 7 in'], { least: 10 })),
      longestCut: z.optional(length(longest, ['40 in'], { least: 100 })),
      longestStop: z.optional(length(widest, ['48 in'], { least: 50 })),
      shortestStop: z.optional(length(narrowest, ['1/2 in'], { least: 0, most: 500 })),
      factoryEdge: z.optional(yesNo('True where every blank must have an edge of its sheet, untrimmed')),
      falloutMargin: z.optional(length(margin, ['1/8 in'], { least: 0, most: 100 })),
      backing: z.optional(
        id('A board of this file: each piece gets another blank of it, behind the artwork', ['bone-4']),
      ),
      first: z.optional(oneOf('Of boards with prices: the least cost, or the fewest sheets', ['cost', 'sheets'])),
      offcutCredit: z.optional(number(credit, [50], 0, 100, 'a percentage from 0 to 100')),
    },
    'a map: trim, kerf, leastOffcut, longestCut, longestStop, shortestStop, factoryEdge, falloutMargin, backing, first, offcutCredit',
  );
  return described(stock, 'How sheets of board are broken down', [{ trim: '1/4 in', longestCut: '40 in' }]);
}

/** Sheets are taken as they come and cut with a knife; what would hold no mat of a usual size is waste (common practice, no source). */
const usualStock = (units: Units) => ({
  trim: allSides(0),
  kerf: 0,
  leastOffcut: { width: either(units, 5, 130), height: either(units, 7, 180) },
  factoryEdge: false,
  falloutMargin: either(units, 1 / 8, 3),
  first: 'cost' as const,
  offcutCredit: 0,
});

/** `known`: what sheets are listed for, boards and backings. */
export function shelfFrom(
  given: z.output<ReturnType<typeof shelfSchema>>,
  known: ReadonlyMap<string, unknown>,
  problems: Problem[],
): readonly ShelfOffcut[] {
  const seen = new Set<string>();
  return given.map(({ id, board, size, note }, i) => {
    lookUp('board', board, known, ['shelf', i, 'board'], problems);
    if (seen.has(id)) {
      const message = `two offcuts on the shelf are called ${word(id)}`;
      problems.push(error('shelf-id-twice', ['shelf', i, 'id'], message, 'write another mark on one of them'));
    }
    seen.add(id);
    return { id, board, ...size, ...defined({ note }) };
  });
}

export function stockFrom(
  given: z.output<ReturnType<typeof stockSchema>>,
  boards: ReadonlyMap<string, unknown>,
  units: Units,
  problems: Problem[],
): StockSettings {
  const usual = usualStock(units);
  lookUp('board', given.backing, boards, ['stock', 'backing'], problems);
  return {
    trim: { ...usual.trim, ...given.trim },
    kerf: given.kerf ?? usual.kerf,
    leastOffcut: given.leastOffcut ?? usual.leastOffcut,
    factoryEdge: given.factoryEdge ?? usual.factoryEdge,
    falloutMargin: given.falloutMargin ?? usual.falloutMargin,
    first: given.first ?? usual.first,
    offcutCredit: (given.offcutCredit ?? usual.offcutCredit) / 100,
    ...defined({
      longestStop: given.longestStop,
      shortestStop: given.shortestStop,
      longestCut: given.longestCut,
      backing: given.backing,
    }),
  };
}
