import type { Setting, Stroke } from '../../bench/model.ts';
import type { CutStep } from '../../bench/work/model.ts';
import { fraction } from '../../fonts/fractions.ts';
import type { Fonts } from '../../fonts/model.ts';
import type { Job } from '../../job/job.ts';
import type { Mat } from '../../mat/model.ts';
import { defined } from '../../problems/defined.ts';
import { type Block, composed, itemsAt, stacked } from '../../text/block.ts';
import { ellipsized } from '../../text/line.ts';
import { level, line, type TextBlock } from '../../text/paragraph.ts';
import { discBlock, runsBlock, tickBlock, turnBlock } from '../../text/signs.ts';
import { BOLD, FINE, HEAD, READING, TEXT } from '../../text/styles.ts';
import { printDecimal } from '../../units/print.ts';
import type { Units } from '../../units/units.ts';
import { mmPer } from '../../units/units.ts';
import { stateWords } from '../pattern/labels.ts';
import { BACK_WORDS, backSide } from '../words/back-side.ts';
import type { Cut, LotPart } from './parts.ts';

/** One setting of the guide and the strokes that are cut with it, in the order of work. */
export interface SettingRow {
  /** What is read at arm's length, without its unit: `2 3/4`; `off` where nothing can be measured on the board. */
  readonly reading: string;
  readonly unit: string;
  /** `scant`, `full`, and what is not as it was planned. */
  readonly sense: string;
  /** The unrounded setting in the same unit, which is that of the guide's scale. */
  readonly decimal: string;
  /** How it is laid where no guide is set: what is measured, and from which edge. */
  readonly laid?: string;
  /** Whether the far edge lies on the guide. */
  readonly far: boolean;
  /** Boxes to tick for each stroke: one for every pass. */
  readonly passes: number;
  readonly count: number;
  readonly cuts: readonly { readonly stroke: Stroke; readonly turn: number }[];
}

/** The rows of one lot: a new one wherever the guide is set anew, or what is laid by a rule is measured anew. */
export function settingRows(part: Pick<LotPart, 'lot' | 'cuts'>, units: Units): readonly SettingRow[] {
  const rows: SettingRow[] = [];
  let last: Cut | undefined;
  for (const cut of part.cuts) {
    const turned = { stroke: cut.stroke, turn: cut.step.turn };
    if (last !== undefined && sameRow(cut, last)) {
      const row = rows.at(-1)!;
      rows[rows.length - 1] = { ...row, cuts: [...row.cuts, turned] };
    } else rows.push({ ...rowOf(cut, units), passes: part.lot.depths.length, count: part.lot.count, cuts: [turned] });
    last = cut;
  }
  return rows;
}

function sameRow({ step, stroke }: Cut, last: Cut): boolean {
  const setting = (cut: Cut) => cut.step.setting ?? cut.step.rest?.setting;
  return (
    setting({ step, stroke })?.text === setting(last)?.text &&
    setting({ step, stroke })?.sense === setting(last)?.sense &&
    (step.rest === undefined) === (last.step.rest === undefined) &&
    laidWords(step) === laidWords(last.step) &&
    step.far === last.step.far &&
    stateWords(stroke).join() === stateWords(last.stroke).join()
  );
}

/** A setting of the guide as it is read off. */
export const settingRead = ({ amount, unit, sense, value, remainder }: Setting) => ({
  reading: amount,
  unit,
  sense: sense === 'exact' ? '' : sense,
  decimal: decimals(value + remainder, unit),
});

type Read = Omit<SettingRow, 'passes' | 'count' | 'cuts'>;

function rowOf({ step, stroke }: Cut, units: Units): Read {
  const { setting, rest } = step;
  const state = stateWords(stroke);
  if (setting !== undefined) {
    const read = settingRead(setting);
    return { ...read, sense: [...(read.sense === '' ? [] : [read.sense]), ...state].join(', '), far: step.far };
  }
  const laid = laidWords(step);
  if (rest === undefined || rest.distance < 0) {
    return { reading: 'off', unit: '', sense: state.join(', '), decimal: '', far: false, ...defined({ laid }) };
  }
  const { amount, unit, sense } = rest.setting;
  return {
    reading: amount,
    unit,
    sense: [...(sense === 'exact' ? [] : [sense]), ...state].join(', '),
    decimal: decimals(rest.distance, units),
    far: false,
    ...defined({ laid }),
  };
}

