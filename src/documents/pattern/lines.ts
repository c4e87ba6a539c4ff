import type { Stroke } from '../../bench/model.ts';
import type { LineItem, PathItem, Pen } from '../../drawing/model.ts';
import { type Box, bottom, box, grown, right } from '../../geometry/box.ts';
import { clipLine, type Line } from '../../geometry/clip.ts';
import { polygon } from '../../geometry/path.ts';
import { distance, minus, type Point, plus, point, times, unit } from '../../geometry/point.ts';
import { defined } from '../../problems/defined.ts';
import type { Room } from '../../text/room.ts';
import { LEADER } from '../full-scale/label-setter.ts';
import { CHECK_PEN } from '../full-scale/tape-checks.ts';

/** Told apart by dash and weight alone; only the line to cut is solid. */
export const PENS: Readonly<Record<string, Pen>> = {
  cut: { width: 0.35, colour: 0, dash: [], cap: 'butt' },
  face: { width: 0.25, colour: 0, dash: [0.5, 1.5], cap: 'butt' },
  mark: { width: 0.25, colour: 0, dash: [2.5, 0.8], cap: 'butt' },
  board: { width: 0.3, colour: 0, dash: [7, 1.5, 1, 1.5], cap: 'butt' },
  trim: { width: 0.25, colour: 0.35, dash: [1.5, 1.5], cap: 'butt' },
  blank: { width: 0.25, colour: 0, dash: [4, 1, 0.7, 1, 0.7, 1], cap: 'butt' },
  straightedge: { width: 0.3, colour: 0, dash: [12, 2.5], cap: 'butt' },
  // Heavy, with as much gap as dash: not to be taken for the board's edge, which may lie near it.
  bar: { width: 0.45, colour: 0, dash: [4, 4], cap: 'butt' },
  centre: { width: 0.25, colour: 0, dash: [5, 1, 1.2, 1], cap: 'butt' },
  hinge: { width: 1.4, colour: 0.55, dash: [3, 2], cap: 'butt' },
  leader: { width: LEADER, colour: 0.35, dash: [0.6, 0.6], cap: 'butt' },
  check: CHECK_PEN,
  groove: { width: 0.5, colour: 0.35, dash: [6, 1, 0.6, 1, 0.6, 1, 0.6, 1], cap: 'butt' },
  ink: { width: 0.25, colour: 0.35, dash: [6, 1, 0.6, 1], cap: 'butt' },
};

/** With the pen for the ticks at the ends of strokes where letters may find no room. */
export const CROWDED_PENS: Readonly<Record<string, Pen>> = {
  ...PENS,
  end: { width: 0.25, colour: 0, dash: [0.8, 0.8], cap: 'butt' },
};

export const LEGEND = [
  { pen: 'cut', text: 'line to follow with the blade' },
  { pen: 'mark', text: 'tick: S start, E end, where the scribe is read' },
  { pen: 'end', text: 'tick at the END of a stroke; longer dashes at its start' },
  { pen: 'face', text: 'edge of the opening on the face' },
  { pen: 'board', text: "board's edge" },
  { pen: 'trim', text: 'trim the paper here, but not at the tabs' },
  { pen: 'blank', text: "under mat's own edge" },
  { pen: 'straightedge', text: 'lay the straightedge here' },
  { pen: 'bar', text: 'guide off: lay the bar on this line' },
  { pen: 'centre', text: "centre of the board's edge" },
  { pen: 'hinge', text: 'window and backing hinge along this edge' },
  { pen: 'check', text: 'crosses to check with a tape' },
  { pen: 'leader', text: 'from words to their line' },
  { pen: 'groove', text: 'groove, cut on the face: where it runs' },
  { pen: 'ink', text: 'ink line, drawn on the face: where it runs' },
] as const;

/** The face line would crowd the marks nearer to a corner than this. */
const FACE_CLEAR_OF_CORNER = 60;
const TICK = 40;
/** A tick nearer than this to the neighbouring cut line is drawn on the border side only. */
const TICK_CLEAR_OF_CUT = 0.8;
/** How far inside the board's edge the paper is trimmed. */
export const TRIM_INSET = 4;
const TAB_HALF_WIDTH = 8;
const TAB_FROM_CORNER = 40;

export function line(pen: string, from: Point, to: Point, id?: string): LineItem {
  return { kind: 'line', pen, from, to, ...defined({ id }) };
}

/** From the line to follow towards the border, unit length: a head has the opening on one hand, a reverse bevel on the other. */
export function outward({ direction, reverse }: Stroke, opening: 'left' | 'right'): Point {
  const onLeft = (opening === 'left') !== reverse;
  return onLeft ? { x: -direction.y, y: direction.x } : { x: direction.y, y: -direction.x };
}

/** The middle of the face edge; nothing where the side is short or face and back edge are one line. */
export function faceLine(stroke: Stroke, id: string): LineItem | undefined {
  const { from, to } = stroke.face;
  const length = distance(from, to);
  const gap = Math.abs(
    (stroke.line.from.x - from.x) * stroke.direction.y - (stroke.line.from.y - from.y) * stroke.direction.x,
  );
  if (length < 2 * FACE_CLEAR_OF_CORNER + 10 || gap < 2 * PENS.cut!.width) return undefined;
  const along = unit(minus(to, from));
  return line(
    'face',
    plus(from, times(along, FACE_CLEAR_OF_CORNER)),
    plus(to, times(along, -FACE_CLEAR_OF_CORNER)),
    id,
  );
}

