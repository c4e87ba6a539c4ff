import type { Path, Segment } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import type { Rotation } from './document.ts';
import type { Item, LineItem, TextItem } from './model.ts';

/** `p` turned about the origin. */
function turnedPoint(p: Point, rotation: Rotation): Point {
  switch (rotation) {
    case 0:
      return p;
    case 90:
      return { x: -p.y, y: p.x };
    case 180:
      return { x: -p.x, y: -p.y };
    case 270:
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
export function turnedItem(item: Item, rotation: Rotation, by: Point): Item {
  const move = (p: Point): Point => {
    const t = turnedPoint(p, rotation);
    return { x: t.x + by.x, y: t.y + by.y };
  };
  // Words are moved from block to block, some thousand times for a sheet: written out, all of them have one shape.
  switch (item.kind) {
    case 'line': {
      const { kind, pen, from, to, id } = item;
      const line: LineItem = { kind, pen, from: move(from), to: move(to) };
      return id === undefined ? line : { ...line, id };
    }
    case 'path':
      return { ...item, paths: item.paths.map((path) => movedPath(path, move)) };
    case 'text': {
      const { kind, text, at, anchor, size, weight, turn, colour, id } = item;
      const words: TextItem = {
        kind,
        text,
        at: move(at),
        anchor,
        size,
        weight,
        turn: (turn + rotation) % 360,
        colour,
      };
      return id === undefined ? words : { ...words, id };
    }
    case 'picture': {
      if (rotation !== 0) throw new RangeError('a picture is not turned');
      return { ...item, box: { ...item.box, x: item.box.x + by.x, y: item.box.y + by.y } };
    }
    default: {
      const never: never = item;
      throw new TypeError(`unknown item ${JSON.stringify(never)}`);
    }
  }
}
