import { boxDistance, boxTree, someIn, touched } from './box-tree.ts';
import { chained, type Stretch } from './chaining.ts';
import { derivative, directionAt, type Piece, partOf, piecesOf, pointAt } from './curves.ts';
import { pieceBox } from './extent.ts';
import { CURVE_TOLERANCE, fitCubics } from './fit.ts';
import { circleCircle, lineCircle, meetings } from './meetings.ts';
import { distanceTo, isInside, movedLeft, type Outline, outlineOf } from './near.ts';
import type { Path, Segment } from './path.ts';
import { distance, dot, minus, type Point } from './point.ts';

/** `parts`: what is left lies in several pieces, so that it is no single outline. */
export type Parallel = Path | 'nothing' | 'parts';

/**
 * The true parallel of a simple closed outline that runs clockwise as the eye sees it, `by` outwards (inwards where
 * negative): every point `by` away along the normal, whatever lies nearer to another part of the outline cut off.
 * Lines stay lines, arcs stay arcs, corners stay sharp: where neighbours part, both are drawn on until they meet, as two
 * bevels do. Of cubics it is a chain of cubics within `CURVE_TOLERANCE`.
 */
export function parallelOf(path: Path, by: number): Parallel {
  if (by === 0) return path;
  const moved = piecesOf(path).map((piece) => movedPiece(piece, by));
  const joined = mitred(piecesOf(path), moved, by);
  const curved = path.segments.some((segment) => segment.kind === 'cubic');
  const kept = trimmed(joined, outlineOf(path), by, curved ? 1.5 * CURVE_TOLERANCE : 1e-7);
  return chained(kept, curved ? 10 * CURVE_TOLERANCE : 1e-6);
}

/** The pieces that stand in for one piece: none where an arc has shrunk away. */
type Moved = readonly Piece[];

/** One piece by itself, `by` to the left of its travel, ends not drawn on. */
export function movedPiece(piece: Piece, by: number): Moved {
  const { from, segment } = piece;
  const [u, v] = [directionAt(piece, 0), directionAt(piece, 1)];
  if (u === undefined || v === undefined) return [];
  const start = movedLeft(from, u, by);
  const to = movedLeft(segment.to, v, by);
  switch (segment.kind) {
    case 'line':
      return [{ from: start, segment: { kind: 'line', to } }];
    case 'arc': {
      const radius = distance(from, segment.centre) + (segment.clockwise ? by : -by);
      return radius > 1e-9 ? [{ from: start, segment: { ...segment, to } }] : [];
    }
    case 'cubic':
      return movedCubic(from, segment, by);
    default: {
      const never: never = segment;
      throw new TypeError(`unknown segment ${JSON.stringify(never)}`);
    }
  }
}

/** Where the curve bends more sharply than `by` allows, its parallel runs backwards and is cut off: those stretches are left out. */
function movedCubic(from: Point, segment: Extract<Segment, { kind: 'cubic' }>, by: number): Moved {
  const piece = { from, segment };
  const second = (t: number): Point => {
    const { c1, c2, to } = segment;
    const along = (a: number, b: number, c: number, d: number) => 6 * ((1 - t) * (c - 2 * b + a) + t * (d - 2 * c + b));
    return { x: along(from.x, c1.x, c2.x, to.x), y: along(from.y, c1.y, c2.y, to.y) };
  };
  const rate = (t: number): number => {
    const d = derivative(from, segment, t);
    const dd = second(t);
    return 1 + (by * (d.x * dd.y - d.y * dd.x)) / Math.hypot(d.x, d.y) ** 3;
  };
  const at = (t: number): Point => movedLeft(pointAt(piece, t), directionAt(piece, t) ?? directionAt(piece, 0)!, by);
  const speed = (t: number): Point => {
    const d = derivative(from, segment, t);
    // Where a handle has no length the curve stands still, and so does what is fitted to it.
    const k = Number.isNaN(rate(t)) ? 1 : Math.max(rate(t), 1e-9);
    return { x: d.x * k, y: d.y * k };
  };
  const pieces: Piece[] = [];
  for (const [t0, t1] of forwards(rate)) {
    let at0 = at(t0);
    for (const part of fitCubics({ at, speed }, t0, t1)) {
      pieces.push({ from: at0, segment: part });
      at0 = part.to;
    }
  }
  return pieces;
}

const STEPS = 48;

