import { type Column, ColumnList } from './column-list.ts';
import { invert } from './inverse.ts';

/**
 * A small linear program whose columns come one after the other: least cost of non-negative columns whose sum reaches
 * `need` in the first rows and stays within `limit` in the others. Revised simplex with an explicit inverse of the basis
 * (G. Dantzig and W. Orchard-Hays, 1954, from memory); made for some dozens of rows. Sums, products and quotients alone,
 * so that every machine gets the same digits.
 */

export interface Solution {
  readonly cost: number;
  /** Columns that are used, and how much of each. */
  readonly used: readonly { readonly column: number; readonly amount: number }[];
}

/** What is not reached counts as so many of the dearest column. */
const UNREACHED = 1e4;
const NOISE = 1e-9;
/** An amount below this is none that comes of rounding. */
const NEGATIVE = 1e-7;
/** The inverse is worked out anew after so many changes of the basis. */
const REFRESH_AFTER = 150;

export class Simplex {
  private readonly columns = new ColumnList();
  /** Of each row at the last solution: what one more of it would cost. */
  readonly prices: Float64Array;
  /** Multiplications so far. */
  work = 0;
  private readonly rows: number;
  private readonly needs: number;
  private readonly right: Float64Array;
  /** For each row of the basis: a column, or −1 − r for the surplus or slack of row r, or −1 − rows − r for what is unreached. */
  private readonly basis: Int32Array;
  private readonly inBasis = new Set<number>();
  private readonly inverse: Float64Array;
  private readonly amount: Float64Array;
  /** How the amounts in the basis change with the entering column. */
  private readonly rise: Float64Array;
  private dearest = 1;
  private changes = 0;

  constructor(need: ArrayLike<number>, limit: ArrayLike<number>) {
    this.needs = need.length;
    this.rows = need.length + limit.length;
    const { rows } = this;
    this.right = new Float64Array(rows);
    for (let r = 0; r < need.length; r++) this.right[r] = need[r]!;
    for (let r = 0; r < limit.length; r++) this.right[need.length + r] = limit[r]!;
    this.prices = new Float64Array(rows);
    this.basis = Int32Array.from({ length: rows }, (_, r) => (r < this.needs ? -1 - rows - r : -1 - r));
    for (const column of this.basis) this.inBasis.add(column);
    this.inverse = new Float64Array(rows * rows);
    for (let r = 0; r < rows; r++) this.inverse[r * rows + r] = 1;
    this.amount = this.right.slice();
    this.rise = new Float64Array(rows);
  }

  get count(): number {
    return this.columns.count;
  }

  add(column: Column): void {
    this.columns.add(column);
    this.dearest = Math.max(this.dearest, column.cost);
  }

  /** Goes on from the last basis until no column makes it cheaper, or for `most` changes. */
  solve(most: number): void {
    this.findPrices();
    for (let change = 0; change < most; change++) {
      const entering = this.cheapest();
      if (entering === undefined) return;
      this.direction(entering);
      const row = this.leaving();
      if (row < 0) return;
      this.enter(entering, row);
      if (++this.changes % REFRESH_AFTER === 0) this.refresh();
      this.findPrices();
    }
  }

  /**
   * Another right side, from the last basis on: the dual simplex (C. Lemke, 1954, from memory) as long as some amount is
   * negative. False where it does not come to an end; then a new program must be made.
   */
  change(need: ArrayLike<number>, limit: ArrayLike<number>, most: number): boolean {
    for (let r = 0; r < need.length; r++) this.right[r] = need[r]!;
    for (let r = 0; r < limit.length; r++) this.right[this.needs + r] = limit[r]!;
    this.findAmounts();
    for (let change = 0; change < most; change++) {
      const row = this.mostNegative();
      if (row < 0) return true;
      const entering = this.leastRise(row);
      if (entering === undefined) return false;
      this.direction(entering);
      if (this.rise[row]! > -NOISE) return false;
      this.enter(entering, row);
      if (++this.changes % REFRESH_AFTER === 0) this.refresh();
      this.findPrices();
    }
    return false;
  }

  /** What is not reached is left out of `used`, but counts in the cost. */
  solution(): Solution {
    let cost = 0;
    const used: { column: number; amount: number }[] = [];
    for (let r = 0; r < this.rows; r++) {
      cost += this.costOf(this.basis[r]!) * this.amount[r]!;
      if (this.basis[r]! >= 0 && this.amount[r]! > NOISE)
        used.push({ column: this.basis[r]!, amount: this.amount[r]! });
    }
    return { cost, used: used.sort((a, b) => a.column - b.column) };
  }

  private findAmounts(): void {
    const { rows, inverse, amount, right } = this;
    for (let r = 0; r < rows; r++) {
      let sum = 0;
      for (let c = 0; c < rows; c++) sum += inverse[r * rows + c]! * right[c]!;
      amount[r] = Math.abs(sum) < NOISE ? 0 : sum;
    }
    this.work += rows * rows;
  }

  private mostNegative(): number {
    let [row, least] = [-1, -NEGATIVE];
    for (let r = 0; r < this.rows; r++) if (this.amount[r]! < least) [row, least] = [r, this.amount[r]!];
    return row;
  }

