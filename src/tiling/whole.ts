import { itemBox, shownItems } from '../drawing/bounds.ts';
import type { AvoidBox, Drawing } from '../drawing/model.ts';
import { coverBoxes } from '../drawing/touches.ts';
import type { Size } from '../geometry/point.ts';
import { type Sheet, sheetOf } from './area.ts';
import type { LayoutOptions } from './options.ts';
import type { Cell, Plan } from './plan.ts';
import { type Found, fewestSheets } from './search.ts';
import { type Turn, turnBox } from './turn.ts';

/** What a seam costs that runs through a box: no number of lesser ones outweighs a worse one. */
const WEIGHTS: Readonly<Record<AvoidBox['why'], number>> = { corner: 1e9, tick: 1e6, reading: 1e3, text: 1 };

/** Curves are held by boxes of this length, mm: a sheet that only such a box touches is not skipped. */
const CURVE_STEP = 4;

/** The drawing as it lies on the sheets: turned, with what is drawn and what seams keep off. */
export interface Turned {
  readonly turn: Turn;
  readonly drawn: ReturnType<typeof coverBoxes>;
  readonly avoid: readonly { readonly box: AvoidBox['box']; readonly weight: number }[];
}

export function turned(drawing: Drawing, rotation: Turn['rotation']): Turned {
  const turn: Turn = { rotation, width: drawing.width, height: drawing.height };
  return {
    turn,
    drawn: shownItems(drawing).flatMap((item) =>
      coverBoxes(item, drawing.pens, CURVE_STEP).map((b) => turnBox(b, turn)),
    ),
    avoid: drawing.avoid.map(({ box, why }) => ({ box: turnBox(box, turn), weight: WEIGHTS[why] })),
  };
}

/**
 * The grid with the fewest sheets over both orientations of the paper and the drawing upright or turned by a quarter.
 * Of equals: clear seams, then an upright drawing, then upright paper.
 */
export function wholePlan(
  drawing: Drawing,
  paper: Size,
  lap: number,
  options: Pick<LayoutOptions, 'margin' | 'printer'>,
): Plan {
  const tried: {
    readonly size: Size;
    readonly rotation: Turn['rotation'];
    readonly plan: Plan;
    readonly cost: number;
  }[] = [];
  for (const rotation of [0, 90] as const) {
    const view = turned(drawing, rotation);
    for (const sideways of paper.width === paper.height ? [false] : [false, true]) {
      const sheet = sheetOf(paper, options, sideways);
      const { width, height } = sheet.area;
      // A quarter turn of both is the same grid seen from its side.
      if (tried.some(({ size, rotation: r }) => r !== rotation && same(size.width, height) && same(size.height, width)))
        continue;
      const found = fewestSheets({ drawn: view.drawn, avoid: view.avoid, window: sheet.area, lap });
      tried.push({ size: sheet.area, rotation, cost: found.cost, plan: planOf(found, sheet, view.turn) });
    }
  }
  return tried.reduce((a, b) => {
    const fewer = b.plan.cells.length - a.plan.cells.length;
    return fewer < 0 || (fewer === 0 && b.cost < a.cost) ? b : a;
  }).plan;
}

const same = (a: number, b: number): boolean => Math.abs(a - b) < 1e-9;

/** Rows and columns counted from the first that holds a sheet. */
export function planOf(found: Found, sheet: Sheet, turn: Turn): Plan {
  const rows = found.cells.map(({ row }) => row);
  const columns = found.cells.map(({ column }) => column);
  const [top, left] = [Math.min(...rows), Math.min(...columns)];
  const cells: readonly Cell[] = found.cells.map(({ row, column }) => ({ row: row - top, column: column - left }));
  return {
    sheet,
    turn,
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

/** Whether a drawing has anything to show. */
export function isBlank(drawing: Drawing): boolean {
  return shownItems(drawing).every((item) => itemBox(item, drawing.pens) === undefined);
}
