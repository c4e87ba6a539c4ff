import type { Point } from './point.ts';

/** Arcs are circular. `clockwise` is as the eye sees it (x right, y down). Cubics are Bézier curves. */
export type Segment =
  | { readonly kind: 'line'; readonly to: Point }
  | { readonly kind: 'arc'; readonly to: Point; readonly centre: Point; readonly clockwise: boolean }
  | { readonly kind: 'cubic'; readonly c1: Point; readonly c2: Point; readonly to: Point };

/** One connected outline. A closed path ends where it starts; no segment repeats its start. */
export interface Path {
  readonly start: Point;
  readonly segments: readonly Segment[];
  readonly closed: boolean;
}

/** A closed or open path of straight lines; the closing side of a closed one is written out. */
export function polygon(points: readonly Point[], closed = true): Path {
  const [start, ...rest] = points;
  if (start === undefined) throw new RangeError('a polygon needs a point');
  const segments = (closed ? [...rest, start] : rest).map((to): Segment => ({ kind: 'line', to }));
  return { start, segments, closed };
}

/** Straight sides as pairs of points, in order; empty for the curved ones. */
export function straightSides(path: Path): readonly { readonly from: Point; readonly to: Point }[] {
  const sides: { from: Point; to: Point }[] = [];
  let from = path.start;
  for (const segment of path.segments) {
    if (segment.kind === 'line') sides.push({ from, to: segment.to });
    from = segment.to;
  }
  return sides;
}
