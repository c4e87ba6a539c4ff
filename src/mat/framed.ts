import { type Box, box, grown } from '../geometry/box.ts';
import type { Job } from '../job/job.ts';
import type { Mat } from './model.ts';

/** What stands around the mat, mm of the piece. */
export interface Frame {
  /** Of the moulding's face. */
  readonly width: number;
  readonly colour: string;
  /** True where the job or the shop said so; else a usual one is drawn and the sheet tells it. */
  readonly known: boolean;
}

/** A moulding that nobody described: a dark one of usual width (common practice, no source). */
const USUAL = { width: 20, colour: '#3b3632' };

export function frameOf(job: Job): Frame | undefined {
  const { frame } = job.mat;
  if (frame === undefined) return undefined;
  return {
    width: frame.width ?? USUAL.width,
    colour: frame.colour ?? USUAL.colour,
    known: frame.width !== undefined,
  };
}

/** The mat as the frame leaves it to be seen, and the whole piece, both in the mat's own mm. */
export function seenBox(mat: Mat): Box {
  return grown(box(0, 0, mat.outer.width, mat.outer.height), -mat.lip);
}

export function pieceBox(mat: Mat, job: Job): Box {
  const frame = frameOf(job);
  return frame === undefined ? box(0, 0, mat.outer.width, mat.outer.height) : grown(seenBox(mat), frame.width);
}
