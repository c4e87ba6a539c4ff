import type { Item } from '../drawing/model.ts';
import { type Point, point, type Size } from '../geometry/point.ts';
import { dimensionItems, dimensions, roomFor } from './proof-dimensions.ts';
import type { ProofGroup, ProofOptions, Variant } from './proof-model.ts';
import { LINE, materialRows, type Part, priceRows, scaleBar, signLine, sizeRow, tickBox } from './proof-parts.ts';
import { type PlacedPicture, pieceBox, pieceItems } from './proof-piece.ts';
import { COLOURS, materials, namedSizes, placeholderWords } from './proof-words.ts';
import { capHeight, fitted, headline, LEAD, paragraph, rule, SIZE, SMALL, set, TITLE, widthOf } from './type-scale.ts';

/** The items of a sheet by the group that they belong to. */
export type SheetItems = ReadonlyMap<ProofGroup, readonly Item[]>;

/** What a sheet asks while it is made. */
export interface Asked {
  /** The number of its first variant, from 0. */
  readonly first: number;
  readonly picture: (variant: Variant, opening: number) => PlacedPicture | undefined;
}

export interface ChosenSheet {
  readonly paper: Size;
  readonly scale: number;
  readonly make: (variants: readonly Variant[], asked: Asked) => SheetItems;
}

/** Scales that people can reckon with, as 1 : so much. */
const SCALES = [
  1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 25, 30, 40, 50, 60, 80, 100, 150, 200,
];

/** An upright sheet is what a customer expects: the other way has to show the piece so much larger. */
const WORTH_TURNING = 1.2;

/** Upright or lying, whichever shows the piece larger; every sheet of a proof is alike. */
export function bestSheet(variants: readonly Variant[], options: ProofOptions, perSheet: number): ChosenSheet {
  const [short, long] = [
    Math.min(options.paper.width, options.paper.height),
    Math.max(options.paper.width, options.paper.height),
  ];
  const [upright, lying] = [
    { width: short, height: long },
    { width: long, height: short },
  ].map((paper) => {
    const layout = new SheetLayout(paper, variants, options, perSheet);
    return { paper, scale: layout.scale, make: (own: readonly Variant[], asked: Asked) => layout.make(own, asked) };
  }) as [ChosenSheet, ChosenSheet];
  return lying.scale > upright.scale * WORTH_TURNING ? lying : upright;
}

const MARGIN = { side: 17, top: 15, bottom: 11 };
const GUTTER = 10;
/** Between the head, the piece and what is said of it. */
const AIR = 9;

class SheetLayout {
  readonly scale: number;
  readonly #paper: Size;
  readonly #options: ProofOptions;
  readonly #perSheet: number;
  readonly #left: number;
  readonly #right: number;
  readonly #head: Part;
  readonly #foot: Part & { readonly top: number };
  readonly #fieldTop: number;
  readonly #fieldBottom: number;

