import { type Box, box, grown } from '../geometry/box.ts';
import type { Size } from '../geometry/point.ts';
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

const matBox = ({ outer }: Mat): Box => box(0, 0, outer.width, outer.height);

/** What the mat lies in, as large as it came out and its clearance. */
export const rebateSize = ({ outer }: Mat, { clearance }: NonNullable<Job['mat']['frame']>): Size => ({
  width: outer.width + clearance,
  height: outer.height + clearance,
});

/** The edge of the frame that is seen around the mat, and the whole piece, both in the mat's own mm: the mat in the middle of its rebate. */
export function sightBox(mat: Mat, job: Job): Box {
  const { frame } = job.mat;
  if (frame === undefined) return matBox(mat);
  return grown(matBox(mat), frame.clearance / 2 - frame.lip);
}

/** The one place where the outside of a framed piece is made: from the sight outwards by the face of the moulding. */
export function pieceBox(mat: Mat, job: Job): Box {
  const frame = frameOf(job);
  return frame === undefined ? matBox(mat) : grown(sightBox(mat, job), frame.width);
}
