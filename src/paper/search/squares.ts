import type { Axis } from './axis.ts';
import { sheetsOnRim } from './rim.ts';
import type { Zones } from './zones.ts';

/** Several lie in what a small sheet alone shows, and a large board is a few thousand of them, mm. */
const SIDE = 16;
/** A square counts for a sheet if it lies so far within what that sheet alone shows: more than `EPSILON`, far less than what matters. */
const WITHIN = 0.01;

/**
 * The squares of a drawing in which something lies. A sheet that alone shows a whole such square is needed, whatever else is
 * drawn: of a drawing that is full everywhere that tells all, and of others enough to spare most grids their counting.
 */
export class DrawnSquares {
  private readonly left: number;
  private readonly top: number;
  private readonly columns: number;
  private readonly rows: number;
  /** Of all squares above and to the left of a corner, how many hold something; row by row of corners. */
  private readonly sums: Int32Array;

  constructor(x: Axis, y: Axis) {
    this.left = x.from;
    this.top = y.from;
    this.columns = Math.floor((x.to - x.from) / SIDE) + 1;
    this.rows = Math.floor((y.to - y.from) / SIDE) + 1;
    const wide = this.columns + 1;
    // Each box as what its corners add and take away, then added up twice.
    const boxes = new Int32Array(wide * (this.rows + 1));
    const add = (row: number, column: number, by: number): void => {
      boxes[row * wide + column] = boxes[row * wide + column]! + by;
    };
    for (let i = 0; i < x.lows.length; i++) {
      const [left, right] = [this.columnOf(x.lows[i]!), this.columnOf(x.highs[i]!) + 1];
      const [top, bottom] = [this.rowOf(y.lows[i]!), this.rowOf(y.highs[i]!) + 1];
      add(top, left, 1);
      add(top, right, -1);
      add(bottom, left, -1);
      add(bottom, right, 1);
    }
    this.sums = new Int32Array(boxes.length);
    for (let row = 0; row < this.rows; row++) {
      let filled = 0;
      for (let column = 0; column < this.columns; column++) {
        const at = row * wide + column;
        const above = row === 0 ? 0 : boxes[at - wide]!;
        const before = column === 0 ? 0 : boxes[at - 1]!;
        const aslant = row === 0 || column === 0 ? 0 : boxes[at - wide - 1]!;
        boxes[at] = boxes[at]! + above + before - aslant;
        if (boxes[at]! > 0) filled++;
        this.sums[at + wide + 1] = this.sums[at + 1]! + filled;
      }
    }
  }

  /**
   * How many sheets of a grid are needed for what is drawn in whole squares, and, where the rim of the drawing needs all
   * of them, on the outside of the grid; all others may be needed too.
   */
  neededBy(across: Zones, down: Zones, isRound: boolean): number {
    const wide = this.columns + 1;
    const inset = isRound ? 1 : 0;
    let needed = isRound ? sheetsOnRim(down.to - down.from + 1, across.to - across.from + 1) : 0;
    for (let row = down.from + inset; row <= down.to - inset; row++) {
      const top = firstWithin(down, row, this.top);
      const bottom = Math.min(this.rows, endWithin(down, row, this.top));
      if (top >= bottom) continue;
      for (let column = across.from + inset; column <= across.to - inset; column++) {
        const left = firstWithin(across, column, this.left);
        const right = Math.min(this.columns, endWithin(across, column, this.left));
        if (left >= right) continue;
        const held =
          this.sums[bottom * wide + right]! -
          this.sums[top * wide + right]! -
          this.sums[bottom * wide + left]! +
          this.sums[top * wide + left]!;
        if (held > 0) needed++;
      }
    }
    return needed;
  }

  private columnOf(at: number): number {
    return Math.floor((at - this.left) / SIDE);
  }

  private rowOf(at: number): number {
    return Math.floor((at - this.top) / SIDE);
  }
}

/** The squares that lie within what one sheet alone shows: the first of them … */
function firstWithin({ origin, pitch, lap }: Zones, sheet: number, low: number): number {
  return Math.max(0, Math.ceil((origin + sheet * pitch + lap + WITHIN - low) / SIDE));
}

/** … and the one behind the last. */
function endWithin({ origin, pitch }: Zones, sheet: number, low: number): number {
  return Math.floor((origin + (sheet + 1) * pitch - WITHIN - low) / SIDE);
}
