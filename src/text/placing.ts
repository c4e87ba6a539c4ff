import type { Quarter } from '../drawing/turned.ts';
import { type Box, contains } from '../geometry/box.ts';
import type { Point } from '../geometry/point.ts';
import { type Block, blockBox } from './blocks.ts';
import type { Taken } from './taken.ts';

export interface Candidate {
  readonly block: Block;
  readonly quarter: Quarter;
  /** Top left of the turned block. */
  readonly at: Point;
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
    if (contains(within, area) && taken.isFree(area, gap)) return { candidate, box: area };
  }
  return undefined;
}
