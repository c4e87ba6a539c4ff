import type { Item } from '../drawing/model.ts';
import { type Box, bottom, box } from '../geometry/box.ts';
import { once } from '../problems/once.ts';
import { type Block, itemsAt } from './block.ts';
import { CLEAR, LARGE, type Style, TEXT, tight } from './styles.ts';

/** How densely a sheet is set: its running words, and how much white there is between things; 1 is usual. */
export interface Density {
  readonly text: Style;
  readonly air: number;
}

/** What flows, one below the other. */
export interface Piece {
  /** White above it unless it stands at the top of a column, em of the running words. */
  readonly above: number;
  /** So many pieces behind it are never parted from it … */
  readonly bound: number;
  /** … and so many are not where that can be. */
  readonly whole: number;
  /** It begins a column. */
  readonly fresh?: boolean;
  /** Set into a column of that width; it is never split. */
  readonly make: (width: number, density: Density) => Block;
  /** The same where it stands at the top of a column, if it is another there. */
  readonly atTop?: (width: number, density: Density) => Block;
  /** What it goes into where no column holds it whole. */
  readonly parts?: readonly Piece[];
}

/** From the most generous down. */
const DENSITIES: readonly Density[] = [
  { text: CLEAR, air: 1.1 },
  { text: tight(CLEAR), air: 0.8 },
  { text: LARGE, air: 1.6 },
  { text: LARGE, air: 1.1 },
  { text: tight(LARGE), air: 0.9 },
  { text: TEXT, air: 1.1 },
  { text: tight(TEXT), air: 1 },
  { text: tight(TEXT), air: 0.7 },
  { text: tight(TEXT), air: 0.45 },
];

export interface FlowOptions {
  /** The columns of a page in the order of reading, from page 0 on. */
  readonly columns: (page: number) => readonly Box[];
  /** The largest style of running words; `large` unless it is given. */
  readonly largest?: Style;
  /** The columns of the last page end as high as they can. */
  readonly even?: boolean;
}

export interface Flowed {
  /** One for each page, with how far down it is filled. */
  readonly pages: readonly { readonly items: readonly Item[]; readonly end: number }[];
  readonly density: Density;
}

/** On the fewest pages, lists and sections whole if they can be, then as generously as there is room. */
export function flow(pieces: readonly Piece[], options: FlowOptions): Flowed {
  const tried = settingsOf(pieces, options);
  const first = tried[0]!;
  let best = firstOn(1, tried) ?? first.filled(true)!;
  // Hundreds of pages take their time: what the densest cannot do none is asked for.
  while (best.pages.length > 2 && tried.at(-1)!.filled(false, best.pages.length - 1) !== undefined) {
    const fewer = firstOn(best.pages.length - 1, tried);
    if (fewer === undefined) break;
    best = fewer;
  }
  const { pages, density } = best;
  return { pages: pages.map((page) => ({ items: itemsOf(page), end: page.end })), density };
}

/** Whether one page holds it all, however densely. */
export function isOnePage(pieces: readonly Piece[], options: FlowOptions): boolean {
  // The densest first: that is where most of what fits at all does.
  const tried = settingsOf(pieces, options).toReversed();
  return [false, true].some((whole) => tried.some((setting) => setting.fills(whole)));
}

const settingsOf = (pieces: readonly Piece[], options: FlowOptions): readonly Setting[] => {
  const { size } = options.largest ?? LARGE;
  return DENSITIES.filter(({ text }) => text.size <= size).map((density) => new Setting(pieces, options, density));
};

/** The first way that takes no more than so many pages; the others are given up as soon as they take more. */
function firstOn(most: number, settings: readonly Setting[]): Way | undefined {
  for (const whole of [true, false]) {
    for (const setting of settings) {
      const way = setting.filled(whole, most);
      if (way !== undefined) return way;
    }
  }
  return undefined;
}

interface Filled {
  readonly placed: readonly { readonly block: Block; readonly x: number; readonly y: number }[];
  readonly end: number;
  readonly next: number;
}

/** Pages as they would be filled in one density. */
interface Way {
  readonly pages: readonly Filled[];
  readonly density: Density;
}

/** Made of the way that is taken alone. */
const itemsOf = ({ placed }: Filled): readonly Item[] => placed.flatMap(({ block, x, y }) => itemsAt(block, x, y));

