import type { Stroke } from '../../bench/model.ts';
import type { Step } from '../../bench/order.ts';
import { fraction } from '../../fonts/fractions.ts';
import type { Fonts } from '../../fonts/model.ts';
import type { Job } from '../../job/job.ts';
import type { Mat } from '../../mat/model.ts';
import { type Block, moved, stacked } from '../../text/block.ts';
import { ellipsized } from '../../text/line.ts';
import { level, line, type TextBlock } from '../../text/paragraph.ts';
import { discBlock, runsBlock, tickBlock, turnBlock } from '../../text/signs.ts';
import { BOLD, FINE, HEAD, READING, TEXT } from '../../text/styles.ts';
import { printDecimal } from '../../units/print.ts';
import type { Units } from '../../units/units.ts';
import { mmPer } from '../../units/units.ts';
import { stateWords } from '../pattern/labels.ts';
import { BACK_WORDS, backSide } from '../words/back-side.ts';

/** One setting of the guide and the strokes that are cut with it, in the order of work. */
export interface SettingRow {
  /** Without its unit: `2 3/4`; `off` where the guide cannot be set. */
  readonly reading: string;
  readonly unit: string;
  /** `scant`, `full`, or what to do with the guide off. */
  readonly sense: string;
  /** The unrounded setting in the same unit, which is that of the guide's scale. */
  readonly decimal: string;
  readonly far: boolean;
  readonly cuts: readonly { readonly stroke: Stroke; readonly turn: number }[];
}

/** The rows of one layer: a new one wherever the guide is set anew, or its printed reading would differ. */
export function settingRows(
  strokes: readonly Stroke[],
  steps: readonly Step[],
  layer: number,
  units: Units,
): readonly SettingRow[] {
  const rows: SettingRow[] = [];
  let last: Stroke | undefined;
  strokes.forEach((stroke, i) => {
    if (stroke.layer !== layer) return;
    const { setGuide, turn } = steps[i]!;
    const same =
      !setGuide &&
      last !== undefined &&
      stroke.setting.text === last.setting.text &&
      stroke.setting.sense === last.setting.sense &&
      stroke.guideFrom === last.guideFrom &&
      stateWords(stroke).join() === stateWords(last).join();
    last = stroke;
    if (same) {
      const row = rows.at(-1)!;
      rows[rows.length - 1] = { ...row, cuts: [...row.cuts, { stroke, turn }] };
    } else rows.push(rowOf(stroke, turn, units));
  });
  return rows;
}

function rowOf(stroke: Stroke, turn: number, units: Units): SettingRow {
  const far = stroke.guideFrom === 'far';
  const cuts = [{ stroke, turn }];
  const { rest } = stroke;
  if (rest !== undefined) {
    const { to, from, distance } = rest;
    const words = distance < 0 ? `${to} off the board` : `${from} to ${to} ${decimals(distance, units)} ${units}`;
    return {
      reading: 'off',
      unit: '',
      sense: [stroke.bar === undefined ? 'along a straightedge' : 'by the bar line', ...stateWords(stroke)].join(', '),
      decimal: words,
      far,
      cuts,
    };
  }
  const { amount, unit, sense } = stroke.setting;
  return {
    reading: amount,
    unit,
    sense: [...(sense === 'exact' ? [] : [sense]), ...stateWords(stroke)].join(', '),
    decimal: decimals(stroke.guide, unit),
    far,
    cuts,
  };
}

/** Always as many digits, so that one can be compared with the next. */
const decimals = (mm: number, units: Units): string => (mm / mmPer(units)).toFixed(units === 'mm' ? 2 : 3);

/** `¼ turn`, and whether it goes clockwise; a half turn has no direction. */
function turnWords(turn: number): { readonly text: string; readonly clockwise?: boolean } | undefined {
  const quarters = Math.abs(turn);
  if (quarters < 1e-6) return undefined;
  if (Math.abs(quarters - 2) < 1e-6) return { text: '½ turn' };
  const text = Math.abs(quarters - 1) < 1e-6 ? '¼ turn' : `${printDecimal(quarters * 90, 'mm', 0).text}°`;
  return { text, clockwise: turn > 0 };
}

