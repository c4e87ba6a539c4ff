import type { Stroke } from '../../bench/model.ts';
import type { Step } from '../../bench/order.ts';
import { fraction } from '../../fonts/fractions.ts';
import { ellipsized } from '../../fonts/measure.ts';
import type { Fonts } from '../../fonts/model.ts';
import { point } from '../../geometry/point.ts';
import type { Job } from '../../job/job.ts';
import type { Mat } from '../../mat/model.ts';
import {
  BOLD,
  type Chunk,
  chunkLines,
  crossIn,
  depthOf,
  disc,
  FINE,
  HEAD,
  moved,
  type Part,
  READING,
  roundArrow,
  scaled,
  TEXT,
  tickSquare,
  wordChunk,
} from '../../text/bench-type.ts';
import { capHeight, type Style, set, widthOf } from '../../text/type-scale.ts';
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
export function readingWidth(row: SettingRow, scale: number, fonts: Fonts): number {
  const beside = Math.max(widthOf(row.sense, sense(scale), fonts), widthOf(row.decimal, scaled(FINE, scale), fonts));
  return widthOf(row.reading, READING, fonts) + AFTER_READING + unitWidth(row, scale, fonts) + beside;
}

const AFTER_READING = 1.4;
const sense = (scale: number) => scaled(HEAD, scale);
const unitWidth = ({ unit }: SettingRow, scale: number, fonts: Fonts): number =>
  unit === '' ? 0.6 : widthOf(unit, scaled(TEXT, scale), fonts) + 2.6;

/** The reading, and what is to be cut with it, each after its turn of the board. */
export function rowParts(row: SettingRow, mat: Mat, width: number, scale: number, fonts: Fonts): readonly Part[] {
  const [text, fine, big] = [scaled(TEXT, scale), scaled(FINE, scale), sense(scale)];
  const base = capHeight(READING, fonts);
  const unitX = widthOf(row.reading, READING, fonts) + AFTER_READING;
  const besideX = unitX + unitWidth(row, scale, fonts);
  const items = [
    set(row.reading, 0, base, READING),
    ...(row.unit === '' ? [] : [set(row.unit, unitX, base, text)]),
    ...(row.sense === ''
      ? []
      : [set(row.sense, besideX, base - capHeight(READING, fonts) + capHeight(big, fonts), big)]),
    set(row.decimal, besideX, base, fine),
  ];
  const groups = cutChunks(row, mat, width, scale, fonts);
  const lines = (from: number): Part => {
    const part = chunkLines(groups.slice(from, from + MOST_CUTS), width, 1.1 * scale, 1.52 * text.size);
    return { ...part, height: part.height + depthOf(text, fonts) };
  };
  const top = base + 0.6 * scale;
  const first = lines(0);
  const rest = Array.from({ length: Math.ceil(groups.length / MOST_CUTS) - 1 }, (_, i) => lines((i + 1) * MOST_CUTS));
  return [{ items: [...items, ...moved(first.items, 0, top)], height: top + first.height }, ...rest];
}

/** More strokes of one setting go on in a part of their own, so that a column can end between them. */
const MOST_CUTS = 24;

function cutChunks(
  row: SettingRow,
  mat: Mat,
  width: number,
  scale: number,
  fonts: Fonts,
): readonly (readonly Chunk[])[] {
  const [fine, bold] = [scaled(FINE, scale), scaled(BOLD, scale)];
  const several = mat.openings.length > 1;
  const groups = row.cuts.map(({ stroke, turn }, i): Chunk[] => {
    const turned = turnWords(turn);
    const part = stroke.part === undefined ? '' : ` ${stroke.part}`;
    const last = i === row.cuts.length - 1;
    return [
      ...(turned === undefined ? [] : [turnChunk(turned, fine, fonts)]),
      numberChunk(stroke.order, bold.size, fonts),
      squareChunk(bold.size, stroke.cut === true, fonts),
      ...(several ? [openingChunk(mat, stroke, width, scale, fonts)] : []),
      wordChunk(`${backSide(stroke)}${part}${last ? ',' : ''}`, bold, fonts),
      ...(stroke.planned === undefined ? [] : [wordChunk(`planned ${fraction(stroke.planned.text)}`, fine, fonts)]),
      ...(last ? [wordChunk(BACK_WORDS, fine, fonts)] : []),
    ];
  });
  if (row.far) groups.push([wordChunk('FAR edge on the guide', bold, fonts)]);
  return groups;
}

/** The words and a round arrow. */
function turnChunk({ text, clockwise }: NonNullable<ReturnType<typeof turnWords>>, style: Style, fonts: Fonts): Chunk {
  const words = wordChunk(text, style, fonts);
  if (clockwise === undefined) return words;
  const radius = 0.42 * style.size;
  return {
    width: words.width + 1.1 + 2 * radius + 0.5,
    items: (x, y) => [
      ...words.items(x, y),
      ...roundArrow(point(x + words.width + 1.1 + radius, y - 0.35 * style.size), radius, clockwise),
    ],
  };
}

const numberChunk = (order: number, size: number, fonts: Fonts): Chunk => {
  const radius = 0.74 * size;
  return {
    width: 2 * radius,
    items: (x, y) => disc(`${order}`, point(x + radius, y - 0.35 * size), radius, fonts),
  };
};

/** Crossed where it is done. */
const squareChunk = (size: number, done: boolean, fonts: Fonts): Chunk => {
  const style = { ...TEXT, size };
  const { side } = tickSquare(0, 0, style, fonts);
  return {
    width: side + 0.4,
    items: (x, y) => [tickSquare(x, y, style, fonts).item, ...(done ? crossIn(x, y, style, fonts) : [])],
  };
};

/** Its name as far as there is room; the list of openings has it whole. */
function openingChunk(mat: Mat, stroke: Stroke, width: number, scale: number, fonts: Fonts): Chunk {
  const style = scaled(TEXT, scale);
  const name = mat.openings[stroke.opening - 1]!.name;
  return wordChunk(ellipsized(name, style.weight, style.size, 0.4 * width, fonts), style, fonts);
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
