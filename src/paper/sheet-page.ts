import { itemBox } from '../drawing/bounds.ts';
import type { Frame } from '../drawing/document.ts';
import type { Drawing, Item } from '../drawing/model.ts';
import type { Fonts } from '../fonts/model.ts';
import { type Box, bottom, box, contains, overlaps, right } from '../geometry/box.ts';
import type { Point } from '../geometry/point.ts';
import { type Block, moved } from '../text/block.ts';
import { type Corner, outwardsFrom, placesFrom, type Spots } from '../text/places.ts';
import { Room } from '../text/room.ts';
import type { Sheet } from './area.ts';
import { furnitureFrames } from './furniture/frame.ts';
import { SHEET_PENS } from './furniture/pens.ts';
import { rulersOf } from './furniture/rulers.ts';
import { crossBox, crossItems, type Edge, type Join, joinLine, neighbourBlock } from './furniture/seam-marks.ts';
import { labelBlocks, type SheetLabel, uncorrectedBlock } from './furniture/sheet-label.ts';
import type { CrossMark, LaidPage, Part } from './model.ts';
import { type Orientation, partOf, turnBox, turnedBack, turnPoint } from './orientation.ts';

/** One sheet of a pattern, before it is a page. */
export interface SheetPlan {
  readonly drawing: Drawing;
  /** Words that stand on this sheet, as large as the drawing; undefined where the drawing has its own. */
  readonly ownWords?: Drawing;
  readonly sheet: Sheet;
  readonly orientation: Orientation;
  /** What it shows, turned space. */
  readonly window: Box;
  /** Its seams; `at` and the crosses in turned space. */
  readonly joins: readonly Join[];
  readonly label: SheetLabel;
  /** Everything of the drawing but the sheet's own words, turned space. */
  readonly words: readonly Box[];
  readonly lines: readonly Box[];
  /** Words that stand on the sheet besides, page mm. */
  readonly note?: { readonly box: Box; readonly items: readonly Item[]; readonly pens: Drawing['pens'] };
}

export interface MadeSheet {
  readonly page: LaidPage;
  /** What found no place clear of the drawing's words. */
  readonly crowded: readonly string[];
}

/** Between the join line and words beside it. */
const OFF_JOIN = 1.2;
const STEP = 3;

/** The page of one sheet, with everything that it needs to be found, measured and joined. */
export function sheetPage(plan: SheetPlan): MadeSheet {
  const { sheet, orientation, window } = plan;
  const { fonts } = plan.label;
  const { area } = sheet;
  const by: Point = { x: area.x - window.x, y: area.y - window.y };
  const toPage = ({ x, y }: Point): Point => ({ x: x + by.x, y: y + by.y });
  const near = (boxes: readonly Box[]): readonly Box[] =>
    boxes.filter((b) => overlaps(b, window)).map((b) => box(b.x + by.x, b.y + by.y, b.width, b.height));
  const room = new Room(near([...plan.words, ...wordBoxes(plan)]), near(plan.lines));
  const under: Item[] = [];
  const over: Item[] = [];
  const crosses: CrossMark[] = [];
  const crowded: string[] = [];
  const joins = plan.joins.map((join) => ({ ...join, at: join.at + (isUpright(join.edge) ? by.x : by.y) }));

  if (plan.note !== undefined) {
    room.take(plan.note.box);
    under.push(...plan.note.items);
  }
  for (const join of joins) {
    under.push(joinLine(join, area));
    for (const { name, at } of join.crosses) {
      const onPage = toPage(at);
      over.push(...crossItems(name, onPage, join.edge, area, fonts));
      room.take(crossBox(name, onPage, join.edge, fonts));
      crosses.push({ name, onPage, inDrawing: turnPoint(at, turnedBack(orientation)) });
    }
  }
  const set = (what: string, blocks: readonly (() => Block)[], places: (block: Block) => Spots): void => {
    for (const make of blocks) {
      const block = make();
      // The last of them may lie on lines.
      const clear = room.best(block, places(block), make === blocks.at(-1) ? Number.POSITIVE_INFINITY : 0);
      if (clear === undefined) continue;
      room.take(clear);
      under.push(...moved(block.items, clear.x, clear.y));
      return;
    }
    crowded.push(what);
  };
  const kept = keptArea(area, joins);
  for (const join of joins) {
    set('the name of a neighbour', [() => neighbourBlock(join, fonts)], (block) => besideJoin(block, join, area, kept));
  }
  const from = (corner: Corner) => (block: Block) => placesFrom(corner, block, kept, STEP);
  set('its name', labelBlocks(plan.label), from('bottom left'));
  const rulers = rulersOf(fonts);
  set('a ruler in x', rulers.level, from('bottom right'));
  set('a ruler in y', rulers.upright, from('top right'));
  // Last, so that nothing gives way to it: where it finds no room, the first sheet says it.
  const uncorrected = uncorrectedBlock(plan.label);
  const clear = uncorrected === undefined ? undefined : room.best(uncorrected, from('bottom left')(uncorrected), 0);
  if (uncorrected !== undefined && clear !== undefined) under.push(...moved(uncorrected.items, clear.x, clear.y));

  const { name, place } = plan.label;
  const pens = { ...SHEET_PENS, ...plan.note?.pens };
  const part = partOf(window, orientation, area);
  const page: LaidPage = {
    name,
    label: name,
    outline: [place === undefined ? name : `${name}, ${place}`],
    paper: sheet.paper,
    rotation: orientation.rotation,
    part,
    scale: sheet.scale,
    frames: [
      ...furnitureFrames('under', sheet.paper, under, pens),
      partFrame(plan.drawing, part, orientation),
      ...wordsFrames(plan.ownWords, part, orientation, fonts),
      ...furnitureFrames('over', sheet.paper, over, pens),
    ],
    crosses,
    neighbours: Object.fromEntries(joins.map(({ edge, neighbour }) => [edge, neighbour])),
  };
  return { page, crowded };
}

