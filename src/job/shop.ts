import type { Problem } from '../problems/problem.ts';
import * as defaults from './defaults.ts';
import { defined } from './defined.ts';
import { problemsOf } from './issues.ts';
import type { Board, BySide, Guide, Head, Printer, Shop, SomeSides, Units } from './model.ts';
import { plain, type Source } from './node.ts';
import { type ShopInput, shopSchema } from './shop-schema.ts';
import { unitsOf } from './units-of.ts';

/** Of a job without a shop. */
export const NO_SHOP: Shop = {
  units: defaults.UNITS,
  boards: new Map(),
  heads: new Map(),
  printers: new Map(),
  papers: new Map(),
};

/** The shop, every default filled in; undefined with its problems. */
export function checkShop(source: Source): { readonly shop?: Shop; readonly problems: readonly Problem[] } {
  const units = unitsOf(source.root);
  const parsed = shopSchema(units).safeParse(plain(source.root), { jitless: true });
  if (!parsed.success) return { problems: problemsOf(parsed.error.issues, source) };
  return { shop: shopFrom(parsed.data, units), problems: [] };
}

function shopFrom(input: ShopInput, units: Units): Shop {
  return {
    units,
    boards: mapped(input.boards, boardFrom),
    heads: mapped(input.heads, headFrom),
    ...(input.guide === undefined ? {} : { guide: guideFrom(input.guide, units) }),
    printers: mapped(input.printers, printerFrom),
    papers: mapped(input.papers, (_, paper) => paper.size),
  };
}

function mapped<I, T>(
  input: Readonly<Record<string, I>> | undefined,
  from: (id: string, given: I) => T,
): ReadonlyMap<string, T> {
  return new Map(Object.entries(input ?? {}).map(([id, given]) => [id, from(id, given)]));
}

type Given<K extends keyof ShopInput> = NonNullable<ShopInput[K]> extends Record<string, infer I> ? I : never;

export function boardFrom(id: string, given: Given<'boards'>): Board {
  return {
    id,
    name: given.name ?? id,
    thickness: given.thickness ?? defaults.BOARD_THICKNESS,
    colour: given.colour ?? defaults.BOARD_COLOUR,
    core: given.core ?? defaults.BOARD_CORE,
    sheets: given.sheets ?? [],
    directional: given.directional ?? false,
    ...defined({ plies: given.plies, price: given.price }),
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
    start: given.start?.map((at) => defined(at)) ?? HEAD.start,
    stop: given.stop?.map((at) => defined(at)) ?? HEAD.stop,
    overrun: given.overrun ?? HEAD.overrun,
    calibrated: given.start !== undefined && given.stop !== undefined,
    ...defined({ scribe: given.scribe, bar: given.bar, blade: given.blade, depth: given.depth, date: given.date }),
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

/** The sides that were given, and the usual ones for the others. */
export function everySide(given: SomeSides | undefined, usual: BySide<number>): BySide<number> {
  return { ...usual, ...given };
}
