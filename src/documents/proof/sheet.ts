import type { Item } from '../../drawing/model.ts';
import { type Point, point, type Size } from '../../geometry/point.ts';
import { pieceBox } from '../../mat/framed.ts';
import {
  capHeight,
  fitted,
  headline,
  INTRO,
  paragraph,
  SIZE,
  SMALL,
  set,
  TITLE,
  widthOf,
} from '../../text/type-scale.ts';
import { type Band, band } from './band.ts';
import { dimensionItems, dimensions, roomFor } from './dimensions.ts';
import type { ProofGroup, ProofOptions, Variant } from './model.ts';
import type { Part } from './parts.ts';
import { type PlacedPicture, pieceItems } from './piece.ts';
import { COLOURS, placeholderWords } from './words.ts';

/** The items of a sheet by the group that they belong to. */
export type SheetItems = ReadonlyMap<ProofGroup, readonly Item[]>;

/** What a sheet asks while it is made. */
export interface SheetParts {
  /** The number of its first variant, from 0. */
  readonly first: number;
  readonly picture: (variant: Variant, opening: number) => PlacedPicture | undefined;
}

export interface ChosenSheet {
  readonly paper: Size;
  readonly scale: number;
  readonly make: (variants: readonly Variant[], parts: SheetParts) => SheetItems;
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
    return {
      paper,
      scale: layout.scale,
      make: (own: readonly Variant[], parts: SheetParts) => layout.make(own, parts),
    };
  }) as [ChosenSheet, ChosenSheet];
  return lying.scale > upright.scale * WORTH_TURNING ? lying : upright;
}

const MARGIN = { side: 17, top: 15, bottom: 11 };
const GUTTER = 10;
/** Between the head, the piece and what is said of it. */
const AIR = 9;

/** Lists are set smaller where they would leave the piece less of the sheet's height than this. */
const LEAST_FIELD = 0.27;
const SHARES = [1, 0.85, 0.7, 0.55];

class SheetLayout {
  /** Known once the field is: until then the band is only measured. */
  #scale: number | undefined;
  readonly #all: readonly Variant[];
  readonly #paper: Size;
  readonly #options: ProofOptions;
  readonly #perSheet: number;
  readonly #left: number;
  readonly #right: number;
  readonly #head: Part;
  readonly #foot: Part & { readonly top: number };
  readonly #fieldTop: number;
  #fieldBottom = 0;
  #share = 1;

