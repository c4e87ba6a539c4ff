import type { Drawing, Item, Pen } from '../drawing/model.ts';
import type { Fonts } from '../fonts/model.ts';
import { type Box, bottom, box, right } from '../geometry/box.ts';
import type { BySide } from '../geometry/sides.ts';
import type { Margined } from '../settle/settled.ts';
import { type Block, beside, moved, stacked } from '../text/block.ts';
import { type Entry, numbered, piecesOf } from '../text/entries.ts';
import { WORD_PENS } from '../text/figures.ts';
import { columnsOf, flow } from '../text/flow.ts';
import { headline, paragraph } from '../text/paragraph.ts';
import { CLEAR, NAME } from '../text/styles.ts';
import { HEAD_ROOM, type HeadedJob, runningHead } from './words/running-head.ts';

/** What of a sheet is set: its own margins, and never less than `least` of its edges. */
export function areaOf({ width, height, area }: Margined, least: BySide<number>): Box {
  const [left, top] = [Math.max(area.x, least.left), Math.max(area.y, least.top)];
  const [end, foot] = [Math.min(right(area), width - least.right), Math.min(bottom(area), height - least.bottom)];
  return box(left, top, end - left, foot - top);
}

const SIDE = 10;

/** Sheets of the bench are clipped to a board: room at the top for the clip, beside it for the running head, at the sides for a thumb. */
export const benchArea = (paper: Margined): Box =>
  areaOf(paper, { top: Math.max(14.5, paper.area.y + HEAD_ROOM), right: SIDE, bottom: 8.5, left: SIDE });

/** Between two columns. */
export const GUTTER = 8;

const BENCH_PENS: Readonly<Record<string, Pen>> = {
  ...WORD_PENS,
  edge: { width: 0.35, colour: 0, dash: [], cap: 'butt' },
  cut: { width: 0.5, colour: 0, dash: [], cap: 'butt' },
  hidden: { width: 0.2, colour: 0, dash: [0.8, 0.8], cap: 'butt' },
};

export interface Listed {
  /** Of the file. */
  readonly title: string;
  /** The headline, and a line below it. */
  readonly name: string;
  readonly intro: string;
  /** What the drawing's only group is called. */
  readonly group: string;
  readonly entries: readonly Entry[];
  /** At the right of the headline, and at the foot of the first sheet. */
  readonly aside?: Block;
  readonly foot?: Block;
  /** That it is of; none for an empty form. */
  readonly jobs: readonly HeadedJob[];
  readonly paper: Margined;
  readonly fonts: Fonts;
}

/** A headline and numbered sections in two columns, on as many sheets as they take. */
export function listedSheets(listed: Listed): readonly Drawing[] {
  const { title, name, intro, group, entries, aside, foot, jobs, paper, fonts } = listed;
  const area = benchArea(paper);
  const room = area.width - (aside === undefined ? 0 : aside.width + GUTTER);
  const named = stacked([headline(name, room, NAME, fonts), paragraph(intro, room, CLEAR, fonts)], 2);
  const head = aside === undefined ? named : beside({ ...named, width: room }, aside, GUTTER);
  const taken = foot === undefined ? 0 : foot.height + FOOT_AIR;
  const columns = (page: number): readonly Box[] =>
    columnsOf(page === 0 ? below({ ...area, height: area.height - taken }, head.height + 6) : area, 2, GUTTER);
  const { pages } = flow(piecesOf(numbered(entries), fonts), { columns, even: true });
  return pages.map(({ items }, index) => {
    const first = [
      ...moved(head.items, area.x, area.y),
      ...(foot === undefined ? [] : moved(foot.items, area.x, bottom(area) - foot.height)),
    ];
    const all = [...(index === 0 ? first : []), ...items];
    return benchSheet(title, group, { jobs, paper, fonts }, all);
  });
}

/** Above what stands at the foot of a sheet. */
const FOOT_AIR = 4;

/** What is left of an area below so much of it. */
export const below = (area: Box, taken: number): Box => ({ ...area, y: area.y + taken, height: area.height - taken });

/** What a sheet of the bench is of, and on. */
export type BenchSheet = Pick<Listed, 'jobs' | 'paper' | 'fonts'>;

/** A finished sheet of one group, its running head above what is on it. */
export function benchSheet(
  title: string,
  group: string,
  { jobs, paper, fonts }: BenchSheet,
  items: readonly Item[],
): Drawing {
  const above = areaOf(paper, { top: 0, right: SIDE, bottom: 0, left: SIDE });
  return {
    title,
    width: paper.width,
    height: paper.height,
    view: 'sheet',
    pens: BENCH_PENS,
    groups: [{ name: group, label: title, shown: true, items: [...runningHead(jobs, above, fonts), ...items] }],
  };
}
