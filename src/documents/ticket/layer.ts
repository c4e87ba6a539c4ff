import type { Fonts } from '../../fonts/model.ts';
import { moved, type Part, stacked } from '../../text/bench-type.ts';
import { diagram } from './diagram.ts';
import type { BenchJob } from './model.ts';
import { readingWidth, rowParts, type SettingRow } from './rows.ts';

/** What is said of a stroke stands in one line beside the diagram in this size, whatever that of the text is. */
const ROW_SCALE = 0.94;
/** Of a diagram beside its rows; one of many strokes takes the column. */
const WIDEST = 31;
const NARROWEST = 25;
const HIGHEST = 44;
/** Figures of that height need more air above them than a line of text has. */
const ABOVE = 1;
const GUTTER = 4;
/** So many rows stay beside their diagram even where they reach below it. */
const TOGETHER = 6;
const MANY = 10;

const spaced = ({ items, height }: Part): Part => ({ items: moved(items, 0, ABOVE), height: height + ABOVE });

/** The diagram of a layer with its settings beside it, and what of them does not fit there below. */
export function layerParts(
  { mat, job, strokes }: BenchJob,
  layer: number,
  rows: readonly SettingRow[],
  width: number,
  air: number,
  fonts: Fonts,
): readonly Part[] {
  const widest = Math.max(0, ...rows.map((row) => readingWidth(row, ROW_SCALE, fonts)));
  const free = Math.min(WIDEST, width - GUTTER - widest);
  const count = rows.reduce((sum, { cuts }) => sum + cuts.length, 0);
  const gap = 2.4 * air;
  if (free < NARROWEST || count > MANY) {
    const wide = { width: Math.min(width, 1.6 * HIGHEST), height: 1.5 * HIGHEST };
    const drawn = diagram(mat, job, strokes, layer, wide, ROW_SCALE, fonts);
    const below = rows.flatMap((row) => rowParts(row, mat, width, ROW_SCALE, fonts).map(spaced));
    const centred = { ...drawn, items: moved(drawn.items, (width - wide.width) / 2, 0) };
    return [centred, ...below];
  }
  const drawn = diagram(mat, job, strokes, layer, { width: free, height: HIGHEST }, ROW_SCALE, fonts);
  const left = free + GUTTER;
  const made = rows.map((row) => stacked(rowParts(row, mat, width - left, ROW_SCALE, fonts), 0));
  let beside = 0;
  let used = 0;
  while (beside < made.length) {
    const next = used + (beside === 0 ? 0 : gap) + made[beside]!.height;
    if (beside >= TOGETHER && next > drawn.height) break;
    used = next;
    beside++;
  }
  const column = stacked(made.slice(0, beside), gap);
  const block: Part = {
    items: [...moved(drawn.items, 0, ABOVE), ...moved(column.items, left, ABOVE)],
    height: ABOVE + Math.max(drawn.height, column.height),
  };
  return [block, ...rows.slice(beside).flatMap((row) => rowParts(row, mat, width, ROW_SCALE, fonts).map(spaced))];
}
