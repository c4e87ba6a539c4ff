import type { Fonts } from '../fonts/model.ts';
import { type Box, bottom, box, centre, grown, overlaps, right } from '../geometry/box.ts';
import { monotone, type Piece, partOf, piecesOf } from '../geometry/curves.ts';
import type { Path } from '../geometry/path.ts';
import { distance, type Point } from '../geometry/point.ts';
import { itemBox, penOf } from './bounds.ts';
import type { Drawing, Item, Pen } from './model.ts';

/** Curves are followed down to chords of this length; nearer than that counts as touching. */
const FINEST = 0.01;

/**
 * Whether an item really puts something on the paper inside `area` (its inside: touching its edge is not enough).
 * Lines and curves are followed with the width of their pen, not by their boxes; fills by what they fill, even-odd or each path by itself.
 * A gap between dashes counts as drawn; a text or a picture fills its box.
 */
export function touches(item: Item, area: Box, pens: Drawing['pens'], fonts: Fonts): boolean {
  const around = itemBox(item, pens, fonts);
  if (around === undefined || !overlaps(around, area)) return false;
  switch (item.kind) {
    case 'line':
      return strokeTouches({ from: item.from, segment: { kind: 'line', to: item.to } }, penOf(item.pen, pens), area);
    case 'path': {
      const { pen, fill, paths } = item;
      if (pen !== undefined) {
        const drawn = penOf(pen, pens);
        if (paths.some((path) => piecesOf(path).some((piece) => strokeTouches(piece, drawn, area)))) return true;
      }
      if (fill === undefined) return false;
      return item.rule === 'nonzero' ? paths.some((path) => fillTouches([path], area)) : fillTouches(paths, area);
    }
    case 'text':
    case 'picture':
      return true;
    default: {
      const never: never = item;
      throw new TypeError(`unknown item ${JSON.stringify(never)}`);
    }
  }
}

/** Boxes that together hold what an item draws, none longer than `longest` where it runs neither level nor upright. */
export function coverBoxes(item: Item, pens: Drawing['pens'], longest: number, fonts: Fonts): readonly Box[] {
  if (item.kind === 'line')
    return pieceBoxes({ from: item.from, segment: { kind: 'line', to: item.to } }, penOf(item.pen, pens), longest);
  const around = itemBox(item, pens, fonts);
  if (around === undefined) return [];
  switch (item.kind) {
    case 'path': {
      if (item.fill !== undefined || item.pen === undefined) return [around];
      const pen = penOf(item.pen, pens);
      return item.paths.flatMap((path) => piecesOf(path).flatMap((piece) => pieceBoxes(piece, pen, longest)));
    }
    case 'text':
    case 'picture':
      return [around];
    default: {
      const never: never = item;
      throw new TypeError(`unknown item ${JSON.stringify(never)}`);
    }
  }
}

function pieceBoxes(piece: Piece, pen: Pen, longest: number): readonly Box[] {
  return monotone(piece).flatMap((part) => {
    const [a, b] = [part.from, part.segment.to];
    const [dx, dy] = [Math.abs(b.x - a.x), Math.abs(b.y - a.y)];
    if (part.segment.kind === 'line' && pen.cap === 'butt' && (dx < 1e-9 || dy < 1e-9)) {
      const half = pen.width / 2;
      const [sideways, along] = dx < dy ? [half, 0] : [0, half];
      return [box(Math.min(a.x, b.x) - sideways, Math.min(a.y, b.y) - along, dx + 2 * sideways, dy + 2 * along)];
    }
    return shortParts(part, longest).map((short) => grown(endsBox(short), pen.width / 2));
  });
}

/** A part that runs one way, halved until none is longer in x or y, unless it runs level or upright. */
function shortParts(part: Piece, longest: number): readonly Piece[] {
  const { width, height } = endsBox(part);
  if (Math.max(width, height) <= longest || Math.min(width, height) < 1e-9) return [part];
  return [partOf(part, 0, 0.5), partOf(part, 0.5, 1)].flatMap((half) => shortParts(half, longest));
}

/** The box of a part that runs one way in x and in y, without a pen. */
function endsBox({ from, segment: { to } }: Piece): Box {
  return box(Math.min(from.x, to.x), Math.min(from.y, to.y), Math.abs(to.x - from.x), Math.abs(to.y - from.y));
}