/** How far one can go from `from` in direction `way` before leaving `within`. */
function room(from: Point, way: Point, within: Box): number {
  const far = plus(from, times(way, 10 * TICK));
  const clipped = clipLine({ from, to: far }, within);
  return clipped === undefined ? 0 : distance(from, clipped.to);
}

/**
 * The tick through a mark, from its end on the border side to its end on the opening side: 40 mm either way where there
 * is room, half way to the next cut where there is not.
 */
export function tick(mark: Point, out: Point, paper: Box, depth: number, cuts: Room, id: string): LineItem {
  const clear = (way: Point): number => cuts.clearance(mark, way, 3 * TICK) / 2;
  const outside = Math.min(TICK, Math.max(0, room(mark, out, paper) - 2), clear(out) - 1);
  const inwards = Math.min(TICK, Math.max(0, depth / 2 - 4), Math.max(0, clear(times(out, -1)) - 4));
  const inner = plus(mark, times(out, -inwards));
  const hidden = cuts.linesNear({ from: mark, to: inner }, TICK_CLEAR_OF_CUT).some((cut) => {
    const along = unit(minus(cut.to, cut.from));
    if (Math.abs(along.x * out.x + along.y * out.y) < 0.999) return false;
    const aside = Math.abs((mark.x - cut.from.x) * along.y - (mark.y - cut.from.y) * along.x);
    return aside < TICK_CLEAR_OF_CUT && beside(cut, mark, inner);
  });
  return line('mark', plus(mark, times(out, Math.max(2, outside))), hidden ? mark : inner, id);
}

/** Whether a cut lies along some of a tick, seen square to it. */
function beside(cut: Line, from: Point, to: Point): boolean {
  const along = unit(minus(cut.to, cut.from));
  const at = (p: Point): number => (p.x - cut.from.x) * along.x + (p.y - cut.from.y) * along.y;
  const [a, b] = [at(from), at(to)];
  return Math.max(a, b) > 0 && Math.min(a, b) < distance(cut.from, cut.to);
}

/** Middles of the tabs along an edge of this length, from its start. */
function tabs(length: number): readonly number[] {
  const near = Math.min(TAB_FROM_CORNER, length * 0.2);
  const middle = length / 2;
  return near + 4 * TAB_HALF_WIDTH < middle
    ? [near, middle, length - near]
    : length > 4 * near
      ? [near, length - near]
      : [middle];
}

interface Edge {
  readonly name: string;
  readonly from: Point;
  readonly to: Point;
}

/** The board's four edges, clockwise from the top left; names are those of the drawing, not of the face. */
export function edges(board: Box): readonly Edge[] {
  const corners = [
    point(board.x, board.y),
    point(right(board), board.y),
    point(right(board), bottom(board)),
    point(board.x, bottom(board)),
  ];
  return ['upper', 'right', 'lower', 'left'].map((name, i) => ({ name, from: corners[i]!, to: corners[(i + 1) % 4]! }));
}

/** Trim line with tabs that reach the board's edge, and a small pointer in the middle of each tab. */
export function tabbedTrim(
  board: Box,
  inset: number,
): { readonly trim: readonly PathItem[]; readonly pointers: readonly PathItem[] } {
  const legs: { before: Point; out: Point }[][] = [];
  const pointers: PathItem[] = [];
  for (const edge of edges(board)) {
    const along = unit(minus(edge.to, edge.from));
    const inward = { x: -along.y, y: along.x };
    const half = Math.min(TAB_HALF_WIDTH, distance(edge.from, edge.to) * 0.06);
    legs.push(
      tabs(distance(edge.from, edge.to)).flatMap((middle) =>
        [middle - half, middle + half].map((at) => {
          const out = plus(edge.from, times(along, at));
          return { out, before: plus(out, times(inward, inset)) };
        }),
      ),
    );
    for (const middle of tabs(distance(edge.from, edge.to))) {
      const tip = plus(edge.from, times(along, middle));
      const base = plus(tip, times(inward, Math.min(3.2, inset * 0.8)));
      const corners = [tip, plus(base, times(along, 1.6)), plus(base, times(along, -1.6))];
      pointers.push({ kind: 'path', fill: 0, paths: [polygon(corners)], id: `tab-${edge.name}-${Math.round(middle)}` });
    }
  }
  const inner = grown(board, -inset);
  const corners = edges(inner).map((edge) => edge.from);
  const trim: PathItem[] = [];
  legs.forEach((stops, i) => {
    for (let k = 1; k + 1 < stops.length; k += 2)
      trim.push(open([stops[k]!.out, stops[k]!.before, stops[k + 1]!.before, stops[k + 1]!.out]));
    const last = stops.at(-1)!;
    const next = legs[(i + 1) % 4]![0]!;
    trim.push(open([last.out, last.before, corners[(i + 1) % 4]!, next.before, next.out]));
  });
  return { trim, pointers };
}

function open(points: readonly Point[]): PathItem {
  return { kind: 'path', pen: 'trim', paths: [polygon(points, false)] };
}

/** A line along the board, past both ends of a stroke, as far as the paper goes but 60 mm at most. */
export function extended(part: Line, paper: Box): Line {
  const along = unit(minus(part.to, part.from));
  const longer = { from: plus(part.from, times(along, -60)), to: plus(part.to, times(along, 60)) };
  return clipLine(longer, box(paper.x, paper.y, paper.width, paper.height)) ?? part;
}

export const lineBox = ({ from, to }: Line): Box =>
  box(Math.min(from.x, to.x), Math.min(from.y, to.y), Math.abs(to.x - from.x), Math.abs(to.y - from.y));
