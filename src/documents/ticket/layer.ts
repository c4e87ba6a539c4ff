import type { BenchJob } from '../../bench/bench-job.ts';
import type { Fonts } from '../../fonts/model.ts';
import { once } from '../../problems/once.ts';
import { joined, padded, stacked } from '../../text/block.ts';
import type { Entry } from '../../text/entries.ts';
import type { Density } from '../../text/flow.ts';
import { diagram } from './diagram.ts';
import { readingWidth, rowBlocks, type SettingRow } from './rows.ts';

/** Of a diagram beside its rows; one of many strokes takes the column. */
const WIDEST = 31;
const NARROWEST = 24;
const HIGHEST = 44;
/** Figures of that height need more air above them than a line of text has. */
const ABOVE = 1;
const GUTTER = 4;
/** So many rows stand beside their diagram; more of them stand below. */
const TOGETHER = 3;
const MANY = 10;

/** The diagram of a layer with its settings beside it, and what of them does not fit there below; for columns of a width. */
export function layerEntries(
  { mat, job, strokes }: BenchJob,
  layer: number,
  rows: readonly SettingRow[],
  column: number,
  fonts: Fonts,
): readonly Entry[] {
  const widest = Math.max(0, ...rows.map((row) => readingWidth(row, fonts)));
  const free = Math.min(WIDEST, column - GUTTER - widest);
  const count = rows.reduce((sum, { cuts }) => sum + cuts.length, 0);
  const below = (list: readonly SettingRow[]): readonly Entry[] =>
    list.flatMap((row) =>
      // However densely the rest is set.
      rowBlocks(row, mat, column, fonts).map(
        (block): Entry => ({ kind: 'figure', make: once(() => padded(block(), ABOVE)) }),
      ),
    );
  if (free < NARROWEST || count > MANY) {
    const room = { width: Math.min(column, 1.6 * HIGHEST), height: 1.5 * HIGHEST };
    const make = once(() => {
      const drawn = diagram(mat, job, strokes, layer, room, fonts);
      return joined({ width: column, height: drawn.height }, [[drawn, { x: (column - room.width) / 2, y: 0 }]]);
    });
    return [{ kind: 'figure', make }, ...below(rows)];
  }
  const left = free + GUTTER;
  const picture = once(() => diagram(mat, job, strokes, layer, { width: free, height: HIGHEST }, fonts));
  const beside = once(() =>
    rows.slice(0, TOGETHER).map((row) =>
      stacked(
        rowBlocks(row, mat, column - left, fonts).map((block) => block()),
        0,
      ),
    ),
  );
  const make = (_: number, { air }: Density) => {
    const drawn = picture();
    const settings = stacked(beside(), 2.4 * air);
    return joined({ width: column, height: ABOVE + Math.max(drawn.height, settings.height) }, [
      [drawn, { x: 0, y: ABOVE }],
      [settings, { x: left, y: ABOVE }],
    ]);
  };
  return [{ kind: 'figure', make }, ...below(rows.slice(TOGETHER))];
}
