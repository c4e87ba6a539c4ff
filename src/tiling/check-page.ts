import type { Item, Pen } from '../drawing/model.ts';
import { metrics, textWidth, wrap } from '../fonts/measure.ts';
import { type Box, bottom, box } from '../geometry/box.ts';
import { assemblyMap, type MapPlan, SMALLEST_NAME } from './assembly-map.ts';
import { type Block, shifted, words } from './block.ts';
import { type CheckFacts, drawingPen, meaning, settings, usage } from './check-words.ts';
import { columnsOf, type Entry, flow } from './flow.ts';
import type { Page } from './model.ts';
import { CHECK_PENS } from './pens.ts';
import { type ScaleFigure, scaleFigure } from './scale-figure.ts';

const GAP = 7;
/** A column narrower than this holds no sentence. */
const NARROWEST = 52;
const MAP_WORDS = 3;

/**
 * The first sheet: scale lines to measure before anything else is printed, the map, the settings and the steps. What
 * does not fit goes on to further pages. All of it is corrected for the printer as the sheets are, so that it tests
 * what they will be.
 */
export function checkPages(facts: CheckFacts, map: MapPlan | undefined): readonly Page[] {
  const { sheet } = facts;
  const { area } = sheet;
  const head = header(facts, area.width);
  const items: Item[] = [...shifted(head.items, area)];
  const top = area.y + head.height + 3;
  const rest = box(area.x, top, area.width, bottom(area) - top);
  const figure = scaleFigure(rest.width, rest.height, 'scale');
  if (figure !== undefined) items.push(...shifted(figure.items, rest));
  const inCorner = figure === undefined || map === undefined ? undefined : mapInCorner(map, figure);
  if (inCorner !== undefined) items.push(...shifted(inCorner.items, rest));

  const { mm, inches } = figure ?? { mm: 0, inches: 0 };
  const large = map === undefined || inCorner !== undefined ? [] : largeMap(map, area);
  const entries: readonly Entry[] = [
    ...(figure === undefined ? [] : meaning(mm, inches, facts.paperName, facts.options.printer)),
    ...large,
    ...usage(facts),
    ...settings(facts),
  ];
  const next = columnsOf(area, area.width >= 2 * 80 + GAP ? 2 : 1, GAP);
  const { pages } = flow(entries, { first: columnsBeside(rest, figure), next });
  const pens: Record<string, Pen> = { ...CHECK_PENS };
  for (const [name, pen] of Object.entries(facts.drawing.pens)) pens[drawingPen(name)] = pen;
  return pages.map(
    (flowed, i): Page => ({
      number: i + 1,
      name: i === 0 ? 'check' : i === 1 ? 'check 2' : `check ${i + 1}`,
      paper: sheet.paper,
      rotation: 0,
      scale: sheet.scale,
      under: i === 0 ? [...items, ...flowed] : flowed,
      over: [],
      pens,
    }),
  );
}

function header({ drawing }: CheckFacts, width: number): Block {
  const title = 'Print this first, at 100 %';
  const size = Math.min(9, width / textWidth(title, 'bold', 1));
  const items: Item[] = [words({ text: title, size, weight: 'bold' }, { x: 0, y: metrics('bold').capHeight * size })];
  let y = metrics('bold').capHeight * size + 1.2;
  const back = drawing.view === 'back' ? ', seen from the BACK' : drawing.view === 'face' ? ', seen from the FACE' : '';
  const lines = [
    ...wrap('No scaling, no “fit to page”. Measure before you print the rest.', 'regular', 4, width),
    ...wrap(`${drawing.title}${back}`, 'regular', 4, width),
  ];
  for (const line of lines) {
    y += 5.4;
    items.push(words({ text: line, size: 4 }, { x: 0, y }));
  }
  return { width, height: y + 1.5, items };
}

/** The map in the free corner between the scale lines, where its names can be read there. */
function mapInCorner(map: MapPlan, figure: ScaleFigure): Block | undefined {
  const { inner } = figure;
  const room = { width: inner.width, height: inner.height - caption(inner.width).height - 2 };
  if (room.width < 40 || room.height < 40) return undefined;
  const small = assemblyMap(map, room);
  if (small.nameSize < SMALLEST_NAME) return undefined;
  const { items } = caption(inner.width);
  const left = inner.x + (inner.width - small.width) / 2;
  return {
    width: figure.width,
    height: figure.height,
    items: [
      ...shifted(small.items, { x: left, y: inner.y }),
      ...shifted(items, { x: inner.x, y: inner.y + small.height + 2 }),
    ],
  };

  function caption(width: number): Block {
    const lines = wrap(map.caption, 'regular', MAP_WORDS, width);
    const pitch = MAP_WORDS * 1.25;
    return {
      width,
      height: lines.length * pitch,
      items: lines.map((line, i) =>
        words({ text: line, size: MAP_WORDS }, { x: 0, y: metrics('regular').capHeight * MAP_WORDS + i * pitch }),
      ),
    };
  }
}

/** A map that is too fine for the corner, as wide as a column. */
function largeMap(map: MapPlan, area: Box): readonly Entry[] {
  const width = area.width >= 2 * 80 + GAP ? (area.width - GAP) / 2 : area.width;
  return [
    { kind: 'heading', text: 'Map' },
    { kind: 'block', block: assemblyMap(map, { width, height: area.height - 40 }) },
    { kind: 'text', text: map.caption },
  ];
}

/** Columns around the figure: beside it, and below it. */
function columnsBeside(rest: Box, figure: ScaleFigure | undefined): readonly Box[] {
  if (figure === undefined) return columnsOf(rest, rest.width >= 2 * 80 + GAP ? 2 : 1, GAP);
  const beside = box(rest.x + figure.width + GAP, rest.y, rest.width - figure.width - GAP, figure.height);
  const below = box(rest.x, rest.y + figure.height + 4, rest.width, rest.height - figure.height - 4);
  const under = below.height < 20 ? [] : columnsOf(below, below.width >= 2 * 80 + GAP ? 2 : 1, GAP);
  if (beside.width < NARROWEST) return under.length === 0 ? [box(rest.x, bottom(rest), rest.width, 0)] : under;
  // A page on its side has room for whole columns beside the figure.
  if (beside.width >= NARROWEST * 2) {
    const tall = box(beside.x, rest.y, beside.width, rest.height);
    const own = box(rest.x, below.y, figure.width, below.height);
    return [...columnsOf(tall, beside.width >= 2 * 80 + GAP ? 2 : 1, GAP), ...(own.height < 20 ? [] : [own])];
  }
  return [beside, ...under];
}
