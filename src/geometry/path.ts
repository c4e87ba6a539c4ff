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

/** The same path with every point moved by `place`, which must keep circles round (a shift, a turn, an even scale). */
export function placedPath(path: Path, place: (p: Point) => Point): Path {
  const segments = path.segments.map((segment) => placedSegment(segment, place));
  return { start: place(path.start), segments, closed: path.closed };
}

export function placedSegment(segment: Segment, place: (p: Point) => Point): Segment {
  const to = place(segment.to);
  switch (segment.kind) {
    case 'line':
      return { kind: 'line', to };
    case 'arc':
      return { ...segment, to, centre: place(segment.centre) };
    case 'cubic':
      return { kind: 'cubic', c1: place(segment.c1), c2: place(segment.c2), to };
    default: {
      const never: never = segment;
      return never;
    }
  }
}

/** The same path run through the other way. */
export function reversed(path: Path): Path {
  const starts = [path.start, ...path.segments.map((segment) => segment.to)];
  const segments = path.segments
    .map((segment, i): Segment => {
      const to = starts[i]!;
      switch (segment.kind) {
        case 'line':
          return { kind: 'line', to };
        case 'arc':
          return { ...segment, to, clockwise: !segment.clockwise };
        case 'cubic':
          return { kind: 'cubic', c1: segment.c2, c2: segment.c1, to };
        default: {
          const never: never = segment;
          return never;
        }
      }
    })
    .reverse();
  return { start: starts.at(-1)!, segments, closed: path.closed };
}

/** The stretches of a closed path between its straight sides, as open paths; the whole path where it has no straight side. */
export function curvedParts(path: Path): readonly Path[] {
  const first = path.segments.findIndex((segment) => segment.kind === 'line');
  if (first < 0) return [path];
  const turned = [...path.segments.slice(first), ...path.segments.slice(0, first)];
  let at = path.segments[first - 1]?.to ?? path.start;
  const parts: { start: Point; segments: Segment[]; closed: false }[] = [];
  let open = false;
  for (const segment of turned) {
    if (segment.kind === 'line') open = false;
    else {
      if (!open) parts.push({ start: at, segments: [], closed: false });
      parts.at(-1)!.segments.push(segment);
      open = true;
    }
    at = segment.to;
  }
  return parts;
}
