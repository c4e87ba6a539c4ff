import { fewestFor } from './leftover.ts';
import type { Cell } from './plan.ts';
import type { Zones } from './zones.ts';

/**
 * Counts the sheets of a grid that are needed to show everything drawn. A sheet is needed where it alone shows
 * something; what lies in laps only is given to the fewest more. Keeps its own scratch space, since it is asked
 * some thousand times for one layout.
 */
export class SheetCount {
  private drawn = new Uint8Array(0);
  private needed = new Uint8Array(0);

  /** The sheets that show everything, row by row; undefined where they are more than `most`. */
  cells(across: Zones, down: Zones, most: number): readonly Cell[] | undefined {
    const left = this.fill(across, down, most);
    if (left === undefined) return undefined;
    const columns = across.to - across.from + 1;
    if (left.length > 0) {
      const already = this.total;
      const more = fewestFor(left, most - already);
      if (more === undefined) return undefined;
      for (const sheet of more) this.needed[sheet] = 1;
    }
    const cells: Cell[] = [];
    for (let i = 0; i < columns * (down.to - down.from + 1); i++) {
      if (this.needed[i] === 1)
        cells.push({ row: Math.floor(i / columns) + down.from, column: (i % columns) + across.from });
    }
    return cells;
  }

  /** How many sheets; more than `most` where that is certain. */
  count(across: Zones, down: Zones, most: number): number {
    const left = this.fill(across, down, most);
    if (left === undefined) return most + 1;
    if (left.length === 0) return this.total;
    const more = fewestFor(left, most - this.total);
    return more === undefined ? most + 1 : this.total + more.length;
  }

  private total = 0;

  /** Marks the sheets that alone show something; gives the strips that none of them shows, by the sheets that could. */
  private fill(across: Zones, down: Zones, most: number): readonly (readonly number[])[] | undefined {
    const columns = across.to - across.from + 1;
    const rows = down.to - down.from + 1;
    // Zones from the lap before the first sheet to the lap behind the last.
    const wide = 2 * columns + 1;
    const high = 2 * rows + 1;
    if (this.drawn.length < wide * high) this.drawn = new Uint8Array(wide * high);
    if (this.needed.length < columns * rows) this.needed = new Uint8Array(columns * rows);
    const { drawn, needed } = this;
    drawn.fill(0, 0, wide * high);
    needed.fill(0, 0, columns * rows);
    const [left, top] = [2 * across.from, 2 * down.from];
    for (let i = 0; i < across.first.length; i++) {
      const x0 = across.first[i]! - left;
      const x1 = across.last[i]! - left;
      const y1 = down.last[i]! - top;
      for (let y = down.first[i]! - top; y <= y1; y++) {
        for (let at = y * wide + x0; at <= y * wide + x1; at++) drawn[at] = 1;
      }
    }
    let total = 0;
    for (let row = 0; row < rows; row++) {
      for (let column = 0; column < columns; column++) {
        if (drawn[(2 * row + 1) * wide + 2 * column + 1] === 1) {
          needed[row * columns + column] = 1;
          total++;
        }
      }
      if (total > most) return undefined;
    }
    this.total = total;
    return this.strips(columns, rows);
  }

  private strips(columns: number, rows: number): readonly (readonly number[])[] {
    const wide = 2 * columns + 1;
    const strips: number[][] = [];
    for (let y = 0; y <= 2 * rows; y++) {
      for (let x = 0; x <= 2 * columns; x++) {
        if (this.drawn[y * wide + x] === 0 || (y % 2 === 1 && x % 2 === 1)) continue;
        const sheets: number[] = [];
        let shown = false;
        for (let row = Math.floor((y - 1) / 2); row <= Math.floor(y / 2); row++) {
          if (row < 0 || row >= rows) continue;
          for (let column = Math.floor((x - 1) / 2); column <= Math.floor(x / 2); column++) {
            if (column < 0 || column >= columns) continue;
            const sheet = row * columns + column;
            if (this.needed[sheet] === 1) shown = true;
            sheets.push(sheet);
          }
        }
        if (!shown) strips.push(sheets);
      }
    }
    return strips;
  }
}
