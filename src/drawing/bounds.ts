import { textBox } from '../fonts/measure.ts';
import type { Fonts } from '../fonts/model.ts';
import { type Box, box, union } from '../geometry/box.ts';
import { directionAt, type Piece, partOf, piecesOf, pointAt, turningPoints } from '../geometry/curves.ts';
import { pathBox } from '../geometry/extent.ts';
import type { Path } from '../geometry/path.ts';
import { dot, length, minus, type Point } from '../geometry/point.ts';
import type { Drawing, Item, LineItem, Pen } from './model.ts';

/** Corners sharper than this keep no mitre (the default limit of PDF; SVG's is smaller). */
const MITRE_LIMIT = 10;

/**
 * The exact box of what an item puts on the paper, the pen's width included; undefined for what draws nothing.
 * A corner of a butt pen counts as mitred. A pen that the drawing does not have is a mistake of the program and throws.
 */
export function itemBox(item: Item, pens: Drawing['pens'], fonts: Fonts): Box | undefined {
  switch (item.kind) {
    case 'line':
      return lineBox(item, penOf(item.pen, pens));
    case 'path': {
      const boxes = item.paths.flatMap((path) => {
        if (item.pen !== undefined) return [strokedBox(path, penOf(item.pen, pens))];
        return item.fill === undefined ? [] : [pathBox(path)];
      });
      return boxes.length === 0 ? undefined : union(boxes);
    }
    case 'text':
      return item.text.trim() === '' ? undefined : textBox(item, fonts);
    case 'picture':
      return item.box;
    default: {
      const never: never = item;
      throw new TypeError(`unknown item ${JSON.stringify(never)}`);
    }
  }
}

export function penOf(name: string, pens: Drawing['pens']): Pen {
  const pen = pens[name];
  if (pen === undefined) throw new TypeError(`no pen is named ${JSON.stringify(name)}`);
  return pen;
}

/** The box of everything that is shown; undefined for an empty drawing. */
export function drawnBox(drawing: Drawing, fonts: Fonts): Box | undefined {
  const boxes = shownItems(drawing).flatMap((item) => itemBox(item, drawing.pens, fonts) ?? []);
  return boxes.length === 0 ? undefined : union(boxes);
}

/** Items of the groups that are shown unless asked otherwise, in the order of painting. */
export function shownItems(drawing: Drawing): readonly Item[] {
  return drawing.groups.flatMap((group) => (group.shown ? group.items : []));
}

function boxOf(points: readonly Point[]): Box {
  return union(points.map(({ x, y }) => box(x, y, 0, 0)));
}

/** The box of a path drawn with a pen: its turning points reach out by half the width, ends and corners as the pen makes them. */
export function strokedBox(path: Path, pen: Pen): Box {
  const half = pen.width / 2;
  const pieces = piecesOf(path).filter((piece) => directionAt(piece, 0) !== undefined);
  const points: Point[] = [];
  const around = ({ x, y }: Point): void => {
    points.push({ x: x - half, y: y - half }, { x: x + half, y: y + half });
  };
  const aside = (p: Point, way: Point): void => {
    points.push({ x: p.x - half * way.y, y: p.y + half * way.x }, { x: p.x + half * way.y, y: p.y - half * way.x });
  };
  for (const piece of pieces) {
    for (const t of turningPoints(piece)) {
      const way = directionAt(piece, t);
      if (way === undefined) around(pointAt(piece, t));
      else aside(pointAt(piece, t), way);
    }
    for (const part of [piece, ...tightBends(piece, half)]) {
      aside(part.from, directionAt(part, 0)!);
      aside(part.segment.to, directionAt(part, 1)!);
    }
  }
  if (pieces.length === 0) return box(path.start.x - half, path.start.y - half, pen.width, pen.width);
  pieces.forEach((piece, i) => {
    const next = pieces[i + 1] ?? (path.closed ? pieces[0] : undefined);
    const before = i === 0 && !path.closed;
    if (pen.cap === 'round') {
      if (before) around(piece.from);
      around(piece.segment.to);
    } else if (next !== undefined) {
      const tip = mitreTip(piece.segment.to, directionAt(piece, 1)!, directionAt(next, 0)!, half);
      if (tip !== undefined) points.push(tip);
    }
  });
  return boxOf(points);
}

/** As of a path of this one line: most items are one. */
function lineBox({ from, to }: LineItem, pen: Pen): Box {
  const half = pen.width / 2;
  const way = directionAt({ from, segment: { kind: 'line', to } }, 0);
  if (way === undefined) return box(from.x - half, from.y - half, pen.width, pen.width);
  const round = pen.cap === 'round' ? half : 0;
  const [wide, high] = [Math.max(Math.abs(half * way.y), round), Math.max(Math.abs(half * way.x), round)];
  const [x, y] = [Math.min(from.x, to.x) - wide, Math.min(from.y, to.y) - high];
  return box(x, y, Math.max(from.x, to.x) + wide - x, Math.max(from.y, to.y) + high - y);
}

/** Parts of a bend this small are taken to lie in one point. */
const POINT_SIZE = 1e-4;

/**
 * The parts of a cubic that bend more tightly than half the pen's width, cut small: there the stroke's side turns back
 * and may reach further out than at any end or level or upright place of the curve.
 */
function tightBends(piece: Piece, half: number): readonly Piece[] {
  const { from, segment } = piece;
  if (segment.kind !== 'cubic' || directionAt(piece, 0) === undefined) return [];
  const { c1, c2, to } = segment;
  const first = [minus(c1, from), minus(c2, c1), minus(to, c2)];
  const second = [minus(first[1]!, first[0]!), minus(first[2]!, first[1]!)];
  const chord = minus(to, from);
  const long = length(chord);
  // Curvature is at most |P″| / |P′|², with P″ ≤ 6·second and P′ ≥ 3·(what every first difference goes along the chord).
  const least = long === 0 ? 0 : Math.min(...first.map((way) => dot(way, chord) / long));
  if (least > 0 && 6 * half * Math.max(...second.map(length)) < 9 * least * least) return [];
  if (Math.max(...first.map(length)) < POINT_SIZE) return [piece];
  return [partOf(piece, 0, 0.5), partOf(piece, 0.5, 1)].flatMap((part) => tightBends(part, half));
}

/** The outer tip of a mitred corner; undefined where the line runs on, or is too sharp for one. */
function mitreTip(corner: Point, before: Point, after: Point, half: number): Point | undefined {
  const cross = before.x * after.y - before.y * after.x;
  const dot = before.x * after.x + before.y * after.y;
  if (Math.abs(cross) < 1e-9) return undefined;
  // φ between the two lines: 1/sin(φ/2) is how far the tip lies out, in half widths.
  const reach = 1 / Math.sqrt((1 + dot) / 2);
  if (reach > MITRE_LIMIT) return undefined;
  const bisector = { x: before.x - after.x, y: before.y - after.y };
  const size = Math.hypot(bisector.x, bisector.y);
  return { x: corner.x + (bisector.x / size) * half * reach, y: corner.y + (bisector.y / size) * half * reach };
}
