/** A file of instances with equal sheets: plain JSON, read where it lies. */
import { readFileSync } from 'node:fs';
import type { Box } from '../../src/geometry/box.ts';
import type { StockInput } from '../../src/stock/planner/model.ts';
import { gap, separable } from '../stock/check-plan.ts';
import type { Problem } from './packers.ts';

/** What is known of an instance: no plan needs fewer than `lb` sheets, and one with `ub` is known. */
interface Known {
  readonly lb: number;
  readonly ub: number;
}

export interface StockInstance {
  readonly id: string;
  readonly sheet: readonly [width: number, height: number];
  readonly items: readonly (readonly [width: number, height: number, demand: number])[];
  readonly rotated: Known;
  readonly oriented: Known;
}

export function readInstances(file: string): readonly StockInstance[] {
  return (JSON.parse(readFileSync(file, 'utf8')) as { instances: readonly StockInstance[] }).instances;
}

export function inputOf({ sheet, items }: StockInstance, turn: boolean, options: StockInput['options']): StockInput {
  return {
    sheets: [{ id: 'sheet', width: sheet[0], height: sheet[1] }],
    pieces: items.map(([width, height, count], i) => ({ id: String(i), width, height, count, turn })),
    ...(options === undefined ? {} : { options }),
  };
}

export function problemOf({ sheet, items }: StockInstance, turn: boolean): Problem {
  const blanks = items.flatMap(([width, height, demand]) => Array.from({ length: demand }, () => ({ width, height })));
  return { sheet: { width: sheet[0], height: sheet[1] }, blanks, turn };
}

/** Throws where blanks are missing, overlap or stick out: a packer that does that must not be counted. */
export function mustBeLaid({ sheet, blanks, turn }: Problem, sheets: readonly (readonly Box[])[]): void {
  const key = (width: number, height: number): string =>
    turn ? `${Math.min(width, height)} ${Math.max(width, height)}` : `${width} ${height}`;
  const wanted = blanks.map(({ width, height }) => key(width, height)).sort();
  const laid = sheets.flatMap((boxes) => boxes.map(({ width, height }) => key(width, height))).sort();
  if (laid.join() !== wanted.join()) throw new Error('blanks are missing');
  for (const boxes of sheets) {
    for (const [i, a] of boxes.entries()) {
      const inside = a.x >= 0 && a.y >= 0 && a.x + a.width <= sheet.width && a.y + a.height <= sheet.height;
      if (!inside || boxes.slice(i + 1).some((b) => gap(a, b) < 0)) throw new Error('blanks overlap or stick out');
    }
  }
}

/** Sheets that can be cut from edge to edge. */
export const cuttable = (sheets: readonly (readonly Box[])[]): number =>
  sheets.filter((boxes) => separable(boxes, 0)).length;
