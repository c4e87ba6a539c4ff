import type { Item, Pen } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { bottom, right } from '../../geometry/box.ts';
import type { Job } from '../../job/job.ts';
import { pieceBox } from '../../mat/framed.ts';
import type { Mat } from '../../mat/model.ts';
import { set, widthOf } from '../../text/line.ts';
import { INK, SMALL, type Style } from '../../text/styles.ts';
import type { Place } from './piece.ts';
import { roundedLength, roundedNumber } from './rounded.ts';
import { axisOf } from './words.ts';

/** One distance along an axis, mm of the piece. */
export interface Measured {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** Rows of distances beside the piece, the nearest first; no two in a row touch, lines and words counted. */
export type Row = readonly Measured[];

const STYLE: Style = { ...SMALL, colour: INK };
const PITCH = 5.2;
const FIRST = 3.6;
const GAP = 1.2;

export const DIMENSION_PENS: Readonly<Record<string, Pen>> = {
  dimension: { width: 0.12, colour: 0.25, dash: [], cap: 'butt' },
  witness: { width: 0.09, colour: 0.6, dash: [], cap: 'butt' },
};

/** All distances along one axis: borders and openings, what is seen, the whole mat. Each once. */
function distances(mat: Mat, job: Job, across: boolean): readonly Measured[] {
  const { units } = job;
  const whole = across ? mat.outer.width : mat.outer.height;
  const made: Measured[] = [];
  const seen = new Set<string>();
  const between = axisOf(mat, job, across);
  const add = (from: number, to: number, length = between(from, to)): void => {
    const key = `${from.toFixed(4)} ${to.toFixed(4)}`;
    if (to - from < 1e-6 || seen.has(key)) return;
    seen.add(key);
    made.push({ from, to, text: roundedNumber(length, units) });
  };
  const faces = mat.openings.map(({ layers }) => {
    const face = layers[0]!.faceBox;
    return across ? ([face.x, right(face)] as const) : ([face.y, bottom(face)] as const);
  });
  // A chain from edge to edge: to the next opening on that side, or to the edge of the mat.
  for (const [from, to] of faces) {
    add(Math.max(0, ...faces.map(([, end]) => end).filter((end) => end <= from + 1e-6)), from);
    add(from, to);
    add(to, Math.min(whole, ...faces.map(([start]) => start).filter((start) => start >= to - 1e-6)));
  }
  for (const { sight } of mat.openings) {
    const [from, to] = across ? [sight.x, right(sight)] : [sight.y, bottom(sight)];
    // What is seen is no part of a chain.
    add(from, to, roundedLength(to - from, units));
  }
  add(0, whole);
  // The longest says the unit of all.
  const last = made.at(-1);
  return last === undefined ? made : [...made.slice(0, -1), { ...last, text: `${last.text} ${units}` }];
}

/** Short ones first, each into the nearest row where it has room; the whole is always the outermost. */
export function rowsOf(measured: readonly Measured[], scale: number, fonts: Fonts): readonly Row[] {
  const rows: Measured[][] = [];
  const reach = ({ from, to, text }: Measured): readonly [number, number] => {
    const half = Math.max(((to - from) * scale) / 2, widthOf(text, STYLE, fonts) / 2 + GAP);
    const middle = ((from + to) * scale) / 2;
    return [middle - half, middle + half];
  };
  const free = (row: readonly Measured[], one: Measured): boolean => {
    const [a, b] = reach(one);
    return row.every((other) => {
      const [c, d] = reach(other);
      // Chains share their ends: lines may meet, words keep apart.
      return b <= c + 1e-6 || d <= a + 1e-6;
    });
  };
  const inner = measured.slice(0, -1);
  for (const one of inner) {
    const row = rows.find((each) => free(each, one));
    if (row === undefined) rows.push([one]);
    else row.push(one);
  }
  const last = measured.at(-1);
  if (last !== undefined) rows.push([last]);
  return rows;
}

export interface Dimensions {
  /** Below the piece, and right of it. */
  readonly across: readonly Row[];
  readonly down: readonly Row[];
}

export function dimensions(mat: Mat, job: Job, scale: number, fonts: Fonts): Dimensions {
  return {
    across: rowsOf(distances(mat, job, true), scale, fonts),
    down: rowsOf(distances(mat, job, false), scale, fonts),
  };
}

/** Room that so many rows take beside the piece, mm of the sheet. */
export const roomFor = (rows: readonly Row[]): number => (rows.length === 0 ? 0 : FIRST + rows.length * PITCH);

/** The words of the rows nearer to the piece, along the rows: no line runs through them. */
const wordsOf = (rows: readonly Row[], scale: number, fonts: Fonts): readonly (readonly Span[])[] =>
  rows.map((row) =>
    row.map(({ from, to, text }): Span => {
      const half = widthOf(text, STYLE, fonts) / 2 + 0.5;
      const middle = ((from + to) * scale) / 2;
      return [middle - half, middle + half];
    }),
  );

type Span = readonly [number, number];

/** Where a line at `along` that runs out to row `row` shows: from the piece, less what the words on its way take. */
function openings(along: number, row: number, words: readonly (readonly Span[])[]): readonly Span[] {
  const end = FIRST + (row + 0.72) * PITCH + 1;
  const spans: Span[] = [];
  let from = 1;
  for (let i = 0; i <= row; i++) {
    if (!words[i]!.some(([a, b]) => along > a && along < b)) continue;
    const line = FIRST + (i + 0.72) * PITCH;
    spans.push([from, line - 0.8 - STYLE.size]);
    from = line - 0.5;
  }
  return [...spans, [from, end] as const].filter(([a, b]) => b - a > 0.2);
}

/** Distances across below the piece, distances down at its right, words along their lines. */
export function dimensionItems(mat: Mat, job: Job, place: Place, rows: Dimensions, fonts: Fonts): readonly Item[] {
  const { scale, at } = place;
  const piece = pieceBox(mat, job);
  const low = at.y + bottom(piece) * scale;
  const far = at.x + right(piece) * scale;
  const made = (
    own: readonly Row[],
    origin: number,
    item: (pen: string, a: Span, b: Span) => Item,
    words: (text: string, along: number, out: number) => Item,
  ): readonly Item[] => {
    const taken = wordsOf(own, scale, fonts);
    return own.flatMap((row, i) =>
      row.flatMap(({ from, to, text }): Item[] => {
        const out = FIRST + (i + 0.72) * PITCH;
        const ends = [from * scale, to * scale] as const;
        return [
          ...ends.flatMap((along) =>
            openings(along, i, taken).map(([a, b]) => item('witness', [origin + along, a], [origin + along, b])),
          ),
          item('dimension', [origin + ends[0], out], [origin + ends[1], out]),
          ...ends.map((along) =>
            item('dimension', [origin + along - TICK, out + TICK], [origin + along + TICK, out - TICK]),
          ),
          words(text, origin + (ends[0] + ends[1]) / 2, out - 0.8),
        ];
      }),
    );
  };
  return [
    ...made(
      rows.across,
      at.x,
      (pen, [x1, y1], [x2, y2]) => ({ kind: 'line', pen, from: { x: x1, y: low + y1 }, to: { x: x2, y: low + y2 } }),
      (text, x, out) => set(text, x, low + out, STYLE, 'middle'),
    ),
    ...made(
      rows.down,
      at.y,
      (pen, [y1, x1], [y2, x2]) => ({ kind: 'line', pen, from: { x: far + x1, y: y1 }, to: { x: far + x2, y: y2 } }),
      (text, y, out) => set(text, far + out, y, STYLE, 'middle', -90),
    ),
  ];
}

const TICK = 0.75;
