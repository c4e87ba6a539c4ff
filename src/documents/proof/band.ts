import type { PriceLine, PriceList } from '../../stock/prices.ts';
import { type Block, inGroup, joined, padded, stacked } from '../../text/block.ts';
import { rule } from '../../text/figures.ts';
import type { ProofGroup, Variant } from './model.ts';
import { type ListStyle, materialRows, priceRows, signLine, sizeRow, tickBox } from './parts.ts';
import { scaleBar } from './scale-bar.ts';
import { type Material, materials, type NamedSize, namedSizes } from './words.ts';

/** The stretch of a sheet that a variant has. */
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
  readonly width: number;
  /** One for each variant that a sheet has room for, from the left edge of the band. */
  readonly columns: readonly Column[];
  readonly gutter: number;
  readonly scale: number;
  readonly style: ListStyle;
}

/** Room at the right of the sizes for the scale. */
const BAR_WIDTH = 52;

const inPart = (block: Block, group: ProofGroup): Block => inGroup(block, group);

/** Everything that is said of the piece, under a rule. */
export function band(request: BandRequest): Block {
  const { variants, all, width, gutter, scale, style } = request;
  const { fonts } = style;
  const { job } = variants[0]!;
  const line: Block = { items: [rule('rule', 0, width, 0)], width, height: 0 };
  const alike =
    all.length === 1 ? [] : alikeIn(all.map(materialsOf)).map(({ part, what }) => ({ of: part, size: what }));
  const sizes = sizeRow([...alikeIn(all.map(sizesOf)), ...alike], width - BAR_WIDTH, fonts);
  const bar = scaleBar(scale, job.units, BAR_WIDTH, fonts);
  const named = joined({ width, height: Math.max(sizes.height, bar.height) }, [
    [sizes, { x: 0, y: 0 }],
    [bar, { x: width - BAR_WIDTH, y: 0 }],
  ]);
  const half = (width - gutter) / 2;
  const [signature, date] = ['Approved as drawn: signature', 'Date'].map((word) => signLine(word, half, fonts));
  const signed = joined({ width, height: signature!.height }, [
    [signature!, { x: 0, y: 0 }],
    [date!, { x: half + gutter, y: 0 }],
  ]);
  return stacked(
    [
      stacked([inPart(line, 'sizes'), inPart(named, 'sizes')], 4),
      all.length === 1 ? single(request) : several(request),
      padded(inPart(signed, 'approval'), 6),
    ],
    6.5,
  );
}

const materialsOf = ({ mat, job }: Variant): readonly Material[] => materials(mat, job);
const sizesOf = ({ mat, job }: Variant): readonly NamedSize[] => namedSizes(mat, job);

const key = (entry: object): string => JSON.stringify(entry);

/** The entries of the first list that all others have too, and those of one list that not all have. */
function alikeIn<T extends object>(lists: readonly (readonly T[])[]): readonly T[] {
  const [first = [], ...others] = lists;
  const known = others.map((list) => new Set(list.map(key)));
  return first.filter((entry) => known.every((keys) => keys.has(key(entry))));
}

const ownOf = <T extends object>(list: readonly T[], lists: readonly (readonly T[])[]): readonly T[] => {
  const alike = new Set(alikeIn(lists).map(key));
  return list.filter((entry) => !alike.has(key(entry)));
};

/** Materials on the left, prices on the right. */
function single({ variants, width, gutter, style }: BandRequest): Block {
  const variant = variants[0]!;
  const half = (width - gutter) / 2;
  const { prices } = variant;
  const material = inPart(materialRows(materialsOf(variant), prices === undefined ? width : half, style), 'materials');
  if (prices === undefined) return material;
  const price = inPart(priceRows(prices, half, style), 'prices');
  return joined({ width, height: Math.max(material.height, price.height) }, [
    [material, { x: 0, y: 0 }],
    [price, { x: half + gutter, y: 0 }],
  ]);
}

/** A column for each: its letter to tick, what it alone is made of, what it costs. */
function several({ variants, all, first, width, columns, style }: BandRequest): Block {
  const { fonts } = style;
  const made = variants.map((variant, i) => {
    const { width: wide } = columns[i]!;
    const materials = ownOf(materialsOf(variant), all.map(materialsOf));
    const sizes = ownOf(sizesOf(variant), all.map(sizesOf));
    const { prices } = variant;
    const lists = all.flatMap((each) => (each.prices === undefined ? [] : [each.prices.lines]));
    return stacked(
      [
        inPart(tickBox(letter(first + i), variant.label ?? '', wide, fonts), 'materials'),
        ...(materials.length === 0 ? [] : [inPart(materialRows(materials, wide, style), 'materials')]),
        ...(sizes.length === 0 ? [] : [inPart(sizeRow(sizes, wide, fonts), 'sizes')]),
        ...(prices === undefined ? [] : [inPart(priceRows(gathered(prices, lists), wide, style), 'prices')]),
      ],
      3.6,
    );
  });
  const height = Math.max(...made.map((block) => block.height));
  return joined(
    { width, height },
    made.map((block, i) => [block, { x: columns[i]!.x, y: 0 }] as const),
  );
}

/** What costs the same in all of them, in one line behind the others. */
function gathered(list: PriceList, lists: readonly (readonly PriceLine[])[]): PriceList {
  const alike = alikeIn(lists);
  if (alike.length < 2) return list;
  const sum = alike.reduce((total, { amount }) => total + amount, 0);
  return { ...list, lines: [...ownOf(list.lines, lists), { what: 'Everything else, alike in all', amount: sum }] };
}

/** What a way to make the piece is called, on its drawing and beside its square. */
export const letter = (i: number): string => String.fromCharCode(65 + i);
