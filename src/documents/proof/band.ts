import type { Item } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import type { PriceLine, PriceList } from '../../stock/prices.ts';
import { rule, SMALL } from '../../text/type-scale.ts';
import type { ProofGroup, Variant } from './model.ts';
import { LINE, materialRows, priceRows, scaleBar, signLine, sizeRow, tickBox } from './parts.ts';
import { type Material, materials, type NamedSize, namedSizes } from './words.ts';

/** The stretch of a sheet that columns share. */
export interface Column {
  readonly x: number;
  readonly width: number;
}

export interface BandRequest {
  /** Those on this sheet, and all of the proof: what is alike in all is said once. */
  readonly variants: readonly Variant[];
  readonly all: readonly Variant[];
  /** The number of the sheet's first variant, from 0. */
  readonly first: number;
  readonly whole: Column;
  /** One for each variant that a sheet has room for. */
  readonly columns: readonly Column[];
  readonly gutter: number;
  readonly scale: number;
  readonly fonts: Fonts;
  /** Size of the lists: 1, or less where there is too much in them. */
  readonly share: number;
}

export interface Band {
  readonly groups: ReadonlyMap<ProofGroup, readonly Item[]>;
  readonly height: number;
}

/** Room at the right of the sizes for the scale. */
const BAR_WIDTH = 52;

/** Everything that is said of the piece, under a rule at `top`. */
export function band(request: BandRequest, top: number): Band {
  const { variants, all, whole, gutter, scale, fonts } = request;
  const { job } = variants[0]!;
  const groups = new Map<ProofGroup, Item[]>();
  const add: Add = (group, items) => {
    groups.set(group, [...(groups.get(group) ?? []), ...items]);
  };
  const end = whole.x + whole.width;
  add('sizes', [rule('rule', whole.x, end, top)]);
  const alike =
    all.length === 1 ? [] : alikeIn(all.map(materialsOf)).map(({ part, what }) => ({ of: part, size: what }));
  const pairs = [...alikeIn(all.map(sizesOf)), ...alike];
  const sizes = sizeRow(pairs, whole.x, top + 6, whole.width - BAR_WIDTH, fonts);
  add('sizes', [...sizes.items, ...scaleBar(scale, job.units, end, top + 7.6).items]);
  const below = Math.max(sizes.bottom, top + 11.5) + 2.9 * LINE;
  const bottom = all.length === 1 ? single(request, below, add) : several(request, below, add);
  const y = bottom + 4.3 * LINE;
  const half = (whole.width - gutter) / 2;
  add('approval', [
    ...signLine('Approved as drawn: signature', whole.x, y, half),
    ...signLine('Date', whole.x + half + gutter, y, half),
  ]);
  return { groups, height: y + 2.4 * SMALL.size - top };
}

type Add = (group: ProofGroup, items: readonly Item[]) => void;

const materialsOf = ({ mat, job }: Variant): readonly Material[] => materials(mat, job);
const sizesOf = ({ mat, job }: Variant): readonly NamedSize[] => namedSizes(mat, job);

const key = (entry: object): string => JSON.stringify(entry);

/** The entries of the first list that all others have too, and those of one list that not all have. */
const alikeIn = <T extends object>(lists: readonly (readonly T[])[]): readonly T[] =>
  lists[0]!.filter((entry) => lists.every((list) => list.some((other) => key(other) === key(entry))));
const ownOf = <T extends object>(list: readonly T[], lists: readonly (readonly T[])[]): readonly T[] => {
  const alike = new Set(alikeIn(lists).map(key));
  return list.filter((entry) => !alike.has(key(entry)));
};

/** Materials on the left, prices on the right. */
function single({ variants, whole, gutter, ...style }: BandRequest, y: number, add: Add): number {
  const variant = variants[0]!;
  const half = (whole.width - gutter) / 2;
  const wide = variant.prices === undefined ? whole.width : half;
  const material = materialRows(materialsOf(variant), whole.x, y, wide, style);
  add('materials', material.items);
  if (variant.prices === undefined) return material.bottom;
  const price = priceRows(variant.prices, whole.x + half + gutter, y, half, style);
  add('prices', price.items);
  return Math.max(material.bottom, price.bottom);
}

/** A column for each: its letter to tick, what it alone is made of, what it costs. */
function several({ variants, all, first, columns, ...style }: BandRequest, y: number, add: Add): number {
  const { fonts } = style;
  const bottoms = variants.map((variant, i) => {
    const { x, width } = columns[i]!;
    const caption = tickBox(letter(first + i), variant.label ?? '', x, y, width, fonts);
    add('materials', caption.items);
    let at = caption.bottom;
    const own = ownOf(materialsOf(variant), all.map(materialsOf));
    if (own.length > 0) {
      const rows = materialRows(own, x, at + 1.7 * LINE, width, style);
      add('materials', rows.items);
      at = rows.bottom;
    }
    const sizes = ownOf(sizesOf(variant), all.map(sizesOf));
    if (sizes.length > 0) {
      const row = sizeRow(sizes, x, at + 1.7 * LINE, width, fonts);
      add('sizes', row.items);
      at = row.bottom;
    }
    const { prices } = variant;
    if (prices === undefined) return at;
    const lists = all.flatMap((each) => (each.prices === undefined ? [] : [each.prices.lines]));
    const price = priceRows(gathered(prices, lists), x, at + 1.8 * LINE, width, style);
    add('prices', price.items);
    return price.bottom;
  });
  return Math.max(...bottoms);
}

/** What costs the same in all of them, in one line behind the others. */
function gathered(list: PriceList, lists: readonly (readonly PriceLine[])[]): PriceList {
  const alike = alikeIn(lists);
  if (alike.length < 2) return list;
  const sum = alike.reduce((total, { amount }) => total + amount, 0);
  return { ...list, lines: [...ownOf(list.lines, lists), { what: 'Everything else, alike in all', amount: sum }] };
}

const letter = (i: number): string => String.fromCharCode(65 + i);
