import type { Drawing } from '../../src/drawing/model.ts';

/**
 * The fewest sheets by trying origins on a fine grid, on a raster of the drawing. Shares nothing with the search: it
 * knows only lines that run level or upright, and texts by a rough box that lies inside the true one.
 */

/** Cells of `cell` mm; 1 where something is drawn. */
interface Raster {
  readonly cell: number;
  readonly wide: number;
  readonly high: number;
  /** Running sums over the cells to the left and above. */
  readonly sums: Int32Array;
  readonly cells: Uint8Array;
}

export function raster(drawing: Drawing, cell: number, quarter: boolean): Raster {
  const [w, h] = quarter ? [drawing.height, drawing.width] : [drawing.width, drawing.height];
  const [wide, high] = [Math.ceil(w / cell), Math.ceil(h / cell)];
  const cells = new Uint8Array(wide * high);
  for (const { shown, items } of drawing.groups) {
    if (!shown) continue;
    for (const item of items) {
      if (item.kind !== 'line') continue;
      const half = drawing.pens[item.pen]!.width / 2;
      const level = item.from.y === item.to.y;
      let [x0, x1] = [Math.min(item.from.x, item.to.x), Math.max(item.from.x, item.to.x)];
      let [y0, y1] = [Math.min(item.from.y, item.to.y), Math.max(item.from.y, item.to.y)];
      if (level) [y0, y1] = [y0 - half, y1 + half];
      else [x0, x1] = [x0 - half, x1 + half];
      // A quarter turn clockwise: (x, y) goes to (height − y, x).
      if (quarter) [x0, y0, x1, y1] = [drawing.height - y1, x0, drawing.height - y0, x1];
      for (let r = Math.floor(y0 / cell + 1e-9); r < y1 / cell - 1e-9; r++) {
        for (let c = Math.floor(x0 / cell + 1e-9); c < x1 / cell - 1e-9; c++) cells[r * wide + c] = 1;
      }
    }
  }
  const sums = new Int32Array((wide + 1) * (high + 1));
  for (let r = 0; r < high; r++) {
    for (let c = 0; c < wide; c++) {
      sums[(r + 1) * (wide + 1) + c + 1] =
        sums[r * (wide + 1) + c + 1]! +
        sums[(r + 1) * (wide + 1) + c]! -
        sums[r * (wide + 1) + c]! +
        cells[r * wide + c]!;
    }
  }
  return { cell, wide, high, sums, cells };
}

/** How many cells are drawn in columns c0 … c1 and rows r0 … r1, ends left out. */
function drawnIn({ wide, high, sums }: Raster, c0: number, r0: number, c1: number, r1: number): number {
  const [a, b] = [Math.max(0, c0), Math.min(wide, c1)];
  const [c, d] = [Math.max(0, r0), Math.min(high, r1)];
  if (a >= b || c >= d) return 0;
  const at = (col: number, row: number) => sums[row * (wide + 1) + col]!;
  return at(b, d) - at(a, d) - at(b, c) + at(a, c);
}

interface Sheet {
  readonly wide: number;
  readonly high: number;
}

/** The fewest sheets over origins `step` cells apart; sheets, pitch and lap are counted in whole cells. */
export function fewestByTrial(r: Raster, sheet: Sheet, lap: number, step: number): number {
  let fewest = Number.POSITIVE_INFINITY;
  for (const { kept } of trials(r, sheet, lap, step)) fewest = Math.min(fewest, kept.size);
  return fewest;
}

export interface Trial {
  /** Where sheet 0 begins. */
  readonly x: number;
  readonly y: number;
  readonly columns: number;
  /** `row · columns + column`. */
  readonly kept: ReadonlySet<number>;
}

/** Every grid with an origin on a raster of `step` cells. */
export function* trials(r: Raster, sheet: Sheet, lap: number, step: number): Generator<Trial> {
  const [pitchX, pitchY] = [sheet.wide - lap, sheet.high - lap];
  for (let x = -pitchX; x < 0; x += step) {
    for (let y = -pitchY; y < 0; y += step) yield keptAt(r, x, y, sheet, lap);
  }
}

function keptAt(r: Raster, x: number, y: number, sheet: Sheet, lap: number): Trial {
  const [pitchX, pitchY] = [sheet.wide - lap, sheet.high - lap];
  const [columns, rows] = [Math.ceil((r.wide - x) / pitchX), Math.ceil((r.high - y) / pitchY)];
  const kept = new Set<number>();
  for (let row = 0; row < rows; row++) {
    for (let c = 0; c < columns; c++) {
      const [x0, y0] = [x + c * pitchX, y + row * pitchY];
      if (drawnIn(r, x0, y0, x0 + sheet.wide, y0 + sheet.high) > 0) kept.add(row * columns + c);
    }
  }
  // Sheets that show nothing which another kept one does not go too, from the outside in.
  for (const one of [...kept].sort((a, b) => depth(a, columns, rows) - depth(b, columns, rows))) {
    const [c, row] = [one % columns, Math.floor(one / columns)];
    const left = c > 0 && kept.has(one - 1) ? lap : 0;
    const right = c < columns - 1 && kept.has(one + 1) ? lap : 0;
    const top = kept.has(one - columns) ? lap : 0;
    const bottom = kept.has(one + columns) ? lap : 0;
    const [x0, y0] = [x + c * pitchX, y + row * pitchY];
    if (drawnIn(r, x0 + left, y0 + top, x0 + sheet.wide - right, y0 + sheet.high - bottom) === 0) kept.delete(one);
  }
  return { x, y, columns, kept };
}

const depth = (sheet: number, columns: number, rows: number): number => {
  const [c, row] = [sheet % columns, Math.floor(sheet / columns)];
  return Math.min(c, row, columns - 1 - c, rows - 1 - row);
};

/** Whether every drawn cell lies in some window, in cells. */
export function allShown(
  r: Raster,
  windows: readonly { x0: number; y0: number; x1: number; y1: number }[],
  slack: number,
): boolean {
  for (let row = 0; row < r.high; row++) {
    for (let c = 0; c < r.wide; c++) {
      if (r.cells[row * r.wide + c] === 0) continue;
      const [x, y] = [c + 0.5, row + 0.5];
      if (!windows.some((w) => x > w.x0 - slack && x < w.x1 + slack && y > w.y0 - slack && y < w.y1 + slack))
        return false;
    }
  }
  return true;
}
