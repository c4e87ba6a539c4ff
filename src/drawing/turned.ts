import type { Path, Segment } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import type { Item } from './model.ts';

/** Quarter turns clockwise, as the eye sees it. */
export type Quarter = 0 | 1 | 2 | 3;

/** `p` turned about the origin. */
function turnedPoint(p: Point, quarter: Quarter): Point {
  switch (quarter) {
    case 0:
      return p;
    case 1:
      return { x: -p.y, y: p.x };
    case 2:
      return { x: -p.x, y: -p.y };
    case 3:
      return { x: p.y, y: -p.x };
  }
}

function movedSegment(segment: Segment, move: (p: Point) => Point): Segment {
  switch (segment.kind) {
    case 'line':
      return { kind: 'line', to: move(segment.to) };
    case 'arc':
      return { ...segment, to: move(segment.to), centre: move(segment.centre) };
    case 'cubic':
      return { kind: 'cubic', c1: move(segment.c1), c2: move(segment.c2), to: move(segment.to) };
  }
}

/** A path under a map that keeps lengths and the sense of turning. */
function movedPath(path: Path, move: (p: Point) => Point): Path {
  return { ...path, start: move(path.start), segments: path.segments.map((segment) => movedSegment(segment, move)) };
}

/** An item turned about the origin, then shifted by `by`. */
export function turnedItem(item: Item, quarter: Quarter, by: Point): Item {
  const move = (p: Point): Point => {
    const t = turnedPoint(p, quarter);
    return { x: t.x + by.x, y: t.y + by.y };
  };
  switch (item.kind) {
    case 'line':
      return { ...item, from: move(item.from), to: move(item.to) };
    case 'path':
      return { ...item, paths: item.paths.map((path) => movedPath(path, move)) };
    case 'text':
      return { ...item, at: move(item.at), turn: (item.turn + 90 * quarter) % 360 };
    case 'picture': {
      if (quarter !== 0) throw new RangeError('a picture is not turned');
      return { ...item, box: { ...item.box, x: item.box.x + by.x, y: item.box.y + by.y } };
    }
    default: {
      const never: never = item;
      throw new TypeError(`unknown item ${JSON.stringify(never)}`);
    }
  }
}
