import type { Item } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { type Box, bottom, box, right } from '../../geometry/box.ts';
import { type Block, joined, moved, stacked } from '../../text/block.ts';
import { type Entry, piecesOf } from '../../text/entries.ts';
import { columnsOf, flow, isOnePage } from '../../text/flow.ts';
import { headline, paragraph } from '../../text/paragraph.ts';
import { CLEAR, NAME, TEXT } from '../../text/styles.ts';
import { assemblyMap, type MapPlan } from '../furniture/assembly-map.ts';
import { type ScaleFigure, scaleFigure } from '../furniture/scale-figure.ts';
import { titleOf } from '../furniture/sheet-label.ts';
import { type CheckFacts, meaning, settings, usage } from './words.ts';

const GAP = 7;
/** A column narrower than this holds no sentence. */
const NARROWEST = 52;
const COLUMN = 80;
/** Beside the figure columns may be narrower. */
const BESIDE = 60;
const SHALLOWEST = 20;

/** What the words go around with. */
export interface CheckStyle {
  readonly title: string;
  readonly intro: string;
  /** The pen of the scale lines. */
  readonly scalePen: string;
}

/** The first sheet's own look. */
export const CHECK_FIRST: CheckStyle = {
  title: 'Print this first, at 100 %',
  intro: 'No scaling, no “fit to page”. Measure before you print the rest.',
  scalePen: 'scale',
};

/**
 * Scale lines to measure, the map, the steps and the settings, set into `area`; what does not fit goes on to further
 * pages with the same area. One list of items a page.
 */
export function checkContent(
  facts: CheckFacts,
  map: MapPlan | undefined,
  area: Box,
  style: CheckStyle,
): readonly (readonly Item[])[] {
  const { items, pieces, options } = madeIn(facts, map, area, style);
  const flowed = (count: number) => flow(pieces(count), options).pages;
  // It says how many pages there are, itself among them.
  const alone = flowed(1);
  const pages = alone.length === 1 ? alone : flowed(alone.length);
  return pages.map((page, i) => (i === 0 ? [...items, ...page.items] : page.items));
}

/** Whether all of it stands in `area`. */
export function holdsCheck(facts: CheckFacts, area: Box, style: CheckStyle): boolean {
  const { pieces, options } = madeIn(facts, undefined, area, style);
  return isOnePage(pieces(1), options);
}

function madeIn(facts: CheckFacts, map: MapPlan | undefined, area: Box, style: CheckStyle) {
  const { fonts } = facts.options;
  const head = header(facts, area.width, style);
  const top = area.y + head.height + 3;
  const rest = box(area.x, top, area.width, Math.max(0, bottom(area) - top));
  const figure = scaleFigure(rest.width, rest.height, style.scalePen);
  const inCorner = figure === undefined || map === undefined ? undefined : mapInCorner(map, figure, fonts);
  const items: readonly Item[] = [
    ...moved(head.items, area.x, area.y),
    ...(figure === undefined ? [] : moved(figure.items, rest.x, rest.y)),
    ...(inCorner === undefined ? [] : moved(inCorner.items, rest.x, rest.y)),
  ];
  const entries = (first: number): readonly Entry[] => [
    ...(figure === undefined ? [] : meaning(figure.mm, figure.inches, facts)),
    ...(map === undefined || inCorner !== undefined ? [] : largeMap(map, area, fonts)),
    ...usage(facts),
    ...settings(facts, first),
  ];
  const [first, next] = [columnsBeside(rest, figure), columnsIn(area)];
  return {
    items,
    pieces: (count: number) => piecesOf(entries(count), fonts),
    options: { columns: (page: number) => (page === 0 ? first : next) },
  };
}

function header({ work: { drawing }, options }: CheckFacts, width: number, { title, intro }: CheckStyle): Block {
  const { fonts } = options;
  const back = drawing.view === 'back' ? ', seen from the BACK' : drawing.view === 'face' ? ', seen from the FACE' : '';
  const { head } = options;
  const due = head?.due === undefined ? '' : `, ${head.due}`;
  const lines = [intro, `${titleOf(drawing.title, head)}${back}${due}`].map((text) =>
    paragraph(text, width, CLEAR, fonts),
  );
  return stacked([headline(title, width, NAME, fonts), stacked(lines, 0.8)], 1.6);
}

/** The map in the free corner between the scale lines, where its names can be read there. */
function mapInCorner(map: MapPlan, figure: ScaleFigure, fonts: Fonts): Block | undefined {
  const { inner } = figure;
  const caption = paragraph(map.caption, inner.width, TEXT, fonts);
  const room = { width: inner.width, height: inner.height - caption.height - 2 };
  if (room.width < 40 || room.height < 40) return undefined;
  const small = assemblyMap(map, room, fonts);
  if (!small.isNamed) return undefined;
  return joined(figure, [
    [small, { x: inner.x + (inner.width - small.width) / 2, y: inner.y }],
    [caption, { x: inner.x, y: inner.y + small.height + 2 }],
  ]);
}

/** A map that is too fine for the corner, as wide as a column. */
function largeMap(map: MapPlan, area: Box, fonts: Fonts): readonly Entry[] {
  const { width } = columnsIn(area)[0]!;
  return [
    { kind: 'heading', text: 'Map' },
    { kind: 'figure', make: () => assemblyMap(map, { width, height: area.height - 10 }, fonts) },
    { kind: 'text', text: map.caption },
  ];
}

/** Columns of a width that is read easily. */
function columnsIn(area: Box): readonly Box[] {
  return columnsOf(area, Math.max(1, Math.floor((area.width + GAP) / (COLUMN + GAP))), GAP);
}

/** The column below the figure, then those beside it: each is read to its end before the next begins. */
function columnsBeside(rest: Box, figure: ScaleFigure | undefined): readonly Box[] {
  if (figure === undefined) return columnsIn(rest);
  const left = rest.x + figure.width + GAP;
  const beside = box(left, rest.y, right(rest) - left, rest.height);
  const top = rest.y + figure.height + 4;
  const below = { ...rest, y: top, height: Math.max(0, bottom(rest) - top) };
  if (beside.width < NARROWEST) return columnsIn(below);
  const count = Math.max(1, Math.floor((beside.width + GAP) / (BESIDE + GAP)));
  const tall = columnsOf(beside, count, GAP);
  return below.height < SHALLOWEST ? tall : [{ ...below, width: figure.width }, ...tall];
}
