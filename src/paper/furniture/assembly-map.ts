import type { Fact, FullScale } from '../../drawing/full-scale.ts';
import type { Drawing, Item, LineItem, PathItem } from '../../drawing/model.ts';
import { turnedItem } from '../../drawing/turned.ts';
import type { Fonts } from '../../fonts/model.ts';
import { type Box, bottom, box, overlaps, right } from '../../geometry/box.ts';
import { type Path, polygon, type Segment } from '../../geometry/path.ts';
import type { Point, Size } from '../../geometry/point.ts';
import type { Block } from '../../text/block.ts';
import { capHeight, set, widthOf } from '../../text/line.ts';
import { FINE_BOLD, SIGN, type Style, stepsDown, TEXT } from '../../text/styles.ts';
import { type Orientation, turnBox, turnPoint } from '../orientation.ts';

/** A sheet on the map: what of it is in sight once all are joined, turned space. */
export interface MapSheet {
  readonly name: string;
  readonly box: Box;
  /** Nothing is drawn there, so it is not printed. */
  readonly skipped: boolean;
}

export interface MapPlan {
  readonly work: Pick<FullScale, 'drawing' | 'facts'>;
  readonly orientation: Orientation;
  readonly sheets: readonly MapSheet[];
  /** What the map shows, in words. */
  readonly caption: string;
}

/** What the map numbers, and how large the numbers are. */
const FACT = TEXT;
/** Room for half the pen of the outermost lines. */
const EDGE = 0.2;
/** Shorter lines than this, mm on the map, only clutter it. */
const SHORT = 1.2;

/** Every sheet as it lies, skipped ones greyed, the drawing in small behind them, its facts numbered as in the list. */
export function assemblyMap(
  { work: { drawing, facts }, orientation, sheets }: Omit<MapPlan, 'caption'>,
  within: Size,
  fonts: Fonts,
): Block & { readonly isNamed: boolean } {
  const whole = turnBox(box(0, 0, orientation.width, orientation.height), orientation);
  const all = [...sheets.map((sheet) => sheet.box), whole];
  const [x, y] = [Math.min(...all.map((b) => b.x)), Math.min(...all.map((b) => b.y))];
  const extent = { width: Math.max(...all.map(right)) - x, height: Math.max(...all.map(bottom)) - y };
  const k = Math.min((within.width - 2 * EDGE) / extent.width, (within.height - 2 * EDGE) / extent.height);
  const at = (p: Point): Point => ({ x: EDGE + (p.x - x) * k, y: EDGE + (p.y - y) * k });
  const small = (b: Box): Box => ({ ...at(b), width: b.width * k, height: b.height * k });

  const items: Item[] = [];
  const skippedBoxes = sheets.flatMap((sheet) => (sheet.skipped ? [sheet.box] : []));
  for (const area of joined(skippedBoxes)) items.push({ kind: 'path', fill: 0.86, paths: [outline(small(area))] });
  items.push(...miniature(drawing, orientation, at, k));
  for (const sheet of sheets) {
    if (!sheet.skipped) items.push({ kind: 'path', pen: 'thin', paths: [outline(small(sheet.box))] });
  }
  const named = nameStyle(sheets, k, fonts);
  const style = named ?? FINE_BOLD;
  // Sheets on corners lie over one another, and lines to be measured run through all of them: each word takes the first free spot.
  // Numbers first: they are bound to their lines, names only to their sheets.
  const taken: Box[] = [];
  const numbers = facts.flatMap((fact, i) =>
    factItems(fact, i + 1, (p) => at(turnPoint(p, orientation)), taken, fonts),
  );
  for (const { name, box: b, skipped } of sheets) {
    const area = small(b);
    const [wide, high] = [widthOf(name, style, fonts), capHeight(style, fonts)];
    if (skipped || wide + 0.4 > area.width || high + 0.4 > area.height) continue;
    const patch = firstFree(namePatches(area, wide + 1, high + 1), taken);
    taken.push(patch);
    items.push(
      { kind: 'path', fill: 1, paths: [outline(patch)] },
      set(name, patch.x + 0.5, patch.y + 0.5 + high, style),
    );
  }
  items.push(...numbers);
  return {
    width: extent.width * k + 2 * EDGE,
    height: extent.height * k + 2 * EDGE,
    items,
    isNamed: named !== undefined,
  };
}

/** The largest style in which every name has room to spare on its sheet; none where not even the finest has. */
function nameStyle(sheets: readonly MapSheet[], k: number, fonts: Fonts): Style | undefined {
  return stepsDown(SIGN).find((style) =>
    sheets.every(
      ({ name, box: b, skipped }) =>
        skipped || (style.size <= 0.5 * b.height * k && widthOf(name, style, fonts) <= 0.8 * b.width * k),
    ),
  );
}