/** Pieces in one density; each is set once for a width, though it is asked for more than once. */
class Setting {
  /** Parted where no column holds one whole, once the density is tried. */
  readonly #pieces: () => readonly Piece[];
  readonly #options: FlowOptions;
  readonly #density: Density;
  readonly #tallest: number;
  readonly #blocks = new Map<number, Block[]>();

  constructor(pieces: readonly Piece[], options: FlowOptions, density: Density) {
    this.#options = options;
    this.#density = density;
    const columns = options.columns(1);
    this.#tallest = Math.max(...columns.map(({ height }) => height));
    const narrowest = Math.min(...columns.map(({ width }) => width));
    this.#pieces = once(() =>
      pieces.flatMap((piece) =>
        piece.parts !== undefined && piece.make(narrowest, density).height > this.#tallest ? piece.parts : [piece],
      ),
    );
  }

  /** Whether the first page takes all. */
  fills(whole: boolean): boolean {
    return this.#filled(0, this.#options.columns(0), whole).next >= this.#pieces().length;
  }

  /** Undefined where it takes more pages than that. */
  filled(whole: boolean, most = Number.POSITIVE_INFINITY): Way | undefined {
    const { columns, even = false } = this.#options;
    const pages: Filled[] = [];
    let next = 0;
    do {
      if (pages.length === most) return undefined;
      const boxes = columns(pages.length);
      const full = this.#filled(next, boxes, whole);
      const isLast = full.next >= this.#pieces().length;
      pages.push(isLast && even ? this.#evened(next, boxes, whole, full) : full);
      next = full.next;
    } while (next < this.#pieces().length);
    return { pages, density: this.#density };
  }

  /** The columns that end highest and still hold all that is left. */
  #evened(from: number, boxes: readonly Box[], whole: boolean, full: Filled): Filled {
    let best = full;
    let [low, high] = [0, Math.max(...boxes.map(({ height }) => height))];
    while (high - low > 1) {
      const middle = (low + high) / 2;
      const shorter = boxes.map((area) => ({ ...area, height: Math.min(area.height, middle) }));
      const tried = this.#filled(from, shorter, whole);
      const fits = tried.next >= this.#pieces().length && tried.end <= Math.max(...shorter.map(bottom)) + 1e-6;
      if (fits) [high, best] = [middle, tried];
      else low = middle;
    }
    return best;
  }

  #filled(from: number, boxes: readonly Box[], whole: boolean): Filled {
    const placed: Filled['placed'][number][] = [];
    let next = from;
    let end = 0;
    for (const area of boxes) {
      let y = area.y;
      while (next < this.#pieces().length) {
        const piece = this.#pieces()[next]!;
        const isFirst = y === area.y;
        if (piece.fresh === true && !isFirst) break;
        const block = (isFirst ? piece.atTop?.(area.width, this.#density) : undefined) ?? this.#block(next, area.width);
        const top = y + (isFirst ? 0 : this.#gap(piece));
        const needed = block.height + this.#boundTo(next, area, whole);
        const fits = top + needed <= bottom(area) + 1e-6 && block.width <= area.width + 1e-6;
        // What no column has room for stands alone in the tallest.
        if (!fits && !(isFirst && area.height >= this.#tallest - 1e-6)) break;
        placed.push({ block, x: area.x, y: top });
        y = top + block.height;
        next++;
      }
      end = Math.max(end, y);
    }
    return { placed, end, next };
  }

  #gap({ above }: Piece): number {
    return above * this.#density.air * this.#density.text.size;
  }

  #block(index: number, width: number): Block {
    const known = this.#blocks.get(width) ?? [];
    this.#blocks.set(width, known);
    known[index] ??= this.#pieces()[index]!.make(width, this.#density);
    return known[index];
  }

  /** How tall what must stand below a piece is. */
  #boundTo(index: number, { width }: Box, whole: boolean): number {
    const piece = this.#pieces()[index]!;
    const heightOf = (count: number): number => {
      let sum = 0;
      for (let i = index + 1; i <= index + count; i++) {
        const next = this.#pieces()[i]!;
        sum += this.#gap(next) + this.#block(i, width).height;
      }
      return sum;
    };
    if (whole && piece.whole > 0) {
      const all = heightOf(piece.whole);
      if (this.#block(index, width).height + all <= this.#tallest) return all;
    }
    return heightOf(piece.bound);
  }
}

/** An area in columns of equal width. */
export function columnsOf(area: Box, count: number, gap: number): readonly Box[] {
  const width = (area.width - gap * (count - 1)) / count;
  return Array.from({ length: count }, (_, i) => box(area.x + i * (width + gap), area.y, width, area.height));
}
