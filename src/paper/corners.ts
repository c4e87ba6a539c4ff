import type { FullScale } from '../drawing/full-scale.ts';
import type { Fonts } from '../fonts/model.ts';
import { type Box, bottom, box, centre, grown, overlaps, right, union } from '../geometry/box.ts';
import { distance, type Point, type Size } from '../geometry/point.ts';
import { type Printing, type Sheet, sheetOf } from './area.ts';
import { type Orientation, turnBox } from './orientation.ts';
import type { Plan } from './plan.ts';
import { fewestSheets } from './search/search.ts';
import { seenOf } from './search/seen.ts';
import { orientationOf, planOf, type Turned, turned } from './search/whole.ts';

/** Sheets that together show one corner of the board, or several corners that lie near each other. */
export interface CornerGroup {
  /** `top left corner, as seen here`: in the drawing upright. */
  readonly label: string;
  /** One sheet mostly; more are joined like the sheets of a whole pattern. */
  readonly plan: Plan;
}

/** Paper beyond the board's edge on a corner sheet, where there is room. */
const BEYOND = 8;
/** Around what must be seen. */
const AROUND = 2;

const CORNERS = ['top left', 'top right', 'bottom right', 'bottom left'] as const;

/** Every way to put the four corners on sheets together: all, in pairs of neighbours, each alone. */
const GROUPINGS: readonly (readonly (readonly number[])[])[] = [
  [[0, 1, 2, 3]],
  [
    [0, 1],
    [2, 3],
  ],
  [
    [0, 3],
    [1, 2],
  ],
  [[0, 1], [2], [3]],
  [[0], [1], [2, 3]],
  [[0, 3], [1], [2]],
  [[0], [1, 2], [3]],
  [[0], [1], [2], [3]],
];

/**
 * The fewest sheets that show every corner of the board with the lines to cut and the ticks that belong to it. A
 * drawing's boxes of corners and ticks belong to the nearest corner of its board; its parts, where it has some, may also
 * be shared out whole, and no corner without any is shown then. All sheets lie one way up.
 */
export function cornerGroups(
  work: FullScale,
  board: Box,
  paper: Size,
  lap: number,
  options: Printing & { readonly fonts: Fonts },
): readonly CornerGroup[] {
  return fewestGroups(work, board, paper, options, (corner, region, { rotation }, sheet) =>
    severalSheets(corner, region, turned(work, rotation, options.fonts), sheet, lap),
  )!;
}

/** How many sheets that takes where none has to be joined to another; undefined where some corner is too deep for one. */
export function cornerSheets(work: FullScale, board: Box, paper: Size, options: Printing): number | undefined {
  const groups = fewestGroups(work, board, paper, options, () => undefined);
  return groups === undefined ? undefined : sheetsOf(groups);
}

type Deep = (corner: number, region: Box, orientation: Orientation, sheet: Sheet) => CornerGroup | undefined;

/** `deep` serves the corners that are too deep for one sheet. */
function fewestGroups(
  work: FullScale,
  board: Box,
  paper: Size,
  options: Printing,
  deep: Deep,
): readonly CornerGroup[] | undefined {
  let best: readonly CornerGroup[] | undefined;
  const orientations = ([0, 90] as const).map((rotation) => orientationOf(work.drawing, rotation));
  const ways = [
    ...orientations.map((orientation) => ({
      orientation,
      regions: cornerRegions(work, board, orientation),
      whole: false,
    })),
    ...orientations.flatMap((orientation) =>
      partRegions(work, board, orientation).map((regions) => ({ orientation, regions, whole: true })),
    ),
  ];
  for (const { orientation, regions, whole } of ways) {
    const edge = turnBox(board, orientation);
    for (const sideways of paper.width === paper.height ? [false] : [false, true]) {
      const sheet = sheetOf(paper, options, sideways);
      const single = regions.map((region, i) => region && oneSheet([i], region, orientation, edge, sheet));
      // A corner too deep for a sheet takes two at least. Nor are whole parts joined from sheets where others, that lie
      // on the board by themselves and are truer, show the corners of all.
      const least = 2 * regions.filter((region, i) => region !== undefined && single[i] === undefined).length;
      if (whole && best !== undefined && least > 0 && (least >= sheetsOf(best) || !isJoined(best))) continue;
      const alone = regions.map((region, i) => region && (single[i] ?? deep(i, region, orientation, sheet)));
      for (const grouping of groupingsOf(regions)) {
        const groups = grouping.map((corners) =>
          corners.length === 1
            ? alone[corners[0]!]
            : oneSheet(corners, union(corners.flatMap((i) => regions[i] ?? [])), orientation, edge, sheet),
        );
        if (groups.includes(undefined)) continue;
        const all = groups as readonly CornerGroup[];
        if (best === undefined || sheetsOf(all) < sheetsOf(best)) best = all;
      }
    }
  }
  return best;
}

