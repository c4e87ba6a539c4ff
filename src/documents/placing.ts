import type { Quarter } from '../drawing/turned.ts';
import { type Box, bottom, contains, grown, overlaps, right } from '../geometry/box.ts';
import { type Line, meetsBox } from '../geometry/clip.ts';
import type { Point } from '../geometry/point.ts';
import { type Block, blockBox } from './blocks.ts';

/** A line with half of its width. */
export interface InkedLine extends Line {
  readonly half: number;
}

/** What a label must not touch: lines already drawn and words already set. */
export interface Taken {
  readonly lines: readonly InkedLine[];
  readonly boxes: readonly Box[];
}

export interface Candidate {
  readonly block: Block;
  readonly quarter: Quarter;
  /** Top left of the turned block. */
  readonly at: Point;
}

export function isFree(area: Box, taken: Taken, gap: number): boolean {
  const padded = grown(area, gap);
  if (taken.boxes.some((other) => overlaps(padded, other))) return false;
  const { x, y } = padded;
  const toX = right(padded);
  const toY = bottom(padded);
  return !taken.lines.some((line) => {
    const { half } = line;
    return meetsBox(line, x - half, y - half, toX + half, toY + half);
  });
}

/** The first candidate that lies inside `within` and touches nothing; undefined where none does. */
export function firstFree(
  candidates: Iterable<Candidate>,
  within: Box,
  taken: Taken,
  gap: number,
): { readonly candidate: Candidate; readonly box: Box } | undefined {
  for (const candidate of candidates) {
    const area = blockBox(candidate.block, candidate.quarter, candidate.at);
    if (contains(within, area) && isFree(area, taken, gap)) return { candidate, box: area };
  }
  return undefined;
}
