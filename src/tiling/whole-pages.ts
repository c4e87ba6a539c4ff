import { itemBox } from '../drawing/bounds.ts';
import type { Drawing } from '../drawing/model.ts';
import { coverBoxes } from '../drawing/touches.ts';
import { type Box, box } from '../geometry/box.ts';
import { crossesOf } from './crosses.ts';
import type { LayoutOptions } from './options.ts';
import { type Cell, nameOf, type Plan, windowOf } from './plan.ts';
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
