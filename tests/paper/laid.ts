import type { Page } from '../../src/drawing/document.ts';
import type { FullScale } from '../../src/drawing/full-scale.ts';
import type { Drawing, Item } from '../../src/drawing/model.ts';
import type { Point } from '../../src/geometry/point.ts';
import { type Layout, layOut } from '../../src/paper/layout.ts';
import type { LaidPage, Part } from '../../src/paper/model.ts';
import type { LayoutOptions } from '../../src/paper/options.ts';
import { findPaper } from '../../src/papers/find.ts';
import { FONTS } from '../fonts/loaded.ts';

export const even = (mm: number) => ({ top: mm, right: mm, bottom: mm, left: mm });

export function options(paper: string, more: Partial<LayoutOptions> = {}): LayoutOptions {
  const found = findPaper(paper);
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return {
    paper: found.value,
    margin: even(6.35),
    lap: 12.7,
    join: 'lap',
    extent: 'whole',
    units: 'in',
    stamp: 'as settled',
    fonts: FONTS,
    ...more,
  };
}

export function laid(work: FullScale, paper: string, more: Partial<LayoutOptions> = {}): Layout {
  const made = layOut(work, options(paper, more));
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

export type Sheet = LaidPage & { readonly part: Part };

export function sheetsIn(layout: Layout): readonly Sheet[] {
  return layout.pages.filter((page): page is Sheet => page.part !== undefined);
}

/**
 * Where a point of the drawing stands on a page, as the manifest's words say it: the part is turned clockwise by
 * `rotation`, and the turned part's top left lies at `pageX, pageY`.
 */
export function onPage(p: Point, { part, rotation }: Sheet): Point {
  const [dx, dy] = [p.x - part.x, p.y - part.y];
  const [x, y] = (
    {
      0: [dx, dy],
      90: [part.height - dy, dx],
      180: [part.width - dx, part.height - dy],
      270: [dy, part.width - dx],
    } as const
  )[rotation];
  return { x: part.pageX + x, y: part.pageY + y };
}

export function isShown(p: Point, { part }: Sheet, gap = 1e-9): boolean {
  return (
    p.x >= part.x - gap && p.x <= part.x + part.width + gap && p.y >= part.y - gap && p.y <= part.y + part.height + gap
  );
}

/** Points along everything that the drawing shows, about a millimetre apart. */
export function drawnPoints(drawing: Drawing, step = 1): readonly Point[] {
  return drawing.groups
    .filter((group) => group.shown)
    .flatMap((group) => group.items)
    .flatMap((item): Point[] => {
      if (item.kind === 'text') return [item.at];
      if (item.kind !== 'line') throw new Error(`no points on a ${item.kind}`);
      const long = Math.hypot(item.to.x - item.from.x, item.to.y - item.from.y);
      const count = Math.max(1, Math.ceil(long / step));
      return Array.from({ length: count + 1 }, (_, i) => ({
        x: item.from.x + ((item.to.x - item.from.x) * i) / count,
        y: item.from.y + ((item.to.y - item.from.y) * i) / count,
      }));
    });
}

/** What a page itself needs: frames as large as it is. */
export const furnitureOf = (page: Page): readonly Drawing[] =>
  page.frames.map(({ drawing }) => drawing).filter(({ view }) => view === 'sheet');

/** The pens of that. */
export const pensOf = (page: Page): Drawing['pens'] => Object.assign({}, ...furnitureOf(page).map(({ pens }) => pens));

export const itemsOf = (page: Page): readonly Item[] =>
  furnitureOf(page).flatMap(({ groups }) => groups.flatMap(({ items }) => items));

export function textsOf(page: Page): readonly string[] {
  return itemsOf(page).flatMap((item) => (item.kind === 'text' ? [item.text] : []));
}

/** Every word of some pages in a row, for finding what lines of text were broken over. */
export const wordsOf = (...pages: readonly Page[]): string => pages.flatMap(textsOf).join(' ');

export function deepFrozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const inner of Object.values(value)) deepFrozen(inner);
  }
  return value;
}
