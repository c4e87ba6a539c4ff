import type { Stroke } from '../../bench/model.ts';
import type { Drawing, Item, Pen } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { type Box, bottom, box, right } from '../../geometry/box.ts';
import { polygon } from '../../geometry/path.ts';
import { type Point, point, type Size } from '../../geometry/point.ts';
import type { Job } from '../../job/job.ts';
import type { Mat } from '../../mat/model.ts';
import { defined } from '../../problems/defined.ts';
import { error, fail, type Result } from '../../problems/problem.ts';
import type { Guide } from '../../shop/guide.ts';
import type { Head } from '../../shop/head.ts';
import type { Shop } from '../../shop/shop.ts';
import { type Entry, piecesOf } from '../../text/entries.ts';
import { WORD_PENS } from '../../text/figures.ts';
import { columnsOf, flow } from '../../text/flow.ts';
import { ellipsized, widthOf } from '../../text/line.ts';
import { CLEAR, TEXT } from '../../text/styles.ts';
import { showLength } from '../../units/print.ts';
import type { LengthUnit } from '../../units/units.ts';
import { sheetHead } from '../words/running-head.ts';
import { words } from './words.ts';

/** What a jig is made from. Lengths are mm. */
export interface JigContext {
  readonly paper: Size & { readonly id: string; readonly name: string };
  /** Where ink may go on a sheet. */
  readonly area: Box;
  /** What every sheet says of its printer: corrected for it or not. */
  readonly stamp: string;
  readonly units: LengthUnit;
  readonly shop: Shop;
  readonly head: Head;
  readonly guide: Guide;
  readonly fonts: Fonts;
  /** The name of the printer that the sheets are for, where one was named. */
  readonly printer?: string;
  /** Thicknesses of board that were asked for, thinnest first; empty where none were. */
  readonly thicknesses: readonly number[];
  /** What is to be calibrated first and was not yet, in words. */
  readonly notYet: readonly string[];
  readonly solved?: { readonly job: Job; readonly mat: Mat; readonly strokes: readonly Stroke[] };
}

export interface Jig {
  readonly title: string;
  /** Each as large as the paper. */
  readonly sheets: readonly Drawing[];
  /** Full scale and without words, for a cutter: `cut` is to be cut, `engrave` to be drawn. */
  readonly cut?: Drawing;
}

/** A row of the table of jigs. */
export interface JigEntry {
  /** As the command names it; the file is `jig-KIND.pdf`. */
  readonly kind: string;
  readonly summary: string;
  /** Whether it is made for one job. */
  readonly needs: 'nothing' | 'job';
  /** True where the printer's correction must never touch it, since it measures the printer. */
  readonly uncorrected?: boolean;
  /** True where it is laid out for the paper on its side. */
  readonly sideways?: boolean;
  /** The margin that it is laid out for, where it is not the usual one. */
  readonly margin?: number;
  readonly make: (context: JigContext) => Result<Jig>;
}

export const JIG_PENS: Readonly<Record<string, Pen>> = {
  ...WORD_PENS,
  line: { width: 0.25, colour: 0, dash: [], cap: 'butt' },
  fine: { width: 0.12, colour: 0, dash: [], cap: 'butt' },
  bold: { width: 0.6, colour: 0, dash: [], cap: 'butt' },
  cut: { width: 0.25, colour: 0, dash: [], cap: 'butt' },
  snip: { width: 0.2, colour: 0, dash: [2.4, 1.4], cap: 'butt' },
  hidden: { width: 0.2, colour: 0, dash: [0.8, 0.8], cap: 'butt' },
};

const FOOT_ROOM = 5.5;
const GUTTER = 7;

export interface SheetPlan {
  /** The jig's kind, for the foot of the sheets. */
  readonly kind: string;
  readonly title: string;
  readonly entries: readonly Entry[];
  /** Draws the figure of the first sheet and says where its words go, within `area` (the foot is left out of it). */
  readonly figure: (area: Box) => { readonly items: readonly Item[]; readonly boxes: readonly Box[] };
  readonly pens?: Readonly<Record<string, Pen>>;
}

/** A jig's sheets: the first with its figure, and as many more as its words take. */
export function jigSheets(context: JigContext, plan: SheetPlan): readonly Drawing[] {
  const { paper, fonts } = context;
  const area = contentArea(context);
  const { items, boxes } = plan.figure(area);
  const more = columns(area, area.width > 150 ? 2 : 1);
  const { pages } = flow(piecesOf(plan.entries, fonts), {
    columns: (page) => (page === 0 ? boxes : more),
    largest: CLEAR,
  });
  return pages.map(({ items: text }, i) =>
    sheet(context, plan.kind, plan.title, paper, [...(i === 0 ? items : []), ...text], plan.pens),
  );
}

export const contentArea = ({ area }: JigContext): Box => box(area.x, area.y, area.width, area.height - FOOT_ROOM);

export function sheet(
  context: JigContext,
  kind: string,
  title: string,
  size: Size,
  items: readonly Item[],
  pens: Readonly<Record<string, Pen>> = {},
): Drawing {
  return {
    title,
    width: size.width,
    height: size.height,
    view: 'sheet',
    pens: { ...JIG_PENS, ...pens },
    groups: [{ name: 'jig', label: title, shown: true, items: [...items, ...foot(context, kind)] }],
  };
}

function foot({ area, paper, stamp, fonts, solved }: JigContext, kind: string): readonly Item[] {
  const { number, due } =
    solved === undefined ? {} : sheetHead([{ ...solved, ...defined({ number: solved.job.number }) }]);
  const left = [number, due, `jig ${kind}, made for ${paper.name}`].filter((text) => text !== undefined).join(', ');
  const y = bottom(area) - 0.9;
  const room = area.width - widthOf(left, TEXT, fonts) - 4;
  return [
    words(left, point(area.x, y), TEXT),
    words(ellipsized(stamp, TEXT, room, fonts), point(right(area), y), TEXT, 'end'),
  ];
}

/** An area in columns of equal width. */
export const columns = (area: Box, count: number, gap = GUTTER): readonly Box[] => columnsOf(area, count, gap);

export const line = (pen: string, from: Point, to: Point, id?: string): Item => ({
  kind: 'line',
  pen,
  from,
  to,
  ...defined({ id }),
});

export const outline = (pen: string, points: readonly Point[], id?: string): Item => ({
  kind: 'path',
  pen,
  paths: [polygon(points)],
  ...defined({ id }),
});

export const rectangle = (pen: string, b: Box, id?: string): Item =>
  outline(pen, [point(b.x, b.y), point(right(b), b.y), point(right(b), bottom(b)), point(b.x, bottom(b))], id);

/** The figure does not go on the paper. */
export function tooSmall({ paper, units }: JigContext, kind: string, needed: Size): Result<never> {
  const show = (mm: number) => showLength(Math.ceil(mm), units);
  const message = `the jig ${kind} takes ${show(needed.width)} × ${show(needed.height)} within the margins, ${paper.name} has less`;
  return fail([error('jig-paper-small', ['paper'], message, 'take a larger paper')]);
}

/** Said on a jig that is read with tools which were not measured themselves. */
export function orderEntries({ notYet }: JigContext): readonly Entry[] {
  if (notYet.length === 0) return [];
  const text = `Not yet calibrated: ${notYet.join(' and ')}. The order is printer, guide, head; what comes before is off counts here.`;
  return [{ kind: 'text', text, bold: true }];
}
