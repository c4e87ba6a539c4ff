import { itemBox } from '../drawing/bounds.ts';
import type { Drawing } from '../drawing/model.ts';
import { coverBoxes } from '../drawing/touches.ts';
import { type Box, box } from '../geometry/box.ts';
import type { MapPlan, MapSheet } from './assembly-map.ts';
import { crossesOf } from './crosses.ts';
import type { LayoutOptions } from './options.ts';
import { type Cell, cellAt, lapX, lapY, nameOf, type Plan, windowOf } from './plan.ts';
import { Room } from './room.ts';
import type { Edge, Join } from './seam-marks.ts';
import { seamsOf } from './seams.ts';
import { type MadeSheet, sheetPage } from './sheet-page.ts';
import { type Turn, turnBox } from './turn.ts';
import { CURVE_STEP } from './whole.ts';

/** Everything of a drawing, the parts that are left out unless asked for too, as boxes in turned space. */
export function inTheWay(
  drawing: Drawing,
  turn: Turn,
): { readonly words: readonly Box[]; readonly lines: readonly Box[] } {
  const words: Box[] = [];
  const lines: Box[] = [];
  for (const item of drawing.groups.flatMap((group) => group.items)) {
    if (item.kind === 'line' || item.kind === 'path') {
      lines.push(...coverBoxes(item, drawing.pens, CURVE_STEP).map((b) => turnBox(b, turn)));
    } else {
      const around = itemBox(item, drawing.pens);
      if (around !== undefined) words.push(turnBox(around, turn));
    }
  }
  return { words, lines };
}

/** The sheets of a plan as pages, row by row, numbered from `first`. */
export function wholePages(drawing: Drawing, plan: Plan, options: LayoutOptions, first: number): readonly MadeSheet[] {
  const { turn } = plan;
  const { words, lines } = inTheWay(drawing, turn);
  const room = new Room(words, lines);
  const whole = turnBox(box(0, 0, drawing.width, drawing.height), turn);
  const joins = new Map<Cell, Join[]>(plan.cells.map((cell) => [cell, []]));
  const join = (cell: Cell, edge: Edge, at: number, neighbour: Cell, crosses: Join['crosses']) =>
    joins.get(cell)!.push({ edge, at, neighbour: nameOf(neighbour), crosses });
  for (const seam of seamsOf(plan)) {
    const crosses = crossesOf(seam, plan, whole, room);
    const [before, behind] = seam.kind === 'beside' ? (['right', 'left'] as const) : (['bottom', 'top'] as const);
    join(seam.first, before, seam.at, seam.second, crosses);
    join(seam.second, behind, seam.at, seam.first, crosses);
  }
  return plan.cells.map((cell, i) =>
    sheetPage(
      {
        sheet: plan.sheet,
        turn,
        window: windowOf(plan, cell),
        joins: joins.get(cell)!,
        label: {
          name: nameOf(cell),
          number: i + 1,
          of: plan.cells.length,
          title: drawing.title,
          view: drawing.view,
          ...(options.printer === undefined ? {} : { printer: options.printer }),
        },
        words,
        lines,
      },
      first + i,
    ),
  );
}

/** Every sheet of the grid as far as its join lines, and to its own edges where it has no neighbour. */
export function mapOf(drawing: Drawing, plan: Plan): MapPlan {
  const sheets: MapSheet[] = [];
  for (let row = 0; row < plan.rows; row++) {
    for (let column = 0; column < plan.columns; column++) {
      const cell = { row, column };
      const window = windowOf(plan, cell);
      const [halfX, halfY] = [lapX(plan) / 2, lapY(plan) / 2];
      const [left, top] = [column === 0 ? 0 : halfX, row === 0 ? 0 : halfY];
      const width = window.width - left - (column === plan.columns - 1 ? 0 : halfX);
      const height = window.height - top - (row === plan.rows - 1 ? 0 : halfY);
      const skipped = cellAt(plan, row, column) === undefined;
      sheets.push({ name: nameOf(cell), box: box(window.x + left, window.y + top, width, height), skipped });
    }
  }
  return { drawing, turn: plan.turn, sheets };
}
