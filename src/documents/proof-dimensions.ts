import type { Item, Pen } from '../drawing/model.ts';
import { bottom, right } from '../geometry/box.ts';
import type { Job } from '../job/model.ts';
import type { Mat } from '../mat/model.ts';
import { type Place, pieceBox } from './proof-piece.ts';
import { number } from './proof-words.ts';
import { INK, SIZE, type Style, set, widthOf } from './type-scale.ts';

/** One distance along an axis, mm of the piece. */
export interface Measured {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** Rows of distances beside the piece, the nearest first; no two in a row touch, lines and words counted. */
export type Row = readonly Measured[];

const STYLE: Style = { size: SIZE.small, weight: 'regular', colour: INK };
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
  const add = (from: number, to: number): void => {
    const key = `${from.toFixed(4)} ${to.toFixed(4)}`;
    if (to - from < 1e-6 || seen.has(key)) return;
    seen.add(key);
    made.push({ from, to, text: number(to - from, units) });
  };
  for (const { layers } of mat.openings) {
    const face = layers[0]!.faceBox;
    const [from, to] = across ? [face.x, right(face)] : [face.y, bottom(face)];
    add(0, from);
    add(from, to);
    add(to, whole);
  }
  for (const { sight } of mat.openings) {
    if (across) add(sight.x, right(sight));
    else add(sight.y, bottom(sight));
  }
  add(0, whole);
  return made;
}

/** Short ones first, each into the nearest row where it has room; the whole is always the outermost. */
export function rowsOf(measured: readonly Measured[], scale: number): readonly Row[] {
  const rows: Measured[][] = [];
  const reach = ({ from, to, text }: Measured): readonly [number, number] => {
    const half = Math.max(((to - from) * scale) / 2, widthOf(text, STYLE) / 2 + GAP);
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

export function dimensions(mat: Mat, job: Job, scale: number): Dimensions {
  return {
    across: rowsOf(distances(mat, job, true), scale),
    down: rowsOf(distances(mat, job, false), scale),
  };
}

/** Room that so many rows take beside the piece, mm of the sheet. */
export const roomFor = (rows: readonly Row[]): number => (rows.length === 0 ? 0 : FIRST + rows.length * PITCH);

export function dimensionItems(mat: Mat, job: Job, place: Place, rows: Dimensions): readonly Item[] {
  const { scale, at } = place;
  const piece = pieceBox(mat, job);
  const low = at.y + bottom(piece) * scale;
  const far = at.x + right(piece) * scale;
  const line = (pen: string, x1: number, y1: number, x2: number, y2: number): Item => {
    return { kind: 'line', pen, from: { x: x1, y: y1 }, to: { x: x2, y: y2 } };
  };
  const tick = 0.75;
  const across = rows.across.flatMap((row, i) =>
    row.flatMap(({ from, to, text }): Item[] => {
      const y = low + FIRST + (i + 0.72) * PITCH;
      const [x1, x2] = [at.x + from * scale, at.x + to * scale];
      return [
        ...[x1, x2].map((x) => line('witness', x, low + 1, x, y + 1)),
        line('dimension', x1, y, x2, y),
        ...[x1, x2].map((x) => line('dimension', x - tick, y + tick, x + tick, y - tick)),
        set(text, (x1 + x2) / 2, y - 0.8, STYLE, 'middle'),
      ];
    }),
  );
  const down = rows.down.flatMap((row, i) =>
    row.flatMap(({ from, to, text }): Item[] => {
      const x = far + FIRST + (i + 0.72) * PITCH;
      const [y1, y2] = [at.y + from * scale, at.y + to * scale];
      return [
        ...[y1, y2].map((y) => line('witness', far + 1, y, x + 1, y)),
        line('dimension', x, y1, x, y2),
        ...[y1, y2].map((y) => line('dimension', x - tick, y + tick, x + tick, y - tick)),
        { ...set(text, x - 0.8, (y1 + y2) / 2, STYLE, 'middle'), turn: -90 },
      ];
    }),
  );
  return [...across, ...down];
}
