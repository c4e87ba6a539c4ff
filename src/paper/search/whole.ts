import type { AvoidBox, FullScale } from '../../drawing/full-scale.ts';
import type { Drawing } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import type { Box } from '../../geometry/box.ts';
import type { Size } from '../../geometry/point.ts';
import { once } from '../../problems/once.ts';
import { type Printing, type Sheet, sheetOf } from '../area.ts';
import { type Orientation, turnBox } from '../orientation.ts';
import type { Cell, Plan } from '../plan.ts';
import { coveringOf } from './covering.ts';
import { type Found, fewestSheets } from './search.ts';
import { seenOf } from './seen.ts';

/** What a seam costs that runs through a box: no number of lesser ones outweighs a worse one. */
const WEIGHTS: Readonly<Record<AvoidBox['why'], number>> = { corner: 1e9, tick: 1e6, reading: 1e3, text: 1 };

/** More sheets than anyone tapes together. */
export const MOST_SHEETS = 2000;

/** The drawing as it lies on the sheets: turned, with what is drawn and what seams keep off. */
export interface Turned {
  readonly orientation: Orientation;
  readonly drawn: readonly Box[];
  readonly avoid: readonly { readonly box: AvoidBox['box']; readonly weight: number }[];
}

export const orientationOf = ({ width, height }: Drawing, rotation: Orientation['rotation']): Orientation => ({
  rotation,
  width,
  height,
});

export function turned(
  { drawing, avoid }: Pick<FullScale, 'drawing' | 'avoid'>,
  rotation: Orientation['rotation'],
  fonts: Fonts,
): Turned {
  const orientation = orientationOf(drawing, rotation);
  return {
    orientation,
    drawn: coveringOf(drawing, fonts).shown.map((b) => turnBox(b, orientation)),
    avoid: avoid.map(({ box, why }) => ({ box: turnBox(box, orientation), weight: WEIGHTS[why] })),
  };
}

/**
 * The grid with the fewest sheets over both orientations of the paper and the drawing upright or turned by a quarter.
 * Undefined where it takes more sheets than `MOST_SHEETS`. Of equals: clear seams, then an upright drawing, then upright paper.
 */
export function wholePlan(
  work: Pick<FullScale, 'drawing' | 'avoid'>,
  paper: Size,
  lap: number,
  options: Printing & { readonly fonts: Fonts },
): Plan | undefined {
  const seen: { readonly window: Size; readonly rotation: Orientation['rotation'] }[] = [];
  let best: { readonly found: Found; readonly sheet: Sheet; readonly orientation: Orientation } | undefined;
  for (const rotation of [0, 90] as const) {
    const view = once(() => turned(work, rotation, options.fonts));
    const seenHere = once(() => seenOf(view().drawn, view().avoid));
    for (const sideways of paper.width === paper.height ? [false] : [false, true]) {
      const sheet = sheetOf(paper, options, sideways);
      const window = sheet.area;
      // A quarter turn of both is the same grid seen from its side.
      const known = seen.some((other) => other.rotation !== rotation && isOnItsSide(other.window, window));
      seen.push({ window, rotation });
      if (known) continue;
      const most = best?.found.cells.length ?? MOST_SHEETS;
      const found = fewestSheets({ seen: seenHere(), window, lap }, most);
      if (found !== undefined && (best === undefined || isBetter(found, best.found)))
        best = { found, sheet, orientation: view().orientation };
    }
  }
  return best === undefined ? undefined : planOf(best.found, best.sheet, best.orientation);
}

function isOnItsSide(a: Size, b: Size): boolean {
  return Math.abs(a.width - b.height) < 1e-9 && Math.abs(a.height - b.width) < 1e-9;
}

function isBetter(a: Found, b: Found): boolean {
  const sheets = a.cells.length - b.cells.length;
  const cost = a.cost - b.cost;
  return sheets < 0 || (sheets === 0 && (cost < 0 || (cost === 0 && a.laps > b.laps + 1e-6)));
}

/** Rows and columns counted from the first that holds a sheet. */
export function planOf(found: Found, sheet: Sheet, orientation: Orientation): Plan {
  const rows = found.cells.map(({ row }) => row);
  const columns = found.cells.map(({ column }) => column);
  const [top, left] = [Math.min(...rows), Math.min(...columns)];
  const cells: readonly Cell[] = found.cells.map(({ row, column }) => ({ row: row - top, column: column - left }));
  return {
    sheet,
    orientation,
    x: found.x + left * found.pitchX,
    y: found.y + top * found.pitchY,
    pitchX: found.pitchX,
    pitchY: found.pitchY,
    width: sheet.area.width,
    height: sheet.area.height,
    rows: Math.max(...rows) - top + 1,
    columns: Math.max(...columns) - left + 1,
    cells,
  };
}
