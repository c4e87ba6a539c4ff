import { scaleUnits, settingOf } from '../../bench/guide.ts';
import type { Fonts } from '../../fonts/model.ts';
import type { Job } from '../../job/job.ts';
import type { Mat } from '../../mat/model.ts';
import { boardTitle } from '../../shop/board.ts';
import { type Block, stacked } from '../../text/block.ts';
import { fittedLine, level, line, paragraph, type TextBlock } from '../../text/paragraph.ts';
import { colourChip, tickBlock } from '../../text/signs.ts';
import { HEAD, NAME, type Style } from '../../text/styles.ts';
import { printDecimal } from '../../units/print.ts';
import { mmFromInches } from '../../units/units.ts';
import { fine } from '../words/fine.ts';
import { layerTitle } from './steps.ts';

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

/** Its square to tick, what it is cut from, and its size to be read at arm's length. */
export function blankBlock(mat: Mat, job: Job, index: number, width: number, text: Style, fonts: Fonts): Block {
  const { size, note } = blankWords(mat, job, index);
  const { board } = mat.layers[index]!;
  const title = `${layerTitle(mat.layers[index]!)}: ${boardTitle(board)}, ${fine(board.thickness, job.units)}${note}`;
  const chip = colourChip(board.colour, text, fonts);
  const named = level([
    [0, chip],
    [0, paragraph(title, width, text, fonts, chip.width + 1.2)],
  ]);
  return stacked([named, sizeToCut(size, job.count === 1 ? '' : `× ${job.count}`, width, fonts)], 1.4);
}

/** A square to tick, a size in large figures, and how many are cut of it. */
export function sizeToCut(size: string, times: string, width: number, fonts: Fonts): TextBlock {
  const square = tickBlock(HEAD, fonts);
  const count = line(times, HEAD, fonts);
  const left = square.width + 1.6;
  const room = width - left - (times === '' ? 0 : count.width + 3);
  return level([
    [0, square],
    [left, fittedLine(size, room, NAME, fonts)],
    ...(times === '' ? [] : [[width - count.width, count] as const]),
  ]);
}