/** `guide OFF, right edge to the bar`, or `straightedge, from the right edge`. */
export function laidWords({ rest, edge }: CutStep): string | undefined {
  if (rest === undefined) return undefined;
  const { to, from, distance } = rest;
  const hand = to === 'straightedge';
  if (distance < 0) return hand ? 'straightedge, off the board' : `guide OFF, the ${to} off the board`;
  const where = from === 'corner' || edge === undefined ? 'the board’s corner' : `the ${edge} edge`;
  return hand ? `straightedge, from ${where}` : `guide OFF, ${where} to the ${to}`;
}

/** Always as many digits, so that one can be compared with the next. */
const decimals = (mm: number, units: Units): string => (mm / mmPer(units)).toFixed(units === 'mm' ? 2 : 3);

/** `¼ turn`, and whether it goes clockwise; a half turn has no direction. */
export function turnWords(turn: number): { readonly text: string; readonly clockwise?: boolean } | undefined {
  const quarters = Math.abs(turn);
  if (quarters < 1e-6) return undefined;
  if (Math.abs(quarters - 2) < 1e-6) return { text: '½ turn' };
  const text = Math.abs(quarters - 1) < 1e-6 ? '¼ turn' : `${printDecimal(quarters * 90, 'mm', 0).text}°`;
  return { text, clockwise: turn > 0 };
}

/** How wide the reading of a row is, with all that stands beside it. */
export const readingWidth = (row: SettingRow, fonts: Fonts): number => readingBlock(row, fonts).width;

/** The setting to be read at arm's length; behind it its sense, and the exact number below that. */
export function readingBlock(
  { reading, unit, sense, decimal }: Pick<SettingRow, 'reading' | 'unit' | 'sense' | 'decimal'>,
  fonts: Fonts,
): TextBlock {
  const large = line(reading, READING, fonts);
  const named = line(unit, TEXT, fonts);
  const left = large.width + 1.4 + (unit === '' ? 0 : named.width + 2);
  const exact = line(decimal, FINE, fonts);
  const above = line(sense, HEAD, fonts);
  const whole = level([[0, large], ...(unit === '' ? [] : [[large.width + 1.4, named] as const]), [left, exact]]);
  if (sense === '') return whole;
  const { height, base } = whole;
  return composed({ width: Math.max(whole.width, left + above.width), height, base }, (x, y) => [
    ...itemsAt(whole, x, y),
    ...itemsAt(above, x + left, y + (base - large.base)),
  ]);
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
const toBase = (block: TextBlock): TextBlock =>
  composed({ width: block.width, height: block.base, base: block.base }, (x, y) => itemsAt(block, x, y));

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
      ...Array.from({ length: row.passes }, () => tickBlock(BOLD, fonts, stroke.cut === true)),
      ...(several ? [openingName(mat, stroke, width, fonts)] : []),
      line(`${backSide(stroke)}${part}${last ? ',' : ''}`, BOLD, fonts),
      ...(stroke.planned === undefined ? [] : [line(`planned ${fraction(stroke.planned.text)}`, FINE, fonts)]),
      ...(last ? [line(BACK_WORDS, FINE, fonts)] : []),
    ];
  });
  if (row.far) groups.push([line('FAR edge on the guide', BOLD, fonts)]);
  if (row.laid !== undefined) groups.unshift([line(row.laid, BOLD, fonts)]);
  if (row.count > 1) groups.push([line(`all ${row.count} at this setting first`, FINE, fonts)]);
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
    ...defined({ laid: row.laid }),
    strokes: row.cuts.map(({ stroke, turn }) => ({
      order: stroke.order,
      opening: stroke.opening,
      side: stroke.side,
      seenFromBack: backSide(stroke),
      turn,
    })),
  };
}