  /** The column, surplus or slack that fills up the row and makes the program dearer by the least. */
  private leastRise(row: number): number | undefined {
    const { prices, needs, rows, inverse, inBasis } = this;
    const { count, cost, start: starts, row: at, value } = this.columns;
    const start = row * rows;
    let best: number | undefined;
    let [least, largest] = [Infinity, 0];
    for (let entry = -rows; entry < count; entry++) {
      let part = 0;
      if (entry >= 0)
        for (let k = starts[entry]!; k < starts[entry + 1]!; k++) part += inverse[start + at[k]!]! * value[k]!;
      else part = -1 - entry < needs ? -inverse[start - 1 - entry]! : inverse[start - 1 - entry]!;
      if (part > -NOISE) continue;
      let saved = 0;
      if (entry >= 0) {
        saved = cost[entry]!;
        for (let k = starts[entry]!; k < starts[entry + 1]!; k++) saved -= prices[at[k]!]! * value[k]!;
      } else saved = -1 - entry < needs ? prices[-1 - entry]! : -prices[-1 - entry]!;
      const ratio = Math.max(0, saved) / -part;
      const better = ratio < least - NOISE || (ratio <= least + NOISE && -part > largest);
      if (!better || inBasis.has(entry)) continue;
      [best, least, largest] = [entry, Math.min(ratio, least), -part];
    }
    this.work += 2 * starts[count]!;
    return best;
  }

  private costOf(column: number): number {
    if (column >= 0) return this.columns.cost[column]!;
    return column < -this.rows ? UNREACHED * this.dearest : 0;
  }

  private findPrices(): void {
    const { rows, inverse, prices } = this;
    prices.fill(0);
    for (let r = 0; r < rows; r++) {
      const cost = this.costOf(this.basis[r]!);
      if (cost === 0) continue;
      for (let c = 0; c < rows; c++) prices[c]! += cost * inverse[r * rows + c]!;
    }
    this.work += rows * rows;
  }

  /** The column, surplus or slack that saves most for each one of it; undefined where none saves anything. */
  private cheapest(): number | undefined {
    const { prices, needs, rows } = this;
    const { count, cost, start, row, value } = this.columns;
    let best: number | undefined;
    let least = -NOISE;
    for (let r = 0; r < rows; r++) {
      const saved = r < needs ? prices[r]! : -prices[r]!;
      if (saved < least && !this.inBasis.has(-1 - r)) [best, least] = [-1 - r, saved];
    }
    for (let c = 0; c < count; c++) {
      let saved = cost[c]!;
      for (let k = start[c]!; k < start[c + 1]!; k++) saved -= prices[row[k]!]! * value[k]!;
      if (saved < least * Math.max(1, cost[c]!) && !this.inBasis.has(c)) [best, least] = [c, saved];
    }
    this.work += start[count]!;
    return best;
  }

  private direction(entering: number): void {
    const { rows, inverse, rise } = this;
    rise.fill(0);
    const add = (row: number, value: number): void => {
      for (let r = 0; r < rows; r++) rise[r]! += value * inverse[r * rows + row]!;
      this.work += rows;
    };
    if (entering < 0) {
      const row = -1 - entering;
      add(row, row < this.needs ? -1 : 1);
      return;
    }
    const { start, row, value } = this.columns;
    for (let k = start[entering]!; k < start[entering + 1]!; k++) add(row[k]!, value[k]!);
  }

  /** The row whose amount comes to nothing first; of equal ones that with the largest change, which errs least. */
  private leaving(): number {
    const { rows, amount, rise } = this;
    let [best, least] = [-1, Infinity];
    for (let r = 0; r < rows; r++) {
      if (rise[r]! <= NOISE) continue;
      const ratio = Math.max(0, amount[r]!) / rise[r]!;
      if (ratio < least - NOISE || (ratio <= least + NOISE && best >= 0 && rise[r]! > rise[best]!)) {
        [best, least] = [r, Math.min(ratio, least)];
      }
    }
    return best;
  }

  private enter(entering: number, row: number): void {
    const { rows, inverse, amount, rise } = this;
    const pivot = rise[row]!;
    const start = row * rows;
    for (let c = 0; c < rows; c++) inverse[start + c]! /= pivot;
    amount[row]! /= pivot;
    for (let r = 0; r < rows; r++) {
      const times = rise[r]!;
      if (r === row || times === 0) continue;
      for (let c = 0; c < rows; c++) inverse[r * rows + c]! -= times * inverse[start + c]!;
      amount[r]! -= times * amount[row]!;
    }
    this.work += rows * rows;
    this.inBasis.delete(this.basis[row]!);
    this.inBasis.add(entering);
    this.basis[row] = entering;
  }

  /** The inverse by elimination from the columns themselves, so that errors do not add up. */
  private refresh(): void {
    const { rows, inverse, basis } = this;
    const matrix = new Float64Array(rows * rows);
    for (let r = 0; r < rows; r++) {
      const column = basis[r]!;
      if (column >= 0) {
        const { start, row, value } = this.columns;
        for (let k = start[column]!; k < start[column + 1]!; k++) matrix[row[k]! * rows + r] = value[k]!;
      } else if (column >= -rows) {
        const row = -1 - column;
        matrix[row * rows + r] = row < this.needs ? -1 : 1;
      } else matrix[(-1 - rows - column) * rows + r] = 1;
    }
    if (!invert(matrix, inverse, rows)) return;
    this.findAmounts();
    this.work += rows * rows * rows;
  }
}
