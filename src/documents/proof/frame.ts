import type { Item, PathItem } from '../../drawing/model.ts';
import { type Box, bottom, grown, right } from '../../geometry/box.ts';
import { type Path, polygon, type Segment } from '../../geometry/path.ts';
import { type Point, point } from '../../geometry/point.ts';
import { SIDES, type Side } from '../../geometry/sides.ts';
import { darker, mixed, slope } from './shades.ts';

/** Shares of the moulding's width that slope down to the outside and to the sight. */
const OUTER = 0.07;
const INNER = 0.16;

const OUTWARDS: Readonly<Record<Side, Point>> = {
  top: point(0, -1),
  right: point(1, 0),
  bottom: point(0, 1),
  left: point(-1, 0),
};

/** Corners of a box, clockwise from the top left, and the two that a side runs between. */
const corners = (b: Box): readonly Point[] => [
  point(b.x, b.y),
  point(right(b), b.y),
  point(right(b), bottom(b)),
  point(b.x, bottom(b)),
];
const ends = (b: Box, side: Side): readonly [Point, Point] => {
  const at = SIDES.indexOf(side);
  const all = corners(b);
  return [all[at]!, all[(at + 1) % 4]!];
};

/** A side of a mitred frame between two boxes. */
function length(outer: Box, inner: Box, side: Side, fill: string): PathItem {
  const [a, b] = ends(outer, side);
  const [c, d] = ends(inner, side);
  return { kind: 'path', paths: [polygon([a, b, d, c])], fill };
}

/** A mitred frame around `sight`: its face in its own colour, its edges as the light finds them. */
export function frameItems(sight: Box, width: number, colour: string): readonly Item[] {
  const outer = grown(sight, width);
  const rim = grown(sight, width * (1 - OUTER));
  const step = grown(sight, width * INNER);
  const face: PathItem = {
    kind: 'path',
    paths: [polygon(corners(outer)), polygon(corners(sight))],
    fill: colour,
    id: 'frame',
  };
  const towards = (side: Side): Point => point(-OUTWARDS[side].x, -OUTWARDS[side].y);
  const edges = SIDES.flatMap((side) => [
    length(outer, rim, side, mixed(colour, slope(colour, towards(side)), 0.8)),
    length(step, sight, side, slope(colour, OUTWARDS[side])),
  ]);
  const mitres = corners(outer).map((from, i): Item => {
    return { kind: 'line', pen: mitrePen(colour), from, to: corners(sight)[i]! };
  });
  return [face, ...edges, ...mitres];
}

/** Each colour of moulding has a pen of its own: variants may differ in it. */
export const mitrePen = (colour: string): string => `mitre ${colour}`;
export const mitreColour = (colour: string): string => darker(colour, 0.28);

/** What the lip throws on the mat: two narrow bands along the top and the left, in shades of the mat. */
export function lipShadow(sight: Box, depth: number, colour: string): readonly PathItem[] {
  const band = (by: number, share: number): PathItem => {
    const far = point(right(sight), bottom(sight));
    const path = polygon([
      point(sight.x, sight.y),
      point(far.x, sight.y),
      point(far.x, sight.y + by),
      point(sight.x + by * 0.6, sight.y + by),
      point(sight.x + by * 0.6, far.y),
      point(sight.x, far.y),
    ]);
    return { kind: 'path', paths: [path], fill: darker(colour, share) };
  };
  return [band(depth, 0.05), band(depth * 0.62, 0.09), band(depth * 0.3, 0.14)];
}

const PAPER = '#ffffff';

/** A soft shadow on the sheet: below and right of the piece, in steps that no eye tells apart. */
export function shadow(piece: Box, reach: number): readonly PathItem[] {
  const steps = 14;
  return Array.from({ length: steps }, (_, i): PathItem => {
    const share = (i + 1) / steps;
    const by = reach * (1 - 1.15 * share);
    const own = grown(piece, by);
    const box = { ...own, x: own.x + reach * 0.35, y: own.y + reach * 0.55 };
    const fill = mixed(PAPER, '#7d7a76', 0.4 * share * share);
    return { kind: 'path', paths: [rounded(box, Math.max(0.2, by + reach * 0.3))], fill };
  });
}

function rounded(b: Box, radius: number): Path {
  const r = Math.min(radius, b.width / 2, b.height / 2);
  const arc = (x: number, y: number, cx: number, cy: number): Segment => ({
    kind: 'arc',
    to: point(x, y),
    centre: point(cx, cy),
    clockwise: true,
  });
  const [x0, y0, x1, y1] = [b.x, b.y, right(b), bottom(b)];
  return {
    start: point(x0 + r, y0),
    segments: [
      { kind: 'line', to: point(x1 - r, y0) },
      arc(x1, y0 + r, x1 - r, y0 + r),
      { kind: 'line', to: point(x1, y1 - r) },
      arc(x1 - r, y1, x1 - r, y1 - r),
      { kind: 'line', to: point(x0 + r, y1) },
      arc(x0, y1 - r, x0 + r, y1 - r),
      { kind: 'line', to: point(x0, y0 + r) },
      arc(x0 + r, y0, x0 + r, y0 + r),
    ],
    closed: true,
  };
}
