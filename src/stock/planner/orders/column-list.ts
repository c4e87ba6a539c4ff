import { grown } from '../trees/leftovers.ts';

export interface Column {
  readonly cost: number;
  /** Rows, ascending, and what the column adds in each. */
  readonly rows: Int32Array;
  readonly values: Float64Array;
}

/** Columns in flat arrays, since a program passes over all of them again and again. */
export class ColumnList {
  count = 0;
  cost = new Float64Array(256);
  /** Entries of column c: from start[c] up to start[c + 1]. */
  start = new Int32Array(257);
  row = new Int32Array(1024);
  value = new Float64Array(1024);

  add({ cost, rows, values }: Column): void {
    const at = this.start[this.count]!;
    if (this.count === this.cost.length) {
      this.cost = grown(this.cost, 2 * this.count);
      this.start = grown(this.start, 2 * this.count + 1);
    }
    if (at + rows.length > this.row.length) {
      this.row = grown(this.row, 2 * (at + rows.length));
      this.value = grown(this.value, 2 * (at + rows.length));
    }
    this.row.set(rows, at);
    this.value.set(values, at);
    this.cost[this.count++] = cost;
    this.start[this.count] = at + rows.length;
  }
}