  constructor(paper: Size, variants: readonly Variant[], options: ProofOptions, perSheet: number) {
    this.#paper = paper;
    this.#options = options;
    this.#perSheet = perSheet;
    const side = Math.min(MARGIN.side, paper.width / 10);
    this.#left = side;
    this.#right = paper.width - side;
    this.#head = this.#headItems(variants[0]!);
    this.#foot = this.#footItems();
    const bands = pagesOf(variants, perSheet).map((own) => this.#band(own, 0, 0, 1).bottom);
    this.#fieldTop = this.#head.bottom + AIR;
    this.#fieldBottom = this.#foot.top - Math.max(...bands) - AIR * 0.9 - 7;
    this.scale = this.#bestScale(variants);
  }

  make(variants: readonly Variant[], asked: Asked): SheetItems {
    const items = new Map<ProofGroup, Item[]>();
    const add = (group: ProofGroup, made: readonly Item[]): void => {
      items.set(group, [...(items.get(group) ?? []), ...made]);
    };
    add('head', this.#head.items);
    variants.forEach((variant, i) => {
      const at = this.#pieceAt(variant, i);
      const place = { at, scale: this.scale };
      const pictures = variant.mat.openings.map((_, k) => asked.picture(variant, k));
      const words = variant.mat.openings.map((opening) => placeholderWords(opening, variant.job.units));
      add('piece', pieceItems(variant.mat, variant.job, place, pictures, words));
      if (this.#options.dimensions) {
        const rows = dimensions(variant.mat, variant.job, this.scale);
        add('dimensions', dimensionItems(variant.mat, variant.job, place, rows));
      }
    });
    const band = this.#band(variants, this.#fieldBottom + AIR * 0.9, asked.first, this.scale);
    for (const [group, made] of band.groups) add(group, made);
    add('foot', this.#foot.items);
    return items;
  }

  #headItems({ job }: Variant): Part {
    const { rare, date } = this.#options;
    const said = date === undefined ? 'Proof' : `Proof, ${date}`;
    const aside = widthOf(said, LEAD, rare) + 12;
    const width = this.#right - this.#left;
    const { style, lines } = headline(job.title, width - Math.min(aside, 0.5 * width), TITLE, rare);
    let y = MARGIN.top + capHeight(style);
    const items: Item[] = lines.map((line, i) => set(line, this.#left, y + i * 1.16 * style.size, style));
    items.push(set(said, this.#right, y, fitted(said, LEAD, 0.5 * width - 12, 0.4, rare), 'end'));
    y += (lines.length - 1) * 1.16 * style.size;
    if (job.customer !== undefined) {
      const customer = paragraph(job.customer, this.#left, y + SIZE.lead * 1.75, width * 0.8, LEAD, rare);
      items.push(...customer.items);
      y = customer.bottom;
    }
    return { items, bottom: y + 0.25 * SIZE.lead };
  }

  #footItems(): Part & { readonly top: number } {
    const width = this.#right - this.#left;
    const lines = paragraph(COLOURS, this.#left, 0, width, SMALL);
    const last = this.#paper.height - MARGIN.bottom;
    const y = last - lines.bottom;
    return { items: paragraph(COLOURS, this.#left, y, width, SMALL).items, bottom: last, top: y - capHeight(SMALL) };
  }

  #column(i: number): { readonly x: number; readonly width: number } {
    const n = this.#perSheet;
    const width = (this.#right - this.#left - (n - 1) * GUTTER) / n;
    return { x: this.#left + i * (width + GUTTER), width };
  }

  #bestScale(variants: readonly Variant[]): number {
    const { width } = this.#column(0);
    const height = this.#fieldBottom - this.#fieldTop;
    const fits = (scale: number): boolean =>
      variants.every(({ mat, job }) => {
        const piece = pieceBox(mat, job);
        const rows = this.#options.dimensions ? dimensions(mat, job, scale) : { across: [], down: [] };
        return (
          piece.width * scale + 2 * roomFor(rows.down) <= width && piece.height * scale + roomFor(rows.across) <= height
        );
      });
    return 1 / (SCALES.find((scale) => fits(1 / scale)) ?? SCALES.at(-1)!);
  }

  /** Top left of the mat: the piece in the middle of its column, a little above the middle of the field. */
  #pieceAt({ mat, job }: Variant, i: number): Point {
    const { x, width } = this.#column(i);
    const piece = pieceBox(mat, job);
    const rows = this.#options.dimensions ? dimensions(mat, job, this.scale) : { across: [], down: [] };
    const free = this.#fieldBottom - this.#fieldTop - piece.height * this.scale - roomFor(rows.across);
    const left = x + (width - piece.width * this.scale) / 2;
    return point(left - piece.x * this.scale, this.#fieldTop + free * 0.46 - piece.y * this.scale);
  }

  /** Everything that is said of the piece, under a rule at `top`. */
  #band(
    variants: readonly Variant[],
    top: number,
    first: number,
    scale: number,
  ): { readonly groups: ReadonlyMap<ProofGroup, readonly Item[]>; readonly bottom: number } {
    const { rare } = this.#options;
    const { job, mat } = variants[0]!;
    const wide = this.#right - this.#left;
    const bar = scaleBar(scale, job.units, this.#right, top + 7.6);
    const barWidth = 52;
    const groups = new Map<ProofGroup, Item[]>();
    const add = (group: ProofGroup, items: readonly Item[]): void => {
      groups.set(group, [...(groups.get(group) ?? []), ...items]);
    };
    add('sizes', [rule('rule', this.#left, this.#right, top)]);
    const sizes = sizeRow(namedSizes(mat, job), this.#left, top + 6, wide - barWidth, rare);
    add('sizes', [...sizes.items, ...bar.items]);
    let y = Math.max(sizes.bottom, top + 11.5) + 2.5 * LINE;
    if (this.#perSheet === 1) {
      const left = { x: this.#left, width: wide * 0.5 };
      const rest = this.#left + wide * 0.5 + GUTTER;
      const material = materialRows(materials(mat, job), left.x, y, left.width, rare);
      add('materials', material.items);
      const prices = variants[0]!.prices;
      const right_ = { x: rest, width: this.#right - rest };
      const price = prices === undefined ? undefined : priceRows(prices, right_.x, y, right_.width, rare);
      if (price !== undefined) add('prices', price.items);
      y = Math.max(material.bottom, price?.bottom ?? y);
    } else {
      const columns = variants.map((variant, i) => {
        const { x, width } = this.#column(i);
        const caption = tickBox(`${letter(first + i)}   ${variant.label ?? ''}`, x, y);
        const material = materialRows(materials(variant.mat, variant.job), x, y + 1.7 * LINE, width, rare);
        add('materials', [...caption, ...material.items]);
        if (variant.prices === undefined) return material.bottom;
        const price = priceRows(variant.prices, x, material.bottom + 1.9 * LINE, width, rare);
        add('prices', price.items);
        return price.bottom;
      });
      y = Math.max(...columns);
    }
    y += 4.3 * LINE;
    const sign = wide * 0.5;
    const dateX = this.#left + sign + GUTTER;
    add('approval', [
      ...signLine('Approved as drawn: signature', this.#left, y, sign),
      ...signLine('Date', dateX, y, this.#right - dateX),
    ]);
    return { groups, bottom: y + 2.4 * SMALL.size - top };
  }
}

const letter = (i: number): string => String.fromCharCode(65 + (i % 26)) + (i < 26 ? '' : String(Math.floor(i / 26)));

function pagesOf<T>(all: readonly T[], each: number): readonly (readonly T[])[] {
  return Array.from({ length: Math.ceil(all.length / each) }, (_, i) => all.slice(i * each, (i + 1) * each));
}