function strokeTouches(piece: Piece, pen: Pen, area: Box): boolean {
  const half = pen.width / 2;
  const { segment } = piece;
  if (segment.kind === 'line') {
    if (pen.cap === 'butt') return barTouches(piece.from, segment.to, half, area);
    return distanceToBox(piece.from, segment.to, area) < half - 1e-9;
  }
  return monotone(piece).some((part) => curveTouches(part, half, area));
}

function curveTouches(part: Piece, half: number, area: Box): boolean {
  const ends = endsBox(part);
  if (!overlaps(grown(ends, half), area)) return false;
  if (isWithin(part.from, area)) return true;
  if (Math.max(ends.width, ends.height) <= FINEST) return distanceToBox(part.from, part.segment.to, area) < half;
  return curveTouches(partOf(part, 0, 0.5), half, area) || curveTouches(partOf(part, 0.5, 1), half, area);
}

/** Strictly. */
function isWithin(p: Point, area: Box): boolean {
  return p.x > area.x && p.x < right(area) && p.y > area.y && p.y < bottom(area);
}

/** A line with square ends is a rectangle: it meets a box unless one of the four directions of their sides parts them. */
function barTouches(from: Point, to: Point, half: number, area: Box): boolean {
  const long = distance(from, to);
  if (long === 0) return false;
  const along = { x: (to.x - from.x) / long, y: (to.y - from.y) / long };
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const target = centre(area);
  const [dx, dy] = [target.x - middle.x, target.y - middle.y];
  const reach = (wx: number, wy: number) =>
    (long / 2) * Math.abs(along.x * wx + along.y * wy) + half * Math.abs(-along.y * wx + along.x * wy);
  const extent = (wx: number, wy: number) => (area.width / 2) * Math.abs(wx) + (area.height / 2) * Math.abs(wy);
  const parted = (wx: number, wy: number) => Math.abs(dx * wx + dy * wy) >= reach(wx, wy) + extent(wx, wy) - 1e-9;
  return !(parted(1, 0) || parted(0, 1) || parted(along.x, along.y) || parted(-along.y, along.x));
}

/** Between a straight line and a box; 0 where they meet. */
function distanceToBox(from: Point, to: Point, area: Box): number {
  if (barTouches(from, to, 0, grown(area, 1e-9))) return 0;
  const corners = [
    { x: area.x, y: area.y },
    { x: right(area), y: area.y },
    { x: right(area), y: bottom(area) },
    { x: area.x, y: bottom(area) },
  ];
  const nearest = (p: Point) => {
    const clamped = {
      x: Math.min(Math.max(p.x, area.x), right(area)),
      y: Math.min(Math.max(p.y, area.y), bottom(area)),
    };
    return distance(p, clamped);
  };
  return Math.min(nearest(from), nearest(to), ...corners.map((corner) => distanceToLine(corner, from, to)));
}

function distanceToLine(p: Point, from: Point, to: Point): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - from.x) * dx + (p.y - from.y) * dy) / square));
  return Math.hypot(from.x + t * dx - p.x, from.y + t * dy - p.y);
}

function fillTouches(paths: readonly Path[], area: Box): boolean {
  const pieces = paths.flatMap((path) => piecesOf(path).flatMap(monotone));
  if (
    pieces.some((part) =>
      part.segment.kind === 'line' ? barTouches(part.from, part.segment.to, 0, area) : curveTouches(part, 0, area),
    )
  )
    return true;
  // No edge runs through the area, so it is filled whole or not at all.
  return isInside(pieces, centre(area));
}

/** Even-odd, by a ray to the right over parts that run one way. */
function isInside(pieces: readonly Piece[], p: Point): boolean {
  let inside = false;
  for (const part of pieces) if (crossesRay(part, p)) inside = !inside;
  return inside;
}

function crossesRay(part: Piece, p: Point): boolean {
  const [a, b] = [part.from, part.segment.to];
  if (a.y > p.y === b.y > p.y || Math.max(a.x, b.x) <= p.x) return false;
  if (Math.min(a.x, b.x) > p.x) return true;
  if (part.segment.kind === 'line') return a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x) > p.x;
  if (Math.max(Math.abs(a.x - b.x), Math.abs(a.y - b.y)) <= FINEST) return (a.x + b.x) / 2 > p.x;
  return crossesRay(partOf(part, 0, 0.5), p) || crossesRay(partOf(part, 0.5, 1), p);
}