/** How wide the reading of a row is, with all that stands beside it. */
export const readingWidth = (row: SettingRow, fonts: Fonts): number => readingBlock(row, fonts).width;

/** The setting to be read at arm's length; behind it its sense, and the exact number below that. */
function readingBlock({ reading, unit, sense, decimal }: SettingRow, fonts: Fonts): TextBlock {
  const large = line(reading, READING, fonts);
  const named = line(unit, TEXT, fonts);
  const left = large.width + 1.4 + (unit === '' ? 0 : named.width + 2);
  const exact = line(decimal, FINE, fonts);
  const above = line(sense, HEAD, fonts);
  const whole = level([[0, large], ...(unit === '' ? [] : [[large.width + 1.4, named] as const]), [left, exact]]);
  if (sense === '') return whole;
  return {
    ...whole,
    width: Math.max(whole.width, left + above.width),
    items: [...whole.items, ...moved(above.items, left, whole.base - large.base)],
  };
}

/** The reading, and what is to be cut with it, each after its turn of the board. */
export function rowBlocks(row: SettingRow, mat: Mat, width: number, fonts: Fonts): readonly (() => Block)[] {
  const groups = cutRuns(row, mat, width, fonts);
  const lines = (from: number): Block => runsBlock(groups.slice(from, from + MOST_CUTS), width, TEXT, fonts);
  const rest = Array.from(
    { length: Math.ceil(groups.length / MOST_CUTS) - 1 },
    (_, i) => () => lines((i + 1) * MOST_CUTS),
  );
  return [() => stacked([toBase(readingBlock(row, fonts)), lines(0)], 0.6), ...rest];
}

/** Figures have nothing that hangs below their base line. */
const toBase = (block: TextBlock): TextBlock => ({ ...block, height: block.base });

/** More strokes of one setting go on in a part of their own, so that a column can end between them. */
const MOST_CUTS = 24;

function cutRuns(row: SettingRow, mat: Mat, width: number, fonts: Fonts): readonly (readonly TextBlock[])[] {
  const several = mat.openings.length > 1;
  const groups = row.cuts.map(({ stroke, turn }, i): TextBlock[] => {
    const turned = turnWords(turn);
    const part = stroke.part === undefined ? '' : ` ${stroke.part}`;
    const last = i === row.cuts.length - 1;
    return [
      ...(turned === undefined ? [] : [line(turned.text, FINE, fonts)]),
      ...(turned?.clockwise === undefined ? [] : [turnBlock(turned.clockwise, FINE)]),
      discBlock(`${stroke.order}`, BOLD, fonts),
      tickBlock(BOLD, fonts, stroke.cut === true),
      ...(several ? [openingName(mat, stroke, width, fonts)] : []),
      line(`${backSide(stroke)}${part}${last ? ',' : ''}`, BOLD, fonts),
      ...(stroke.planned === undefined ? [] : [line(`planned ${fraction(stroke.planned.text)}`, FINE, fonts)]),
      ...(last ? [line(BACK_WORDS, FINE, fonts)] : []),
    ];
  });
  if (row.far) groups.push([line('FAR edge on the guide', BOLD, fonts)]);
  return groups;
}

/** Its name as far as there is room; the list of openings has it whole. */
function openingName(mat: Mat, stroke: Stroke, width: number, fonts: Fonts): TextBlock {
  const name = mat.openings[stroke.opening - 1]!.name;
  return line(ellipsized(name, TEXT, 0.4 * width, fonts), TEXT, fonts);
}

/** What a row says, for those who read data. */
export function rowRecord(row: SettingRow, job: Job) {
  return {
    reading: row.reading,
    unit: row.unit === '' ? job.units : row.unit,
    sense: row.sense,
    decimal: row.decimal,
    strokes: row.cuts.map(({ stroke, turn }) => ({
      order: stroke.order,
      opening: stroke.opening,
      side: stroke.side,
      seenFromBack: backSide(stroke),
      turn,
    })),
  };
}
