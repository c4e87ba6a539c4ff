import * as z from 'zod/mini';
import { described, line, named, needed, number, oneOf, record } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import { LENGTH_UNITS, type LengthUnit } from '../units/units.ts';
import { boardSchema } from './board-schema.ts';
import { backingSchema, mouldingSchema, packagePart, readyFrameSchema } from './frame-schema.ts';
import { headSchema } from './head-schema.ts';
import { machineSchema } from './machine-schema.ts';
import { pricesSchema } from './prices-schema.ts';
import { calibrationsSchema } from './readings-schema.ts';
import { shelfSchema, stockSchema } from './stock-schema.ts';

const BONE = { thickness: '1.4 mm', colour: '#efe9dc', sheets: ['32 x 40 in'], price: 9.5 };
const PULL = { bevel: 45, opening: 'left', straightedge: 0, start: '1.2 mm', stop: '-0.4 mm', overrun: '0.25 mm' };
const LASER = { kind: 'laser', bed: '600 x 400 mm', kerf: '0.2 mm' };
const ASH = { lip: '1/4 in', depth: '5/8 in' };

/** The whole shop, bare numbers being in `unit`. A new section is one line here and one in `shop.ts`. */
export function shopSchema(unit: LengthUnit) {
  const office = { office: { x: 0.9965, y: 0.998 } };
  const ready = { 'ash-16x20': { nominal: '16 x 20 in', moulding: 'ash' } };
  const likes = () => z.array(lengthFields(unit).size('An outer size', ['16 x 20'], { least: 25 }), 'a list of sizes');
  // Many keys, and few shops have all of them: made when there is one.
  const machines = z.lazy(() => machineSchema(unit));
  const calibrations = z.lazy(() => calibrationsSchema(unit));
  const printers = z.lazy(() => printerSchema(unit));
  const papers = z.lazy(() => paperSchema(unit));
  const mouldings = z.lazy(() => mouldingSchema(unit));
  const frames = z.lazy(() => readyFrameSchema(unit));
  const glazing = z.lazy(() => packagePart(unit, 'a map: thickness, name'));
  const backing = z.lazy(() => backingSchema(unit));
  const prices = z.lazy(pricesSchema);
  const shelf = z.lazy(() => shelfSchema(unit));
  const stock = z.lazy(() => stockSchema(unit));
  const sizes = z.lazy(likes);
  const shop = record(
    {
      units: z.optional(oneOf('The unit of bare numbers in this file; in without it', LENGTH_UNITS)),
      boards: z.optional(named('The boards that are cut', { 'bone-4': BONE }, boardSchema(unit))),
      heads: z.optional(named('The cutting heads', { 'pull-45': PULL }, headSchema(unit))),
      guide: z.optional(guideSchema(unit)),
      machines: z.optional(named('The cutting machines', { laser: LASER }, machines)),
      printers: z.optional(named('The printers and what their check line measured', office, printers)),
      papers: z.optional(named('Papers of the shop’s own', { banner: { size: '13 x 40 in' } }, papers)),
      mouldings: z.optional(named('Mouldings for frames of any size', { ash: ASH }, mouldings)),
      frames: z.optional(named('Ready-made frames', ready, frames)),
      glazing: z.optional(named('Glazing', { clear: { name: 'Clear glass', thickness: '2 mm' } }, glazing)),
      backing: z.optional(named('Backing', { foam: { name: 'Foam board', thickness: '5 mm' } }, backing)),
      calibrations: z.optional(calibrations),
      prices: z.optional(prices),
      shelf: z.optional(shelf),
      stock: z.optional(stock),
      sizes: z.optional(described(sizes, 'Outer sizes that the shop likes to use', [['11 x 14', '16 x 20']])),
    },
    'a map of keys: boards, heads, guide, printers …',
  );
  return described(shop, 'The shop: its boards, tools, printers and frames');
}

/** A shop as the schema leaves it: lengths in mm, nothing filled in. */
export type ShopInput = z.output<ReturnType<typeof shopSchema>>;

/** A guide or a printer that is further off than this is broken, or was measured wrong. */
const nearOne = (about: string, example: number) => number(about, [example], 0.8, 1.25, 'a number near 1');

function guideSchema(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const law = 'True setting = a + b x reading';
  const setAt = 'Thickness of the board it was set at; left out where the bar keeps its height';
  const guide = record(
    {
      graduation: z.optional(length('The finest division of its scale', ['1/16 in'], { least: 0.05, most: 26 })),
      longest: z.optional(length('The longest distance that it can be set to', ['12 in'], { least: 10 })),
      setAt: z.optional(length(setAt, ['1.4 mm'], { least: 0.1, most: 25 })),
      a: z.optional(length(law, [0, '0.3 mm'], { least: -50, most: 50 })),
      b: z.optional(nearOne(law, 1)),
      date: z.optional(line('The day that it was calibrated', ['2026-03-01'])),
    },
    'a map: graduation, longest, setAt, a, b',
  );
  return described(guide, 'The guide that sets the border', [
    { graduation: '1/16 in', longest: '12 in', setAt: '1.4 mm' },
  ]);
}

function printerSchema(unit: LengthUnit) {
  const { sides } = lengthFields(unit);
  const printer = record(
    {
      x: z.optional(nearOne('Measured over nominal length, across the page', 0.9965)),
      y: z.optional(nearOne('Measured over nominal length, along the page', 0.998)),
      date: z.optional(line('The day that it was measured', ['2026-03-01'])),
      margin: z.optional(sides('Edge that it cannot print on', ['1/6 in'], { least: 0, most: 100 })),
    },
    'a map: x, y, margin',
  );
  return described(printer, 'A printer');
}

function paperSchema(unit: LengthUnit) {
  const { size } = lengthFields(unit);
  const shape = { size: needed(size('Width x height', ['13 x 40 in'], { least: 50 })) };
  return described(record(shape, 'a map: size'), 'A paper');
}
