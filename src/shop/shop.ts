import * as z from 'zod/mini';
import type { Size } from '../geometry/point.ts';
import { defined } from '../problems/defined.ts';
import type { Problem } from '../problems/problem.ts';
import { described, named, needed, oneOf, part, record } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import { LENGTH_UNITS, type LengthUnit, type Units } from '../units/units.ts';
import { type Board, boardFrom, boardSchema } from './board.ts';
import {
  backingFrom,
  backingSchema,
  type Moulding,
  mouldingFrom,
  mouldingSchema,
  type PackagePart,
  packagePart,
  partFrom,
  type ReadyFrame,
  readyFrameFrom,
  readyFrameSchema,
} from './frame.ts';
import { type Guide, guideFrom, guideSchema } from './guide.ts';
import { type Head, headFrom, headSchema } from './head.ts';
import { type Letterhead, letterheadFrom, letterheadSchema } from './letterhead.ts';
import { type Machine, machineFrom, machineSchema } from './machine.ts';
import { makeSchema, type OfAJob } from './make-list.ts';
import { type Prices, pricesFrom, pricesSchema } from './prices.ts';
import { type Printer, printerFrom, printerSchema } from './printer.ts';
import { calibrationsSchema } from './readings/readings.ts';
import { type ShelfOffcut, type StockSettings, shelfFrom, shelfSchema, stockFrom, stockSchema } from './stock.ts';
import { UNITS } from './units.ts';

/** A checked shop; the names are those that jobs use. Lengths are mm. */
export interface Shop {
  readonly units: Units;
  /** What it puts on the papers that customers see. */
  readonly letterhead?: Letterhead;
  readonly boards: ReadonlyMap<string, Board>;
  readonly heads: ReadonlyMap<string, Head>;
  readonly machines: ReadonlyMap<string, Machine>;
  /** Undefined where the shop says nothing of it: its default follows the job's units. */
  readonly guide?: Guide;
  readonly printers: ReadonlyMap<string, Printer>;
  readonly papers: ReadonlyMap<string, Size>;
  readonly mouldings: ReadonlyMap<string, Moulding>;
  readonly frames: ReadonlyMap<string, ReadyFrame>;
  readonly glazing: ReadonlyMap<string, PackagePart>;
  readonly backing: ReadonlyMap<string, PackagePart>;
  /** Outer sizes that the shop likes to use, as they are listed. */
  readonly sizes: readonly Size[];
  readonly prices?: Prices;
  /** What is made of a job that does not say it. */
  readonly make?: readonly OfAJob[];
  /** Offcuts that lie on the shelf, as they are listed. */
  readonly shelf: readonly ShelfOffcut[];
  readonly stock: StockSettings;
}

const BONE = { thickness: '1.4 mm', colour: '#efe9dc', sheets: ['32 x 40 in'], price: 9.5 };
const PULL = { bevel: 45, opening: 'left', straightedge: 0, start: '1.2 mm', stop: '-0.4 mm', overrun: '0.25 mm' };
const LASER = { kind: 'laser', bed: '600 x 400 mm', kerf: '0.2 mm' };
const ASH = { lip: '1/4 in', depth: '5/8 in' };

/** The whole shop, bare numbers being in `unit`. A new section is one line here, one above and one in `shopFrom`. */
export function shopSchema(unit: LengthUnit) {
  const office = { office: { x: 0.9965, y: 0.998 } };
  const ready = { 'ash-16x20': { nominal: '16 x 20 in', moulding: 'ash' } };
  // Many keys, and few shops have all of them.
  const shop = record(
    {
      units: z.optional(oneOf('The unit of bare numbers in this file; in without it', LENGTH_UNITS)),
      shop: part(letterheadSchema),
      boards: part(() => named('The boards that are cut', { 'bone-4': BONE }, boardSchema(unit))),
      heads: part(() => named('The cutting heads', { 'pull-45': PULL }, headSchema(unit))),
      guide: part(() => guideSchema(unit)),
      machines: part(() => named('The cutting machines', { laser: LASER }, machineSchema(unit))),
      printers: part(() => named('The printers and what their check line measured', office, printerSchema(unit))),
      papers: part(() => named('Papers of the shop’s own', { banner: { size: '13 x 40 in' } }, paperSchema(unit))),
      mouldings: part(() => named('Mouldings for frames of any size', { ash: ASH }, mouldingSchema(unit))),
      frames: part(() => named('Ready-made frames', ready, readyFrameSchema(unit))),
      glazing: part(() =>
        named(
          'Glazing',
          { clear: { name: 'Clear glass', thickness: '2 mm' } },
          packagePart(unit, 'a map: thickness, name'),
        ),
      ),
      backing: part(() => named('Backing', { foam: { name: 'Foam board', thickness: '5 mm' } }, backingSchema(unit))),
      calibrations: part(() => calibrationsSchema(unit)),
      prices: part(pricesSchema),
      make: part(makeSchema),
      shelf: part(() => shelfSchema(unit)),
      stock: part(() => stockSchema(unit)),
      sizes: part(() => likedSizes(unit)),
    },
    'a map of keys: boards, heads, guide, printers …',
  );
  return described(shop, 'The shop: its boards, tools, printers and frames');
}

const likedSizes = (unit: LengthUnit) =>
  described(
    z.array(lengthFields(unit).size('An outer size', ['16 x 20'], { least: 25 }), 'a list of sizes'),
    'Outer sizes that the shop likes to use',
    [['11 x 14', '16 x 20']],
  );

/** A shop as the schema leaves it: lengths in mm, nothing filled in. */
type ShopInput = z.output<ReturnType<typeof shopSchema>>;

function paperSchema(unit: LengthUnit) {
  const { size } = lengthFields(unit);
  const shape = { size: needed(size('Width x height', ['13 x 40 in'], { least: 50 })) };
  return described(record(shape, 'a map: size'), 'A paper');
}

/** The shop with every default filled in. Where problems hold an error, it is not to be used. */
export function shopFrom(
  input: ShopInput,
  units: Units,
): { readonly shop: Shop; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const mouldings = mapped(input.mouldings, mouldingFrom);
  const boards = mapped(input.boards, boardFrom);
  const backing = mapped(input.backing, backingFrom);
  const shop: Shop = {
    units,
    boards,
    heads: mapped(input.heads, (id, given) => headFrom(id, given, problems)),
    machines: mapped(input.machines, (id, given) => machineFrom(id, given, problems)),
    printers: mapped(input.printers, (id, given) => printerFrom(id, given, problems)),
    papers: mapped(input.papers, (_, paper) => paper.size),
    mouldings,
    frames: mapped(input.frames, (id, given) => readyFrameFrom(id, given, mouldings, problems)),
    glazing: mapped(input.glazing, partFrom),
    backing,
    sizes: input.sizes ?? [],
    shelf: shelfFrom(input.shelf ?? [], new Map<string, unknown>([...backing, ...boards]), problems),
    stock: stockFrom(input.stock ?? {}, boards, units, problems),
    ...defined({
      letterhead: input.shop && letterheadFrom(input.shop),
      guide: input.guide && guideFrom(input.guide, units),
      prices: input.prices && pricesFrom(input.prices),
      make: input.make,
    }),
  };
  return { shop, problems };
}

/** Of a job that has none. */
export const NO_SHOP: Shop = shopFrom({}, UNITS).shop;

function mapped<I, T>(
  input: Readonly<Record<string, I>> | undefined,
  from: (id: string, given: I) => T,
): ReadonlyMap<string, T> {
  return new Map(Object.entries(input ?? {}).map(([id, given]) => [id, from(id, given)]));
}