/** Stretches of 0 to 1 where a rate is positive. */
function forwards(rate: (t: number) => number): readonly (readonly [number, number])[] {
  const positive = (t: number): boolean => rate(t) > 0;
  const found: [number, number][] = [];
  let begin: number | undefined = positive(0) || Number.isNaN(rate(0)) ? 0 : undefined;
  for (let i = 1; i <= STEPS; i++) {
    const [before, now] = [(i - 1) / STEPS, i / STEPS];
    const goes = positive(now) || Number.isNaN(rate(now));
    if (goes === (begin !== undefined)) continue;
    let [low, high] = [before, now];
    for (let n = 0; n < 40; n++) {
      const middle = (low + high) / 2;
      if (positive(middle) === goes) high = middle;
      else low = middle;
    }
    if (begin === undefined) begin = high;
    else {
      found.push([begin, low]);
      begin = undefined;
    }
  }
  if (begin !== undefined) found.push([begin, 1]);
  return found;
}

/** The moved pieces, drawn on to where neighbours meet, and what each such corner covers beyond the reach of `by`. */
interface Mitred {
  readonly pieces: readonly Piece[];
  readonly wedges: readonly Outline[];
}

/** Draws neighbours on to where they meet, wherever moving has parted them. */
function mitred(original: readonly Piece[], moved: readonly Moved[], by: number): Mitred {
  const wedges: Outline[] = [];
  const chains = moved.map((pieces) => [...pieces]);
  const extra: Piece[][] = moved.map(() => []);
  const count = original.length;
  for (let i = 0; i < count; i++) {
    const next = (i + 1) % count;
    const [before, after] = [chains[i]!, chains[next]!];
    const [u, v] = [directionAt(original[i]!, 1), directionAt(original[next]!, 0)];
    if (u === undefined || v === undefined || before.length === 0 || after.length === 0) continue;
    const turn = u.x * v.y - u.y * v.x;
    const smooth = Math.abs(turn) < 1e-9 && dot(u, v) > 0;
    if (smooth) continue;
    if (turn * by < 0) {
      shortened(before, after);
      continue;
    }
    const [last, first] = [before.at(-1)!, after[0]!];
    const tip = meetingAhead(last, u, first, v);
    if (tip === undefined) continue;
    wedges.push(wedge(original[next]!.from, last, first, tip));
    extra[i]!.push(...drawnOn(before, tip), ...drawnBack(after, tip));
  }
  return { pieces: chains.flatMap((pieces, i) => [...pieces, ...extra[i]!]), wedges };
}

/** From the corner out to the end of one moved piece, on to the tip, back to the start of the next. */
function wedge(corner: Point, last: Piece, first: Piece, tip: Point): Outline {
  const [p, q] = [last.segment.to, first.from];
  const out: Segment = onCircle(last, tip) ? { ...last.segment, to: tip } : { kind: 'line', to: tip };
  const back: Segment = onCircle(first, tip) ? { ...first.segment, to: q } : { kind: 'line', to: q };
  const sides: readonly Segment[] = [{ kind: 'line', to: p }, out, back, { kind: 'line', to: corner }];
  return outlineOf({ start: corner, segments: sides, closed: true });
}

/** Where moving has made neighbours overlap, both end at their crossing nearest to the corner; else they stay as they are. */
function shortened(before: Piece[], after: Piece[]): void {
  for (let i = before.length - 1; i >= 0; i--) {
    for (let j = 0; j < after.length; j++) {
      const met = [...meetings(before[i]!, after[j]!)].sort((p, q) => q.a - p.a)[0];
      if (met === undefined || met.a < 1e-9 || met.b > 1 - 1e-9) continue;
      const [last, first] = [partOf(before[i]!, 0, met.a), partOf(after[j]!, met.b, 1)];
      before.splice(i, before.length - i, last);
      after.splice(0, j + 1, first);
      return;
    }
  }
}