/** What must be seen of each corner, turned space, in the order of CORNERS; of some none. */
type Regions = readonly (Box | undefined)[];

/** Ways to group the corners of which something must be seen. */
const groupingsOf = (regions: Regions): typeof GROUPINGS =>
  GROUPINGS.map((grouping) =>
    grouping.map((corners) => corners.filter((i) => regions[i] !== undefined)).filter((corners) => corners.length > 0),
  );

/** Corners that parts may be shared out among: by all four, by two neighbours, by one. */
const SHARING: readonly (readonly number[])[] = [[0, 1, 2, 3], [0, 1], [2, 3], [0, 3], [1, 2], [0], [1], [2], [3]];

/** What must be seen of each corner where parts are shared out whole, each with the nearest of some corners. */
function partRegions({ parts = [] }: FullScale, board: Box, orientation: Orientation): readonly Regions[] {
  const points = cornersOf(board);
  if (parts.length === 0) return [];
  return SHARING.map((corners) => {
    const shown: Box[][] = points.map(() => []);
    for (const part of parts) {
      const middle = centre(part);
      const nearest = corners.reduce((best, i) =>
        distance(points[i]!, middle) < distance(points[best]!, middle) ? i : best,
      );
      shown[nearest]!.push(part);
    }
    return shown.map((own, i) =>
      own.length === 0 ? undefined : turnBox(union([box(points[i]!.x, points[i]!.y, 0, 0), ...own]), orientation),
    );
  });
}

const cornersOf = (board: Box): readonly Point[] => [
  { x: board.x, y: board.y },
  { x: right(board), y: board.y },
  { x: right(board), y: bottom(board) },
  { x: board.x, y: bottom(board) },
];

const isJoined = (groups: readonly CornerGroup[]): boolean => groups.some(({ plan }) => plan.cells.length > 1);

export const sheetsOf = (groups: readonly CornerGroup[]): number =>
  groups.reduce((sum, { plan }) => sum + plan.cells.length, 0);

/** What must be seen of each corner, turned space, in the order of CORNERS in the drawing upright. */
function cornerRegions({ avoid }: FullScale, board: Box, orientation: Orientation): readonly Box[] {
  const points = cornersOf(board);
  const parts: Box[][] = points.map(({ x, y }) => [box(x, y, 0, 0)]);
  for (const { box: b, why } of avoid) {
    if (why !== 'corner' && why !== 'tick') continue;
    const middle = centre(b);
    const distances = points.map((p) => distance(p, middle));
    parts[distances.indexOf(Math.min(...distances))]!.push(b);
  }
  return parts.map((boxes) => turnBox(union(boxes), orientation));
}

/** A region on one sheet, with a little paper beyond the board's edge; undefined where it is too large. */
function oneSheet(
  corners: readonly number[],
  region: Box,
  orientation: Orientation,
  board: Box,
  sheet: Sheet,
): CornerGroup | undefined {
  const { width, height } = sheet.area;
  if (region.width + 2 * AROUND > width || region.height + 2 * AROUND > height) return undefined;
  const plan: Plan = {
    sheet,
    orientation,
    x: placed(region.x, right(region), board.x, right(board), width),
    y: placed(region.y, bottom(region), board.y, bottom(board), height),
    pitchX: width,
    pitchY: height,
    width,
    height,
    rows: 1,
    columns: 1,
    cells: [{ row: 0, column: 0 }],
  };
  return { label: labelOf(corners), plan };
}

/** The fewest sheets that show what is drawn in a corner too deep for one. */
function severalSheets(corner: number, region: Box, view: Turned, sheet: Sheet, lap: number): CornerGroup {
  const shown = grown(region, AROUND);
  const drawn = view.drawn.filter((b) => overlaps(b, shown)).map((b) => clipped(b, shown));
  const found = fewestSheets({ seen: seenOf(drawn, view.avoid), window: sheet.area, lap })!;
  return { label: labelOf([corner]), plan: planOf(found, sheet, view.orientation) };
}

/** `top left and top right corners, as seen here`. */
function labelOf(corners: readonly number[]): string {
  return `${corners.map((i) => CORNERS[i]!).join(' and ')} ${corners.length === 1 ? 'corner' : 'corners'}, as seen here`;
}

/** Where a window begins along one axis: a little beyond the board's edge, what is left over goes inwards. */
function placed(from: number, to: number, low: number, high: number, window: number): number {
  const spare = window - (to - from);
  const beyond = Math.min(BEYOND, spare / 2);
  const [atLow, atHigh] = [from <= low + 1e-9, to >= high - 1e-9];
  if (atLow && atHigh) return from - spare / 2;
  if (atLow) return from - beyond;
  return atHigh ? to + beyond - window : from - spare / 2;
}

function clipped(b: Box, within: Box): Box {
  const [x, y] = [Math.max(b.x, within.x), Math.max(b.y, within.y)];
  return box(x, y, Math.min(right(b), right(within)) - x, Math.min(bottom(b), bottom(within)) - y);
}