/** Boxes that lie side by side in a row as one, and then rows of the same extent that lie below each other. */
function joined(boxes: readonly Box[]): readonly Box[] {
  const rows: Box[] = [];
  for (const b of boxes) {
    const last = rows.at(-1);
    const goesOn = last !== undefined && last.y === b.y && last.height === b.height && meet(right(last), b.x);
    if (goesOn) rows[rows.length - 1] = { ...last, width: right(b) - last.x };
    else rows.push(b);
  }
  const areas: Box[] = [];
  for (const b of rows) {
    const above = areas.findLastIndex((a) => meet(a.x, b.x) && meet(right(a), right(b)) && meet(bottom(a), b.y));
    if (above < 0) areas.push(b);
    else areas[above] = { ...areas[above]!, height: bottom(b) - areas[above]!.y };
  }
  return areas;
}

const meet = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6;

/** Shares of what is left of a sheet beside its name: at its top left as long as that is free. */
const PLACES = [0, 0.5, 1, 0.25, 0.75];

/** From the top left of a sheet on. */
function namePatches({ x, y, width, height }: Box, wide: number, high: number): readonly Box[] {
  const [spareX, spareY] = [Math.max(0, width - wide - 0.8), Math.max(0, height - high - 0.8)];
  return PLACES.flatMap((down) =>
    PLACES.map((along) => box(x + 0.4 + along * spareX, y + 0.4 + down * spareY, wide, high)),
  );
}

const firstFree = (patches: readonly Box[], taken: readonly Box[]): Box =>
  patches.find((patch) => !taken.some((other) => overlaps(patch, other))) ?? patches[0]!;

/** Of half of a number's patch, mm. */
const HALF = 1.5;
/** How many spots along its line a number tries. */
const SPOTS = 40;

/** The line that a fact measures, with its number on a white patch somewhere along it. */
function factItems(
  { from, to }: Fact,
  number: number,
  at: (p: Point) => Point,
  taken: Box[],
  fonts: Fonts,
): readonly Item[] {
  const [a, b] = [at(from), at(to)];
  // Facts along the same line keep their numbers apart.
  const patches = Array.from({ length: SPOTS }, (_, i): Box => {
    const part = i === 0 ? 0.2 + ((number * 0.11) % 0.66) : 0.04 + (0.92 * (i - 1)) / (SPOTS - 2);
    const spot = { x: a.x + (b.x - a.x) * part, y: a.y + (b.y - a.y) * part };
    return box(spot.x - HALF, spot.y - HALF, 2 * HALF, 2 * HALF);
  });
  const patch = firstFree(patches, taken);
  taken.push(patch);
  return [
    { kind: 'line', pen: 'fact', from: a, to: b },
    { kind: 'path', fill: 1, paths: [outline(patch)] },
    set(`${number}`, patch.x + HALF, patch.y + HALF + capHeight(FACT, fonts) / 2, FACT, 'middle'),
  ];
}

function outline(b: Box): Path {
  return polygon([
    { x: b.x, y: b.y },
    { x: right(b), y: b.y },
    { x: right(b), y: bottom(b) },
    { x: b.x, y: bottom(b) },
  ]);
}

/** The drawing's lines in small: solid ones strong, the others faint. */
function miniature(drawing: Drawing, orientation: Orientation, at: (p: Point) => Point, k: number): readonly Item[] {
  const items: Item[] = [];
  for (const item of drawing.groups.flatMap((group) => (group.shown ? group.items : []))) {
    if ((item.kind !== 'line' && item.kind !== 'path') || item.pen === undefined) continue;
    const pen = drawing.pens[item.pen]?.dash.length === 0 ? 'strong' : 'faint';
    if (item.kind === 'line') {
      if (k * Math.hypot(item.to.x - item.from.x, item.to.y - item.from.y) < SHORT) continue;
      const turned = turnedHere(item, orientation) as LineItem;
      items.push({ kind: 'line', pen, from: at(turned.from), to: at(turned.to) });
    } else {
      const turned = turnedHere(item, orientation) as PathItem;
      items.push({ kind: 'path', pen, paths: turned.paths.map((path) => movedPath(path, at)) });
    }
  }
  return items;
}

function turnedHere(item: Item, { rotation, width, height }: Orientation): Item {
  switch (rotation) {
    case 0:
      return item;
    case 90:
      return turnedItem(item, 90, { x: height, y: 0 });
    case 180:
      return turnedItem(item, 180, { x: width, y: height });
    case 270:
      return turnedItem(item, 270, { x: 0, y: width });
    default: {
      const never: never = rotation;
      throw new TypeError(`a drawing is turned by 0, 90, 180 or 270 degrees, not ${String(never)}`);
    }
  }
}

/** A path under a map that keeps shapes: the same scale both ways. */
function movedPath(path: Path, at: (p: Point) => Point): Path {
  const segments = path.segments.map((s): Segment => {
    switch (s.kind) {
      case 'line':
        return { kind: 'line', to: at(s.to) };
      case 'arc':
        return { ...s, to: at(s.to), centre: at(s.centre) };
      case 'cubic':
        return { kind: 'cubic', c1: at(s.c1), c2: at(s.c2), to: at(s.to) };
      default: {
        const never: never = s;
        throw new TypeError(`unknown segment ${JSON.stringify(never)}`);
      }
    }
  });
  return { ...path, start: at(path.start), segments };
}