/** Where the end of one piece, drawn on, meets the start of the next, drawn back. */
function meetingAhead(last: Piece, u: Point, first: Piece, v: Point): Point | undefined {
  const [p, q] = [last.segment.to, first.from];
  const tangents = (): Point | undefined => {
    const across = u.x * v.y - u.y * v.x;
    if (Math.abs(across) < 1e-9) return undefined;
    const gap = minus(q, p);
    const along = (gap.x * v.y - gap.y * v.x) / across;
    return { x: p.x + u.x * along, y: p.y + u.y * along };
  };
  const nearest = (points: readonly Point[]): Point | undefined =>
    [...points].sort((a, b) => distance(a, p) + distance(a, q) - distance(b, p) - distance(b, q))[0];
  const [a, b] = [last.segment, first.segment];
  if (a.kind === 'arc' && b.kind === 'arc') {
    return nearest(circleCircle(a.centre, distance(p, a.centre), b.centre, distance(q, b.centre))) ?? tangents();
  }
  if (a.kind === 'arc') {
    const points = lineCircle(q, v, a.centre, distance(p, a.centre)).map((t) => ({
      x: q.x + v.x * t,
      y: q.y + v.y * t,
    }));
    return nearest(points) ?? tangents();
  }
  if (b.kind === 'arc') {
    const points = lineCircle(p, u, b.centre, distance(q, b.centre)).map((t) => ({
      x: p.x + u.x * t,
      y: p.y + u.y * t,
    }));
    return nearest(points) ?? tangents();
  }
  return tangents();
}

const onCircle = (piece: Piece, p: Point): boolean =>
  piece.segment.kind === 'arc' &&
  Math.abs(distance(p, piece.segment.centre) - distance(piece.from, piece.segment.centre)) <
    1e-9 * (1 + distance(p, piece.segment.centre));

/** Makes the last piece reach the tip, or returns the line that does. */
function drawnOn(chain: Piece[], tip: Point): readonly Piece[] {
  const last = chain.at(-1)!;
  const { segment } = last;
  if (distance(segment.to, tip) < 1e-12) return [];
  if (segment.kind === 'line' || onCircle(last, tip)) {
    chain[chain.length - 1] = { from: last.from, segment: { ...segment, to: tip } };
    return [];
  }
  return [{ from: segment.to, segment: { kind: 'line', to: tip } }];
}

function drawnBack(chain: Piece[], tip: Point): readonly Piece[] {
  const first = chain[0]!;
  if (distance(first.from, tip) < 1e-12) return [];
  if (first.segment.kind === 'line' || onCircle(first, tip)) {
    chain[0] = { from: tip, segment: first.segment };
    return [];
  }
  return [{ from: tip, segment: { kind: 'line', to: first.from } }];
}

/** The stretches between crossings that are really as far from the outline as they should be, on its right side. */
function trimmed({ pieces: raw, wedges }: Mitred, outline: Outline, by: number, slack: number): readonly Stretch[] {
  const cuts = raw.map((): number[] => [0, 1]);
  const boxes = raw.map(pieceBox);
  const tree = boxTree(boxes);
  for (const [i, piece] of raw.entries()) {
    touched(tree, boxes, boxes[i]!, 1e-9, (j) => {
      if (j <= i || runsOn(piece, raw[j]!) || runsOn(raw[j]!, piece)) return;
      for (const { a, b } of meetings(piece, raw[j]!)) {
        cuts[i]!.push(a);
        cuts[j]!.push(b);
      }
    });
  }
  const least = Math.abs(by) - slack;
  const corners = boxTree(wedges.map(({ tree: whole }) => whole!.box));
  const byCorner = (p: Point): boolean =>
    someIn(
      corners,
      (part) => boxDistance(part, p) === 0,
      (k) => isInside(wedges[k]!, p) && distanceTo(wedges[k]!, p) > slack,
    );
  const covered = (p: Point): boolean => distanceTo(outline, p, least) < least || byCorner(p);
  return raw.flatMap((piece, i) => {
    const ts = [...cuts[i]!].sort((a, b) => a - b).filter((t, k, all) => k === 0 || t - all[k - 1]! > 1e-9);
    return ts.slice(1).flatMap((end, k): Stretch[] => {
      const [t0, t1] = [ts[k]!, k + 2 === ts.length ? 1 : end];
      const middle = pointAt(piece, (t0 + t1) / 2);
      if (isInside(outline, middle) !== by < 0 || covered(middle)) return [];
      return [{ of: piece, t0, t1, from: pointAt(piece, t0), to: pointAt(piece, t1) }];
    });
  });
}

/** One piece goes on smoothly as the next: they share the joint and no other point. */
function runsOn(a: Piece, b: Piece): boolean {
  if (distance(a.segment.to, b.from) > 1e-9) return false;
  const [u, v] = [directionAt(a, 1), directionAt(b, 0)];
  return u !== undefined && v !== undefined && dot(u, v) > 0.9999 && gentle(a) && gentle(b);
}

/** Turning by less than a quarter turn. */
function gentle(piece: Piece): boolean {
  const [u, v] = [directionAt(piece, 0), directionAt(piece, 1)];
  return u !== undefined && v !== undefined && dot(u, v) > 0;
}
