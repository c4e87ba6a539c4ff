import type { Cell } from '../plan.ts';
import { BITS, bitsIn, type Shown } from './bands.ts';
import { fewestFor } from './leftover.ts';
import { goesRound, type Reach, sheetsOnRim } from './rim.ts';
import type { DrawnSquares } from './squares.ts';
import type { Zones } from './zones.ts';

/** The columns of a grid. What is drawn over them is only worked out for a grid that has to be counted. */
export interface Columns {
  readonly zones: Zones;
  readonly reach: Reach;
  readonly shown: () => Shown;
}

/** The rows of a grid. The steps of each zone are worked out as late. */
export interface Rows {
  readonly zones: Zones;
  readonly reach: Reach;
  readonly steps: () => Int32Array;
}

const FULL = 2 ** BITS - 1;

/**
 * Counts the sheets of a grid that are needed to show everything drawn. A sheet is needed where it alone shows
 * something; what lies in laps only is given to the fewest more. Bits are columns. Keeps its own scratch space, since
 * it is asked some thousand times for one layout.
 */
export class SheetCount {
  /** By rows of zones, from the lap above the first row of sheets. */
  private own = new Int32Array(0);
  private laps = new Int32Array(0);
  /** By rows of sheets. */
  private kept = new Int32Array(0);
  /** Every sheet of the grid is needed. */
  private all = false;
  private readonly squares: (() => DrawnSquares) | undefined;
  private words = 0;
  private rows = 0;
  private columns = 0;

  /** Without squares every grid is counted that its rim does not tell. */
  constructor(squares?: () => DrawnSquares) {
    this.squares = squares;
  }

  /** How many sheets show everything; `most + 1` where they are more than `most`. */
  count(across: Columns, down: Rows, most: number): number {
    const said = this.byRim(across, down, most);
    if (said !== undefined) return said;
    const isRound = goesRound(across.reach, down.reach);
    const least = this.squares?.().neededBy(across.zones, down.zones, isRound) ?? 0;
    if (least > most) return most + 1;
    this.all = least === this.rows * this.columns;
    if (this.all) return least;
    const needed = this.fill(across.shown(), down.steps(), most);
    if (needed > most) return most + 1;
    const strips = this.strips(needed === most);
    if (strips.length === 0) return needed;
    const more = needed === most ? undefined : fewestFor(strips, most - needed);
    if (more === undefined) return most + 1;
    for (const sheet of more) this.keep(Math.floor(sheet / this.columns), sheet % this.columns);
    return needed + more.length;
  }

  /** The same, where the rim of the drawing tells it without counting. */
  byRim(across: Columns, down: Rows, most: number): number | undefined {
    this.columns = across.zones.to - across.zones.from + 1;
    this.rows = down.zones.to - down.zones.from + 1;
    this.all = false;
    if (!goesRound(across.reach, down.reach)) return undefined;
    const least = sheetsOnRim(this.rows, this.columns);
    if (least > most) return most + 1;
    this.all = least === this.rows * this.columns;
    return this.all ? least : undefined;
  }

  /** Whether the last count, which must have been within its bound, keeps a sheet; counted from the first. */
  isKept(row: number, column: number): boolean {
    if (row < 0 || row >= this.rows || column < 0 || column >= this.columns) return false;
    return this.all || (this.kept[row * this.words + Math.floor(column / BITS)]! & (1 << (column % BITS))) !== 0;
  }

  /** The sheets of the last count, row by row. */
  cells(across: Zones, down: Zones): readonly Cell[] {
    const cells: Cell[] = [];
    for (let row = 0; row < this.rows; row++) {
      for (let column = 0; column < this.columns; column++) {
        if (this.isKept(row, column)) cells.push({ row: row + down.from, column: column + across.from });
      }
    }
    return cells;
  }

  private keep(row: number, column: number): void {
    const at = row * this.words + Math.floor(column / BITS);
    this.kept[at] = this.kept[at]! | (1 << (column % BITS));
  }

  /** Marks what is drawn where, and keeps the sheets that alone show something; gives their number. */
  private fill({ words, own: ownShown, laps: lapsShown }: Shown, steps: Int32Array, most: number): number {
    this.words = words;
    const high = 2 * this.rows + 1;
    if (this.own.length < high * words) {
      this.own = new Int32Array(high * words);
      this.laps = new Int32Array(high * words);
      this.kept = new Int32Array(high * words);
    }
    const { own, laps, kept } = this;
    for (let y = 0; y < high; y++) {
      const [from, to] = [steps[2 * y]!, steps[2 * y + 1]!];
      for (let w = 0; w < words; w++) {
        own[y * words + w] = bitsIn(ownShown, words, w, from, to);
        laps[y * words + w] = bitsIn(lapsShown, words, w, from, to);
      }
    }
    let needed = 0;
    for (let row = 0; row < this.rows; row++) {
      for (let w = 0; w < words; w++) {
        const bits = own[(2 * row + 1) * words + w]!;
        kept[row * words + w] = bits;
        needed += ones(bits);
      }
      if (needed > most) return needed;
    }
    return needed;
  }

  /** What no kept sheet shows, by the numbers of the sheets that could; one is enough where `any` is asked. */
  private strips(any: boolean): readonly (readonly number[])[] {
    const { words, rows, own, laps } = this;
    const found: (readonly number[])[] = [];
    for (let y = 0; y <= 2 * rows; y++) {
      const above = Math.floor((y - 1) / 2);
      const below = y >> 1;
      for (let w = 0; w < words; w++) {
        const shown = this.keptBits(above, w) | this.keptBits(below, w);
        const before = w === 0 ? 0 : (this.keptBits(above, w - 1) | this.keptBits(below, w - 1)) >>> (BITS - 1);
        const beside = shown | ((shown << 1) & FULL) | before;
        const ownLeft = y % 2 === 1 ? 0 : own[y * words + w]! & ~shown;
        const lapsLeft = laps[y * words + w]! & ~beside;
        if ((ownLeft | lapsLeft) === 0) continue;
        if (any) return [[]];
        for (let bit = 0; bit < BITS; bit++) {
          const column = w * BITS + bit;
          if ((ownLeft & (1 << bit)) !== 0) found.push(this.sheets(above, below, column, column));
          if ((lapsLeft & (1 << bit)) !== 0) found.push(this.sheets(above, below, column - 1, column));
        }
      }
    }
    return found;
  }

  private keptBits(row: number, word: number): number {
    return row < 0 || row >= this.rows ? 0 : this.kept[row * this.words + word]!;
  }

  private sheets(above: number, below: number, left: number, right: number): readonly number[] {
    const sheets: number[] = [];
    for (let row = Math.max(0, above); row <= Math.min(below, this.rows - 1); row++) {
      for (let column = Math.max(0, left); column <= Math.min(right, this.columns - 1); column++) {
        sheets.push(row * this.columns + column);
      }
    }
    return sheets;
  }
}

/** How many bits are set, of 30. */
function ones(bits: number): number {
  let n = bits - ((bits >>> 1) & 0x55555555);
  n = (n & 0x33333333) + ((n >>> 2) & 0x33333333);
  return (((n + (n >>> 4)) & 0x0f0f0f0f) * 0x01010101) >>> 24;
}
