import { scaleUnits, settingOf } from '../../bench/guide.ts';
import type { Fonts } from '../../fonts/model.ts';
import type { Job } from '../../job/job.ts';
import type { Mat } from '../../mat/model.ts';
import type { Density } from '../../text/bench-flow.ts';
import { BLANK, HEAD, moved, type Part, scaled, TEXT, textPart, tickSquare } from '../../text/bench-type.ts';
import { capHeight, fitted, set, widthOf } from '../../text/type-scale.ts';
import { printDecimal } from '../../units/print.ts';
import { mmFromInches } from '../../units/units.ts';
import { fine, layerTitle } from './steps.ts';

/**
 * What tapes and stops are read to: the job's own graduation, unless it is one of another unit than the job's, whose
 * numbers nobody could read off; then a sixteenth or a millimetre (common practice, no source).
 */
export function tapeGraduation({ units, bench }: Job): number {
  if (scaleUnits(bench.graduation, units) === units) return bench.graduation;
  return units === 'in' ? mmFromInches(1 / 16) : 1;
}

/** A blank as the stops are set for it: the printed sizes on the graduation, and the exact ones where they differ. */
export function blankWords(mat: Mat, job: Job, index: number) {
  const { units } = job;
  const { width, height } = mat.layers[index]!.blank;
  const settings = [width, height].map((mm) => settingOf(mm, tapeGraduation(job), units));
  const exact = settings.every(({ sense }) => sense === 'exact');
  const decimal = (mm: number): string => printDecimal(mm, units, units === 'mm' ? 2 : 3).text;
  return {
    size: `${settings.map(({ amount }) => amount).join(' × ')} ${units}`,
    note: exact
      ? ''
      : ` (${settings.map(({ sense }) => sense).join(' × ')}: ${decimal(width)} × ${decimal(height)} ${units})`,
  };
}

/** The square is as high as the capitals. */
const BOX = scaled(BLANK, 0.72);

/** Its square to tick, what it is cut from, and its size to be read at arm's length. */
export function blankPart(
  mat: Mat,
  job: Job,
  index: number,
  width: number,
  { scale, air }: Density,
  fonts: Fonts,
): Part {
  const text = scaled(TEXT, scale);
  const { size, note } = blankWords(mat, job, index);
  const { board } = mat.layers[index]!;
  const title = `${layerTitle(mat.layers[index]!)}: ${board.name}, ${fine(board.thickness)}${note}`;
  const named = textPart(title, width, text, fonts);
  const count = job.count === 1 ? '' : `× ${job.count}`;
  const countStyle = scaled(HEAD, scale);
  const { side } = tickSquare(0, 0, BOX, fonts);
  const left = side + 2;
  const room = width - left - (count === '' ? 0 : widthOf(count, countStyle, fonts) + 3);
  const style = fitted(size, BLANK, room, 0.6, fonts);
  const base = named.height + 1.6 + Math.max(capHeight(BLANK, fonts), (side + capHeight(BLANK, fonts)) / 2);
  return {
    items: [
      ...moved(named.items, 0, 0),
      tickSquare(0.15, base - (capHeight(BLANK, fonts) - capHeight(BOX, fonts)) / 2, BOX, fonts).item,
      set(size, left, base, style),
      ...(count === '' ? [] : [set(count, width, base, countStyle, 'end')]),
    ],
    height: base + 1.4 * air,
  };
}
