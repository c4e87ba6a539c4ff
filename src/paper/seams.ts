import type { Cell } from './plan.ts';

export interface SeamGrid {
  readonly x: number;
  readonly y: number;
  readonly pitchX: number;
  readonly pitchY: number;
  readonly width: number;
  readonly height: number;
  readonly cells: readonly Cell[];
}

/** One stretch of join line between two sheets. */
export interface Seam {
  /** `beside`: the line runs upright between neighbours in a row; `below`: level, between neighbours in a column. */
  readonly kind: 'beside' | 'below';
  /** x of an upright line, y of a level one: the middle of the lap. */
  readonly at: number;
  /** The stretch that both sheets show. */
  readonly from: number;
  readonly to: number;
  readonly first: Cell;
  readonly second: Cell;
}

/** Every seam of the grid, in the order of its sheets: to the right of each one, then below it. */
export function seamsOf(grid: SeamGrid): readonly Seam[] {
  const key = (row: number, column: number) => row * 4096 + column;
  const kept = new Map(grid.cells.map((cell) => [key(cell.row, cell.column), cell]));
  const seams: Seam[] = [];
  for (const first of grid.cells) {
    const [x, y] = [grid.x + first.column * grid.pitchX, grid.y + first.row * grid.pitchY];
    const beside = kept.get(key(first.row, first.column + 1));
    if (beside !== undefined) {
      const at = x + (grid.pitchX + grid.width) / 2;
      seams.push({ kind: 'beside', at, from: y, to: y + grid.height, first, second: beside });
    }
    const below = kept.get(key(first.row + 1, first.column));
    if (below !== undefined) {
      const at = y + (grid.pitchY + grid.height) / 2;
      seams.push({ kind: 'below', at, from: x, to: x + grid.width, first, second: below });
    }
  }
  return seams;
}
