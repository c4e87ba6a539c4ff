import { drawnBox, shownItems } from '../drawing/bounds.ts';
import type { Drawing } from '../drawing/model.ts';
import { touches } from '../drawing/touches.ts';
import type { Sheet } from './area.ts';
import { type Cell, type Plan, windowOf } from './plan.ts';
import { type Turn, turnBox, turnedBack } from './turn.ts';

/** A regular grid that begins at the drawing's top left. */
export function plainPlan(drawing: Drawing, sheet: Sheet, lap: number): Plan {
  const turn: Turn = { rotation: 0, width: drawing.width, height: drawing.height };
  const drawn = turnBox(drawnBox(drawing) ?? { x: 0, y: 0, width: drawing.width, height: drawing.height }, turn);
  const { width, height } = sheet.area;
  const [pitchX, pitchY] = [width - lap, height - lap];
  const columns = Math.max(1, Math.ceil((drawn.width - lap) / pitchX - 1e-9));
  const rows = Math.max(1, Math.ceil((drawn.height - lap) / pitchY - 1e-9));
  const empty: Plan = { sheet, turn, x: drawn.x, y: drawn.y, pitchX, pitchY, width, height, rows, columns, cells: [] };
  const cells: Cell[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const shown = turnBox(windowOf(empty, { row, column }), turnedBack(turn));
      if (shownItems(drawing).some((item) => touches(item, shown, drawing.pens))) cells.push({ row, column });
    }
  }
  return { ...empty, cells };
}