function partFrame(drawing: Drawing, { pageX, pageY, ...clip }: Part, { rotation }: Orientation): Frame {
  return { drawing, clip, turn: rotation, at: { x: pageX, y: pageY } };
}

/** Nothing may touch the words of a sheet, nor their arrows. */
function wordBoxes({ ownWords, orientation, label }: SheetPlan): readonly Box[] {
  if (ownWords === undefined) return [];
  const { groups, pens } = ownWords;
  return groups
    .flatMap(({ items }) => items.flatMap((item) => itemBox(item, pens, label.fonts) ?? []))
    .map((b) => turnBox(b, orientation));
}

/** The words of a sheet where they lie; clipped only if something of them, a leader, runs on to another sheet. */
function wordsFrames(words: Drawing | undefined, part: Part, orientation: Orientation, fonts: Fonts): readonly Frame[] {
  if (words === undefined || words.groups.length === 0) return [];
  const frame = partFrame(words, part, orientation);
  const inside = words.groups.every(({ items }) =>
    items.every((item) => contains(part, itemBox(item, words.pens, fonts) ?? part)),
  );
  if (!inside) return [frame];
  const { x, y } = turnBox(part, orientation);
  return [{ drawing: words, turn: frame.turn, at: { x: frame.at.x - x, y: frame.at.y - y } }];
}

const isUpright = (edge: Edge): boolean => edge === 'left' || edge === 'right';

/** What of a sheet stays in sight once it is joined: up to its join lines. */
export function keptArea(area: Box, joins: readonly Join[]): Box {
  const at = (edge: Edge, outer: number) => joins.find((join) => join.edge === edge)?.at ?? outer;
  const [left, top] = [at('left', area.x - OFF_JOIN) + OFF_JOIN, at('top', area.y - OFF_JOIN) + OFF_JOIN];
  const [end, foot] = [
    at('right', right(area) + OFF_JOIN) - OFF_JOIN,
    at('bottom', bottom(area) + OFF_JOIN) - OFF_JOIN,
  ];
  return box(left, top, end - left, foot - top);
}

/** Along a join line, its middle first: beyond the line, where the sheets lie double, then on this side of it. */
function besideJoin(block: Block, { edge, at }: Join, area: Box, kept: Box): Spots {
  const upright = isUpright(edge);
  const depth = upright ? block.width : block.height;
  const far =
    edge === 'left'
      ? at - area.x
      : edge === 'right'
        ? right(area) - at
        : edge === 'top'
          ? at - area.y
          : bottom(area) - at;
  const out = edge === 'left' || edge === 'top' ? -1 : 1;
  const strip = at + (out * far) / 2;
  const inside = at - out * (OFF_JOIN + depth / 2);
  // Never over a join line that it meets.
  const [low, high] = upright ? [kept.y, bottom(kept) - block.height] : [kept.x, right(kept) - block.width];
  const ideal = upright ? area.y + (area.height - block.height) / 2 : area.x + (area.width - block.width) / 2;
  const alongs = outwardsFrom(ideal, low, high, 2);
  return (isTaken) =>
    (far >= depth + 1 ? [strip, inside] : [inside]).some((middle) =>
      alongs.some((along) => (upright ? isTaken(middle - depth / 2, along) : isTaken(along, middle - depth / 2))),
    );
}
