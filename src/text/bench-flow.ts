import type { Item } from '../drawing/model.ts';
import type { Fonts } from '../fonts/model.ts';
import { type Box, box } from '../geometry/box.ts';
import { point } from '../geometry/point.ts';
import { HEAD, moved, type Part, scaled, stacked, TEXT, textPart } from './bench-type.ts';
import { set, widthOf } from './type-scale.ts';

/** A part of the work under its own heading. */
export interface Section {
  readonly title: string;
  /** Said behind the title where there is room, else below it. */
  readonly aside?: string;
  /** Its parts in a column of that width; none is ever split. */
  readonly parts: (width: number, density: Density) => readonly Part[];
}

/** The size of type, and how much white there is between things; 1 is usual. */
export interface Density {
  readonly scale: number;
  readonly air: number;
}

/** From the most generous down; the smallest type is 8 pt and read in the hand. */
const DENSITIES: readonly Density[] = [
  { scale: 1.1, air: 1.7 },
  { scale: 1.1, air: 1.3 },
  { scale: 1.05, air: 1.1 },
  { scale: 1, air: 1 },
  { scale: 0.96, air: 0.9 },
  { scale: 0.92, air: 0.65 },
];
const GUTTER = 8;
/** Between the parts of a section, and between sections, of the usual size. */
const GAP = { part: 1.8, section: 5.4, heading: 2.4 };

export interface Flowed {
  /** One for each page, with how deep it is filled. */
  readonly pages: readonly { readonly items: readonly Item[]; readonly depth: number }[];
}

interface Laid extends Part {
  readonly first: boolean;
}

/**
 * Sections one after the other in two columns, in the order of work: on the fewest pages, then in the largest type; on
 * the last page both columns are as short as they can be. A section is parted only where that saves a page. `areas(i)` is the room of page i.
 */
export function flowSections(sections: readonly Section[], areas: (page: number) => Box, fonts: Fonts): Flowed {
  let best: Flowed | undefined;
  for (const whole of [true, false]) {
    for (const density of DENSITIES) {
      const made = flowAt(sections, areas, density, whole, fonts);
      if (best === undefined || made.pages.length < best.pages.length) best = made;
      if (best.pages.length === 1) return best;
    }
  }
  return best!;
}

function flowAt(
  sections: readonly Section[],
  areas: (page: number) => Box,
  density: Density,
  whole: boolean,
  fonts: Fonts,
): Flowed {
  const width = (areas(0).width - GUTTER) / 2;
  // A section that is kept whole must fit on whichever page it comes to.
  const tallest = Math.min(areas(0).height, areas(1).height);
  const parts = sections.flatMap((section, i) => laid(section, i + 1, width, density, whole ? tallest : 0, fonts));
  const pages: Flowed['pages'][number][] = [];
  let from = 0;
  while (from < parts.length) {
    const area = areas(pages.length);
    const full = fill(parts, from, area.height, density);
    const balanced = full.next < parts.length ? full : shortest(parts, from, area.height, density);
    const items = balanced.columns.flatMap(({ items: own }, c) => moved(own, area.x + c * (width + GUTTER), area.y));
    pages.push({ items, depth: Math.max(...balanced.columns.map(({ height }) => height)) });
    from = balanced.next;
  }
  return { pages };
}

/** The columns that end highest and still hold all that is left. */
function shortest(parts: readonly Laid[], from: number, height: number, density: Density): Filled {
  let [low, high] = [0, height];
  let best = fill(parts, from, height, density);
  while (high - low > 1) {
    const middle = (low + high) / 2;
    const tried = fill(parts, from, middle, density);
    const fits = tried.next >= parts.length && tried.columns.every((column) => column.height <= middle + 1e-6);
    if (fits) [high, best] = [middle, tried];
    else low = middle;
  }
  return best;
}

interface Filled {
  readonly columns: readonly Part[];
  readonly next: number;
}

function fill(parts: readonly Laid[], from: number, height: number, density: Density): Filled {
  const columns: Part[] = [];
  let next = from;
  for (let c = 0; c < 2; c++) {
    const items: Item[] = [];
    let y = 0;
    while (next < parts.length) {
      const part = parts[next]!;
      const gap = y === 0 ? 0 : (part.first ? GAP.section : GAP.part) * density.air;
      // What no column can hold stands alone in one.
      if (y > 0 && y + gap + part.height > height + 1e-6) break;
      items.push(...moved(part.items, 0, y + gap));
      y += gap + part.height;
      next++;
    }
    columns.push({ items, height: y });
  }
  return { columns, next };
}

/** A section's parts, the heading bound to the first of them; one part where that is no taller than `whole`. */
function laid(
  section: Section,
  number: number,
  width: number,
  density: Density,
  whole: number,
  fonts: Fonts,
): readonly Laid[] {
  const [first, ...rest] = section.parts(width, density);
  const heading = headingPart(number, section, width, density.scale, fonts);
  const bound = stacked([heading, ...(first === undefined ? [] : [first])], GAP.heading * density.air);
  const one = stacked([bound, ...rest], GAP.part * density.air);
  if (one.height <= whole) return [{ ...one, first: true }];
  return [{ ...bound, first: true }, ...rest.map((part) => ({ ...part, first: false }))];
}

/** Number, title and what is said behind it; a title too long for the line goes on below, never cut. */
function headingPart(number: number, { title, aside = '' }: Section, width: number, scale: number, fonts: Fonts): Part {
  const [style, text] = [scaled(HEAD, scale), scaled(TEXT, scale)];
  const indent = Math.max(widthOf(`${number}`, style, fonts), 0.9 * style.size) + 1.8;
  const room = width - indent;
  const wide = widthOf(title, style, fonts);
  const made =
    wide <= room ? textPart(title, width, style, fonts, indent) : textPart(title, width, text, fonts, indent);
  const y = 1.5;
  const base = y + made.base;
  const items: Item[] = [
    { kind: 'line', pen: 'head', from: point(0, 0), to: point(width, 0) },
    set(`${number}`, 0, base, style),
    ...moved(made.items, 0, y),
  ];
  const height = wide <= room ? base + 0.4 : y + made.height;
  if (aside === '') return { items, height };
  const below = textPart(aside, width, text, fonts);
  const behind = indent + wide + 2.2;
  if (behind + widthOf(aside, text, fonts) <= width) {
    return { items: [...items, ...moved(below.items, behind, base - below.base)], height };
  }
  return { items: [...items, ...moved(below.items, 0, height + 1.6)], height: height + 1.6 + below.height };
}

/** The part of a page inside its margins. */
export const inside = (
  { width, height }: { readonly width: number; readonly height: number },
  margin: { readonly top: number; readonly side: number; readonly bottom: number },
): Box => box(margin.side, margin.top, width - 2 * margin.side, height - margin.top - margin.bottom);
