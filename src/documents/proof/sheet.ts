import type { Item } from '../../drawing/model.ts';
import { type Box, bottom } from '../../geometry/box.ts';
import { type Point, point } from '../../geometry/point.ts';
import { pieceBox } from '../../mat/framed.ts';
import type { Margined } from '../../settle/settled.ts';
import { type Block, joined, moved, stacked } from '../../text/block.ts';
import { set } from '../../text/line.ts';
import { fittedLine, headline, level, paragraph } from '../../text/paragraph.ts';
import { BODY, INTRO, SMALL, smaller, TITLE, tight } from '../../text/styles.ts';
import { areaOf } from '../bench-page.ts';
import { letterheadBlock } from '../words/letterhead-block.ts';
import { HEAD_ROOM, runningHead } from '../words/running-head.ts';
import { type BandRequest, band, type Column, letter } from './band.ts';
import { dimensionItems, dimensions, roomFor } from './dimensions.ts';
import { PROOF_GROUPS, type ProofGroup, type ProofOptions, type Variant } from './model.ts';
import type { ListStyle } from './parts.ts';
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
  readonly paper: Margined;
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
  const { paper } = options;
  const isUpright = paper.width <= paper.height;
  const [upright, lying] = (isUpright ? [paper, paper.onItsSide] : [paper.onItsSide, paper]).map((each) => {
    const layout = new SheetLayout(each, variants, options, perSheet);
    return {
      paper: each,
      scale: layout.scale,
      make: (own: readonly Variant[], parts: SheetParts) => layout.make(own, parts),
    };
  }) as [ChosenSheet, ChosenSheet];
  return lying.scale > upright.scale * WORTH_TURNING ? lying : upright;
}

const GUTTER = 10;
/** For the letter above each of several ways. */
const LETTER_ROOM = 5;
/** Between the head, the piece and what is said of it. */
const AIR = 9;

/** Lists are set smaller where they would leave the piece less of the sheet's height than this. */
const LEAST_FIELD = 0.27;
const LISTS: readonly Omit<ListStyle, 'fonts'>[] = [
  { body: BODY, gap: 1.5 },
  { body: tight(BODY), gap: 0.8 },
  { body: tight(smaller(BODY)), gap: 0.6 },
];

class SheetLayout {
  /** Known once the field is: until then the band is only measured. */
  #scale: number | undefined;
  readonly #all: readonly Variant[];
  readonly #options: ProofOptions;
  readonly #perSheet: number;
  readonly #area: Box;
  readonly #head: Block;
  readonly #foot: Block;
  readonly #fieldTop: number;
  #fieldBottom = 0;
  #lists = LISTS[0]!;

  constructor(paper: Margined, variants: readonly Variant[], options: ProofOptions, perSheet: number) {
    this.#all = variants;
    this.#options = options;
    this.#perSheet = perSheet;
    const side = Math.min(17, paper.width / 10);
    this.#area = areaOf(paper, { top: Math.max(15, paper.area.y + HEAD_ROOM), right: side, bottom: 11, left: side });
    this.#head = this.#headBlock(variants[0]!);
    this.#foot = paragraph(COLOURS, this.#area.width, SMALL, options.fonts);
    this.#fieldTop = this.#area.y + this.#head.height + AIR + (variants.length > 1 ? LETTER_ROOM : 0);
    for (const lists of LISTS) {
      this.#lists = lists;
      const bands = pagesOf(variants, perSheet).map((own) => this.#band(own, 0).height);
      this.#fieldBottom = bottom(this.#area) - this.#foot.height - Math.max(...bands) - 2 * AIR * 0.9;
      if (this.#fieldBottom - this.#fieldTop >= LEAST_FIELD * paper.height) break;
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
    const [one] = this.#all;
    add('head', runningHead([one!], { ...this.#area, y: this.#area.y - HEAD_ROOM }, fonts));
    add('head', moved(this.#head.items, this.#area.x, this.#area.y));
    variants.forEach((variant, i) => {
      const at = this.#pieceAt(variant, i);
      if (this.#all.length > 1) add('piece', [this.#letter(variant, at, parts.first + i)]);
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
    const said = this.#band(variants, parts.first);
    const placed = moved(said.items, this.#area.x, this.#fieldBottom + AIR * 0.9);
    for (const [group] of PROOF_GROUPS)
      add(
        group,
        placed.filter((_, i) => said.groups?.[i] === group),
      );
    add('foot', moved(this.#foot.items, this.#area.x, bottom(this.#area) - this.#foot.height));
    return items;
  }

  #headBlock({ job }: Variant): Block {
    const { fonts, date, letterhead } = this.#options;
    const { width } = this.#area;
    const said = fittedLine(date === undefined ? 'Proof' : `Proof, ${date}`, 0.5 * width - 12, INTRO, fonts);
    const first = level([
      [0, headline(job.title, width - said.width - 12, TITLE, fonts)],
      [width - said.width, said],
    ]);
    const customer =
      job.customer === undefined
        ? []
        : [paragraph(job.customer, width * (letterhead?.shown === undefined ? 0.6 : 0.48), INTRO, fonts)];
    const own =
      letterhead === undefined
        ? []
        : [letterheadBlock(letterhead, width * (letterhead.shown === undefined ? 0.36 : 0.48), fonts)];
    if (customer.length + own.length === 0) return first;
    const height = Math.max(...[...customer, ...own].map((block) => block.height));
    const below = joined({ width, height }, [
      ...customer.map((block) => [block, { x: 0, y: 0 }] as const),
      ...own.map((block) => [block, { x: width - block.width, y: 0.6 }] as const),
    ]);
    return stacked([first, below], 2);
  }

  /** From the left edge of the area. */
  #column(i: number): Column {
    const n = this.#perSheet;
    const width = (this.#area.width - (n - 1) * GUTTER) / n;
    return { x: i * (width + GUTTER), width };
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
    const left = this.#area.x + x + Math.min(spare / 2, spare - roomFor(rows.down));
    return point(left - piece.x * this.scale, this.#fieldTop + free * 0.46 - piece.y * this.scale);
  }

  /** Above the piece's top left corner: which of the ways it is. */
  #letter({ mat, job }: Variant, { x, y }: Point, index: number): Item {
    const piece = pieceBox(mat, job);
    return set(letter(index), x + piece.x * this.scale, y + piece.y * this.scale - 2.4, TITLE);
  }

  /** Everything that is said of some variants. */
  #band(variants: readonly Variant[], first: number): Block {
    const { fonts } = this.#options;
    const columns = Array.from({ length: this.#perSheet }, (_, i) => this.#column(i));
    const request: BandRequest = {
      variants,
      all: this.#all,
      first,
      width: this.#area.width,
      columns,
      gutter: GUTTER,
      scale: this.#scale ?? 1,
      style: { ...this.#lists, fonts },
    };
    return band(request);
  }
}

function pagesOf<T>(all: readonly T[], each: number): readonly (readonly T[])[] {
  return Array.from({ length: Math.ceil(all.length / each) }, (_, i) => all.slice(i * each, (i + 1) * each));
}
