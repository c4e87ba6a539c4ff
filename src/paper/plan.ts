import { type Box, box } from '../geometry/box.ts';
import type { Sheet } from './area.ts';
import { sheetName } from './names.ts';
import type { Orientation } from './orientation.ts';

/** Row and column, from 0, of a sheet in the grid. */
export interface Cell {
  readonly row: number;
  readonly column: number;
}

/**
 * One regular grid of sheets over a turned drawing: sheet (row, column) shows the window of `width` × `height` whose
 * top left is `x + column·pitchX, y + row·pitchY`. Neighbours share a lap; the seam runs along its middle.
 */
export interface Plan {
  readonly sheet: Sheet;
  readonly orientation: Orientation;
  readonly x: number;
  readonly y: number;
  readonly pitchX: number;
  readonly pitchY: number;
  readonly width: number;
  readonly height: number;
  readonly rows: number;
  readonly columns: number;
  /** The sheets on which something is drawn that no other shows, row by row. */
  readonly cells: readonly Cell[];
}

export const lapX = (plan: Plan): number => plan.width - plan.pitchX;
export const lapY = (plan: Plan): number => plan.height - plan.pitchY;

export function windowOf(plan: Plan, { row, column }: Cell): Box {
  return box(plan.x + column * plan.pitchX, plan.y + row * plan.pitchY, plan.width, plan.height);
}

export function nameOf({ row, column }: Cell): string {
  return sheetName(row, column);
}

export function cellAt(plan: Plan, row: number, column: number): Cell | undefined {
  return plan.cells.find((cell) => cell.row === row && cell.column === column);
}
