import { parallelOf } from '../geometry/parallel.ts';
import type { Path, Segment } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import type { Side } from '../geometry/sides.ts';
import type { Job } from '../job/job.ts';
import type { DecorRequest } from '../job/lines.ts';
import type { Mat } from './model.ts';

/** A line on the face of the top mat, as its job asks for it, in the face view. */
export interface Decor {
  readonly opening: number;
  readonly request: DecorRequest;
  /** From 1, among the lines of its opening. */
  readonly number: number;
  /** All round the opening. */
  readonly whole: Path;
  /** What is made of it: the whole, or the sides that were asked for, neighbours joined. */
  readonly runs: readonly Path[];
}

/** Grooves and ink lines; one whose outline falls apart was refused before. */
export function decor(mat: Mat, job: Job): readonly Decor[] {
  return job.openings.flatMap((request, opening) =>
    (request.decor ?? []).flatMap((each, i): Decor[] => {
      const whole = parallelOf(mat.openings[opening]!.layers[0]!.face, each.distance);
      if (typeof whole === 'string') return [];
      return [{ opening, request: each, number: i + 1, whole, runs: runsAlong(whole, each.sides) }];
    }),
  );
}

/** The side's name by the larger part of its outward direction, in the face view; the outline runs clockwise. */
export function sideAlong(from: Point, to: Point): Side {
  const out = { x: to.y - from.y, y: from.x - to.x };
  if (Math.abs(out.y) >= Math.abs(out.x)) return out.y < 0 ? 'top' : 'bottom';
  return out.x < 0 ? 'left' : 'right';
}

/** The straight sides of those names, neighbours joined to one open path; the whole where none are named. */
export function runsAlong(whole: Path, sides: readonly Side[] | undefined): readonly Path[] {
  if (sides === undefined) return [whole];
  const starts = [whole.start, ...whole.segments.map((segment) => segment.to)];
  const wanted = whole.segments.map(
    (segment, i) => segment.kind === 'line' && sides.includes(sideAlong(starts[i]!, segment.to)),
  );
  const gap = wanted.indexOf(false);
  if (gap < 0) return [whole];
  const count = wanted.length;
  const runs: { start: Point; segments: Segment[]; closed: false }[] = [];
  for (let n = 1; n <= count; n++) {
    const i = (gap + n) % count;
    if (!wanted[i]) continue;
    if (n === 1 || !wanted[(i + count - 1) % count]) runs.push({ start: starts[i]!, segments: [], closed: false });
    runs.at(-1)!.segments.push(whole.segments[i]!);
  }
  return runs;
}

/** Two bevels that meet at the bottom: half of the width times the tangent of the angle. */
export const grooveDepth = ({ width, angle }: Pick<DecorRequest, 'width' | 'angle'>): number =>
  (width / 2) * Math.tan((angle * Math.PI) / 180);
