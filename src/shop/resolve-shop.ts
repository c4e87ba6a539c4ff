import type { BySide, SomeSides } from '../geometry/sides.ts';
import type { Problem } from '../problems/problem.ts';
import { defined } from '../read/fields/defined.ts';
import { lookUp } from '../read/fields/look-up.ts';
import type { Units } from '../units/units.ts';
import type { Board } from './board.ts';
import * as defaults from './defaults.ts';
import type { Moulding, PackagePart, ReadyFrame } from './frame.ts';
import type { Guide } from './guide.ts';
import type { Head } from './head.ts';
import type { Printer } from './printer.ts';
import { machineFrom } from './resolve-machine.ts';
import { boardPrice, pricesFrom } from './resolve-prices.ts';
import { sheetFrom, shelfFrom, stockFrom } from './resolve-stock.ts';
import type { Shop } from './shop.ts';
import type { ShopInput } from './shop-schema.ts';

/** The shop with every default filled in. Where problems hold an error, it is not to be used. */
export function shopFrom(
  input: ShopInput,
  units: Units,
): { readonly shop: Shop; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const mouldings = mapped(input.mouldings, mouldingFrom);
  const shop: Shop = {
    units,
    boards: mapped(input.boards, boardFrom),
    heads: mapped(input.heads, headFrom),
    machines: mapped(input.machines, (id, given) => machineFrom(id, given, problems)),
    printers: mapped(input.printers, printerFrom),
    papers: mapped(input.papers, (_, paper) => paper.size),
    mouldings,
    frames: mapped(input.frames, (id, given) => readyFrameFrom(id, given, mouldings, problems)),
    glazing: mapped(input.glazing, partFrom),
    backing: mapped(input.backing, backingFrom),
    sizes: input.sizes ?? [],
    shelf: shelfFrom(input, problems),
    stock: stockFrom(input, units, problems),
    ...(input.guide === undefined ? {} : { guide: guideFrom(input.guide, units) }),
    ...(input.prices === undefined ? {} : { prices: pricesFrom(input.prices) }),
  };
  return { shop, problems };
}

/** Of a job that has none. */
export const NO_SHOP: Shop = shopFrom({}, defaults.UNITS).shop;

function mapped<I, T>(
  input: Readonly<Record<string, I>> | undefined,
  from: (id: string, given: I) => T,
): ReadonlyMap<string, T> {
  return new Map(Object.entries(input ?? {}).map(([id, given]) => [id, from(id, given)]));
}

type Given<K extends keyof ShopInput> = NonNullable<ShopInput[K]> extends Record<string, infer I> ? I : never;

function boardFrom(id: string, given: Given<'boards'>): Board {
  return {
    id,
    name: given.name ?? id,
    thickness: given.thickness ?? defaults.BOARD_THICKNESS,
    colour: given.colour ?? defaults.BOARD_COLOUR,
    core: given.core ?? defaults.BOARD_CORE,
    sheets: (given.sheets ?? []).map(sheetFrom),
    directional: given.directional ?? false,
    ...boardPrice(given.price),
    ...defined({ plies: given.plies }),
  };
}

function headFrom(id: string, given: Given<'heads'>): Head {
  const { HEAD } = defaults;
  return {
    id,
    bevel: given.bevel ?? HEAD.bevel,
    opening: given.opening ?? HEAD.opening,
    straightedge: given.straightedge ?? HEAD.straightedge,
    straightedgeOn: given.straightedgeOn ?? HEAD.straightedgeOn,
    start: given.start ?? HEAD.start,
    stop: given.stop ?? HEAD.stop,
    overrun: given.overrun ?? defaults.overrun(given.spread),
    calibrated: given.start !== undefined && given.stop !== undefined,
    ...defined({
      spread: given.spread,
      scribe: given.scribe,
      bar: given.bar,
      blade: given.blade,
      depth: given.depth,
      date: given.date,
    }),
  };
}

function guideFrom(given: NonNullable<ShopInput['guide']>, units: Units): Guide {
  const usual = defaults.guide(units);
  return {
    graduation: given.graduation ?? usual.graduation,
    a: given.a ?? usual.a,
    b: given.b ?? usual.b,
    ...defined({ longest: given.longest, setAt: given.setAt }),
  };
}

function printerFrom(id: string, given: Given<'printers'>): Printer {
  const usual = defaults.printer(id);
  return { id, x: given.x ?? usual.x, y: given.y ?? usual.y, margin: everySide(given.margin, usual.margin) };
}

function mouldingFrom(id: string, given: Given<'mouldings'>): Moulding {
  return {
    id,
    name: given.name ?? id,
    lip: given.lip ?? defaults.LIP,
    ...defined({ clearance: given.clearance, depth: given.depth }),
    ...defined({ width: given.width, colour: given.colour, price: given.price }),
  };
}

/** What the frame does not say itself, its moulding does. */
function readyFrameFrom(
  id: string,
  given: Given<'frames'>,
  mouldings: ReadonlyMap<string, Moulding>,
  problems: Problem[],
): ReadyFrame {
  const moulding = lookUp('moulding', given.moulding, mouldings, ['frames', id, 'moulding'], problems);
  return {
    id,
    name: given.name ?? id,
    lip: given.lip ?? moulding?.lip ?? defaults.LIP,
    ...defined({
      inside: given.inside,
      nominal: given.nominal,
      clearance: given.clearance ?? moulding?.clearance,
      depth: given.depth ?? moulding?.depth,
      width: given.width ?? moulding?.width,
      colour: given.colour ?? moulding?.colour,
      price: given.price ?? moulding?.price,
    }),
  };
}

function partFrom(id: string, given: Given<'glazing'>): PackagePart {
  return { id, name: given.name ?? id, thickness: given.thickness, ...defined({ price: given.price }) };
}

function backingFrom(id: string, { sheets, ...given }: Given<'backing'>): PackagePart {
  return { ...partFrom(id, given), ...(sheets === undefined ? {} : { sheets: sheets.map(sheetFrom) }) };
}

/** The sides that were given, and the usual ones for the others. */
export function everySide(given: SomeSides | undefined, usual: BySide<number>): BySide<number> {
  return { ...usual, ...given };
}