  constructor(paper: Size, variants: readonly Variant[], options: ProofOptions, perSheet: number) {
    this.#all = variants;
    this.#paper = paper;
    this.#options = options;
    this.#perSheet = perSheet;
    const side = Math.min(MARGIN.side, paper.width / 10);
    this.#left = side;
    this.#right = paper.width - side;
    this.#head = this.#headItems(variants[0]!);
    this.#foot = this.#footItems();
    this.#fieldTop = this.#head.bottom + AIR;
    const least = LEAST_FIELD * paper.height;
    for (const share of SHARES) {
      this.#share = share;
      const bands = pagesOf(variants, perSheet).map((own) => this.#band(own, 0, 0).height);
      this.#fieldBottom = this.#foot.top - Math.max(...bands) - AIR * 0.9 - 6;
      if (this.#fieldBottom - this.#fieldTop >= least) break;
    }
    this.#scale = this.#bestScale(variants);
  }

  get scale(): number {
    return this.#scale!;
  }

  make(variants: readonly Variant[], parts: SheetParts): SheetItems {
    const { fonts } = this.#options;
    const items = new Map<ProofGroup, Item[]>();
    const add = (group: ProofGroup, made: readonly Item[]): void => {
      items.set(group, [...(items.get(group) ?? []), ...made]);
    };
    add('head', this.#head.items);
    variants.forEach((variant, i) => {
      const at = this.#pieceAt(variant, i);
      const place = { at, scale: this.scale };
      const pictures = variant.mat.openings.map((_, k) => parts.picture(variant, k));
      const { openings, units } = variant.job;
      const words = variant.mat.openings.map((opening, i) => placeholderWords(opening, openings[i]?.name, units));
      add('piece', pieceItems(variant.mat, variant.job, place, pictures, words, fonts));
      if (this.#options.dimensions) {
        const rows = dimensions(variant.mat, variant.job, this.scale, fonts);
        add('dimensions', dimensionItems(variant.mat, variant.job, place, rows, fonts));
      }
    });
    const band = this.#band(variants, this.#fieldBottom + AIR * 0.9, parts.first);
    for (const [group, made] of band.groups) add(group, made);
    add('foot', this.#foot.items);
    return items;
  }

  #headItems({ job }: Variant): Part {
    const { fonts, date } = this.#options;
    const said = date === undefined ? 'Proof' : `Proof, ${date}`;
    const aside = widthOf(said, INTRO, fonts) + 12;
    const width = this.#right - this.#left;
    const { style, lines } = headline(job.title, width - Math.min(aside, 0.5 * width), TITLE, fonts);
    let y = MARGIN.top + capHeight(style, fonts);
    const items: Item[] = lines.map((line, i) => set(line, this.#left, y + i * 1.16 * style.size, style));
    items.push(set(said, this.#right, y, fitted(said, INTRO, 0.5 * width - 12, 0.4, fonts), 'end'));
    y += (lines.length - 1) * 1.16 * style.size;
    if (job.customer !== undefined) {
      const customer = paragraph(job.customer, this.#left, y + SIZE.intro * 1.75, width * 0.8, INTRO, fonts);
      items.push(...customer.items);
      y = customer.bottom;
    }
    return { items, bottom: y + 0.25 * SIZE.intro };
  }

  #footItems(): Part & { readonly top: number } {
    const { fonts } = this.#options;
    const width = this.#right - this.#left;
    const lines = paragraph(COLOURS, this.#left, 0, width, SMALL, fonts);
    const last = this.#paper.height - MARGIN.bottom;
    const y = last - lines.bottom;
    return {
      items: paragraph(COLOURS, this.#left, y, width, SMALL, fonts).items,
      bottom: last,
      top: y - capHeight(SMALL, fonts),
    };
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
        const rows = this.#options.dimensions
          ? dimensions(mat, job, scale, this.#options.fonts)
          : { across: [], down: [] };
        return (
          piece.width * scale + roomFor(rows.down) <= width && piece.height * scale + roomFor(rows.across) <= height
        );
      });
    return 1 / (SCALES.find((scale) => fits(1 / scale)) ?? SCALES.at(-1)!);
  }

  /** Top left of the mat: the piece in the middle of its column, a little above the middle of the field. */
  #pieceAt({ mat, job }: Variant, i: number): Point {
    const { x, width } = this.#column(i);
    const piece = pieceBox(mat, job);
    const rows = this.#options.dimensions
      ? dimensions(mat, job, this.scale, this.#options.fonts)
      : { across: [], down: [] };
    const free = this.#fieldBottom - this.#fieldTop - piece.height * this.scale - roomFor(rows.across);
    const spare = width - piece.width * this.scale;
    // In the middle by itself, as long as what stands at its right leaves it there.
    const left = x + Math.min(spare / 2, spare - roomFor(rows.down));
    return point(left - piece.x * this.scale, this.#fieldTop + free * 0.46 - piece.y * this.scale);
  }

  /** Under a rule at `top`. */
  #band(variants: readonly Variant[], top: number, first: number): Band {
    const { fonts } = this.#options;
    const columns = Array.from({ length: this.#perSheet }, (_, i) => this.#column(i));
    const whole = { x: this.#left, width: this.#right - this.#left };
    const request = { variants, all: this.#all, first, whole, columns, gutter: GUTTER, fonts, share: this.#share };
    return band({ ...request, scale: this.#scale ?? 1 }, top);
  }
}

function pagesOf<T>(all: readonly T[], each: number): readonly (readonly T[])[] {
  return Array.from({ length: Math.ceil(all.length / each) }, (_, i) => all.slice(i * each, (i + 1) * each));
}
