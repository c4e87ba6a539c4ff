import type { Path, Segment } from '../geometry/path.ts';
import { dot, leftOf, minus, type Point, plus, times, unit } from '../geometry/point.ts';

/** A straight side of a closed outline, travelled with the inside on the wished hand. */
export interface TravelledSide {
  readonly from: Point;
  readonly to: Point;
  /** Unit vector of the travel. */
  readonly direction: Point;
  /** Unit vector square to the side, out of the opening. */
  readonly outward: Point;
  /** The same side of the parallel outline: its corners are where the moved neighbours meet the moved side. */
  readonly moved: { readonly from: Point; readonly to: Point };
}

const mirrored = (p: Point, width: number): Point => ({ x: width - p.x, y: p.y });

/** The mirror image in x of an outline on a board `width` wide: face view to back view, and back again. */
export function mirror(path: Path, width: number): Path {
  const segments = path.segments.map((segment): Segment => {
    const to = mirrored(segment.to, width);
    switch (segment.kind) {
      case 'line':
        return { kind: 'line', to };
      case 'arc':
        return { kind: 'arc', to, centre: mirrored(segment.centre, width), clockwise: !segment.clockwise };
      case 'cubic':
        return { kind: 'cubic', c1: mirrored(segment.c1, width), c2: mirrored(segment.c2, width), to };
      default: {
        const never: never = segment;
        return never;
      }
    }
  });
  return { start: mirrored(path.start, width), segments, closed: path.closed };
}

/** The point halfway along an arc. */
function arcMiddle(from: Point, arc: Extract<Segment, { kind: 'arc' }>): Point {
  const a = minus(from, arc.centre);
  const b = minus(arc.to, arc.centre);
  const start = Math.atan2(a.y, a.x);
  const turn = Math.PI * 2;
  const swept = (((Math.atan2(b.y, b.x) - start) % turn) + turn) % turn;
  const angle = arc.clockwise ? start + swept / 2 : start - (turn - swept) / 2;
  const radius = Math.hypot(a.x, a.y);
  return { x: arc.centre.x + radius * Math.cos(angle), y: arc.centre.y + radius * Math.sin(angle) };
}

/** Whether a simple closed outline runs clockwise to the eye (x right, y down): the sign of its area, arcs as two chords. */
function runsClockwise(path: Path): boolean {
  const points: Point[] = [path.start];
  let from = path.start;
  for (const segment of path.segments) {
    if (segment.kind === 'arc') points.push(arcMiddle(from, segment));
    if (segment.kind === 'cubic') points.push(segment.c1, segment.c2);
    points.push(segment.to);
    from = segment.to;
  }
  let twice = 0;
  for (let i = 0; i < points.length; i++) {
    const a = points[i]!;
    const b = points[(i + 1) % points.length]!;
    twice += a.x * b.y - b.x * a.y;
  }
  return twice > 0;
}

/** Where the line through `at` along `along` meets the line through `other` along `otherAlong`; undefined where parallel. */
function meeting(at: Point, along: Point, other: Point, otherAlong: Point): Point | undefined {
  const cross = along.x * otherAlong.y - along.y * otherAlong.x;
  if (Math.abs(cross) < 1e-9) return undefined;
  const gap = minus(other, at);
  return plus(at, times(along, (gap.x * otherAlong.y - gap.y * otherAlong.x) / cross));
}

/** Where the line through `at` along the unit vector `along` meets a circle, at the place nearest to `at`. */
function meetingCircle(at: Point, along: Point, centre: Point, radius: number): Point | undefined {
  const middle = dot(minus(centre, at), along);
  const foot = plus(at, times(along, middle));
  const half = radius ** 2 - (foot.x - centre.x) ** 2 - (foot.y - centre.y) ** 2;
  if (radius <= 0 || half < 0) return undefined;
  const root = Math.sqrt(half);
  const reach = Math.abs(middle - root) <= Math.abs(middle + root) ? middle - root : middle + root;
  return plus(at, times(along, reach));
}

/**
 * The straight sides of a closed outline, all travelled the same way round, with the opening on `hand` of the travel,
 * and the same sides moved out of the opening by `outwards` (into it where negative). Sides come in the order of the travel.
 */
export function travelledSides(path: Path, hand: 'left' | 'right', outwards: number): readonly TravelledSide[] {
  const clockwise = runsClockwise(path);
  const starts = [path.start, ...path.segments.map((segment) => segment.to)];
  const count = path.segments.length;
  const outwardOf = (from: Point, to: Point): Point => {
    const left = leftOf(minus(to, from));
    return clockwise ? left : times(left, -1);
  };
  /** The moved corner between a side and its neighbour, which runs from `from`; a curve that is not circular is taken as tangent. */
  const corner = (face: Point, along: Point, outward: Point, neighbour: Segment, from: Point): Point => {
    const foot = plus(face, times(outward, outwards));
    if (neighbour.kind === 'line') {
      const shift = times(outwardOf(from, neighbour.to), outwards);
      return meeting(foot, along, plus(from, shift), minus(neighbour.to, from)) ?? foot;
    }
    if (neighbour.kind === 'cubic') return foot;
    const radius = Math.hypot(from.x - neighbour.centre.x, from.y - neighbour.centre.y);
    const grown = neighbour.clockwise === clockwise ? radius + outwards : radius - outwards;
    return meetingCircle(foot, along, neighbour.centre, grown) ?? foot;
  };
  const sides: TravelledSide[] = [];
  path.segments.forEach((segment, i) => {
    if (segment.kind !== 'line') return;
    const from = starts[i]!;
    const to = segment.to;
    const along = unit(minus(to, from));
    const outward = outwardOf(from, to);
    const before = (i + count - 1) % count;
    const after = (i + 1) % count;
    const movedFrom = corner(from, along, outward, path.segments[before]!, starts[before]!);
    const movedTo = corner(to, along, outward, path.segments[after]!, starts[after]!);
    const forwards = clockwise === (hand === 'right');
    sides.push(
      forwards
        ? { from, to, direction: along, outward, moved: { from: movedFrom, to: movedTo } }
        : { from: to, to: from, direction: times(along, -1), outward, moved: { from: movedTo, to: movedFrom } },
    );
  });
  return clockwise === (hand === 'right') ? sides : sides.reverse();
}
