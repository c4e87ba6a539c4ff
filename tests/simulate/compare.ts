import type { P } from '../cutfiles/points.ts';
import { bendAt, corners, cross, dot, type Figure, leftOf, length, minus, type Piece, points, unit } from './figure.ts';
import { along, Near, Within } from './near.ts';
import type { Cut } from './pattern.ts';

/** What is wrong with a board that was cut, in plain words; nothing where it is as it was wished. */
export type Faults = readonly string[];

const say = (n: number): string => n.toFixed(3);

/** How far a stroke may be off its edge, and its ends off the wished overrun, mm. */
const ALLOWED = 0.02;

/** How far a neighbour turns at the end of a side: a corner that points into the opening turns the other way. */
function reflex(figure: Extract<Figure, { kind: 'pieces' }>, i: number, end: 'from' | 'to'): boolean {
  const { pieces } = figure;
  const other = pieces[(i + (end === 'from' ? pieces.length - 1 : 1)) % pieces.length]!;
  const own = minus(pieces[i]!.to, pieces[i]!.from);
  const turn = end === 'from' ? cross(minus(other.to, other.from), own) : cross(own, minus(other.to, other.from));
  return turn < -1e-9;
}

/**
 * The face of an opening that was cut by straight strokes: each side is severed from corner to corner, each stroke goes past
 * them by the overrun, and no stroke cuts anything else. Where the mat has a corner that points into the opening, a stroke
 * may run on into the fallout, as far as the corner on the back.
 */
export function faceFaults(
  figures: readonly { readonly face: Figure; readonly setback: number }[],
  cuts: readonly Cut[],
  overrun: number,
): Faults {
  const found: string[] = [];
  const left = new Set(cuts);
  for (const [n, { face, setback }] of figures.entries()) {
    if (face.kind === 'oval') continue;
    for (const [i, side] of face.pieces.entries()) {
      if (side.kind !== 'line') continue;
      const way = unit(minus(side.to, side.from));
      const long = length(minus(side.to, side.from));
      const on = (p: P): { u: number; off: number } => ({
        u: dot(minus(p, side.from), way),
        off: Math.abs(dot(minus(p, side.from), leftOf(way))),
      });
      const own = [...left].filter(({ face: { from, to } }) => {
        const [a, b] = [on(from), on(to)];
        return Math.max(a.off, b.off) < 0.5 && Math.min(a.u, b.u) < long / 2 && Math.max(a.u, b.u) > long / 2;
      });
      if (own.length !== 1) {
        found.push(`side ${i + 1} of opening ${n + 1} is cut ${own.length} times`);
        continue;
      }
      left.delete(own[0]!);
      const [a, b] = [on(own[0]!.face.from), on(own[0]!.face.to)];
      const off = Math.max(a.off, b.off);
      if (off > ALLOWED) found.push(`side ${i + 1} of opening ${n + 1} is cut ${say(off)} off its edge`);
      const ends = [
        ['from', -Math.min(a.u, b.u)],
        ['to', Math.max(a.u, b.u) - long],
      ] as const;
      for (const [end, past] of ends) {
        const more = reflex(face, i, end) ? 6 * Math.max(0, setback) : 0;
        if (past < overrun - ALLOWED || past > overrun + more + ALLOWED)
          found.push(
            `side ${i + 1} of opening ${n + 1} is cut ${say(past)} past its corner, ${say(overrun)} was wished`,
          );
      }
    }
  }
  for (const { face } of left) found.push(`a stroke from ${say(face.from.x)} ${say(face.from.y)} cuts no side`);
  return found;
}

/**
 * The back of it: every straight side is severed from corner to corner, or, where the bevel is reversed and the strokes end
 * clean on the face, all but what the corners are freed by.
 */
export function backFaults(backs: readonly Figure[], cuts: readonly Cut[], uncut: (corner: number) => number): Faults {
  const found: string[] = [];
  for (const [n, back] of backs.entries()) {
    if (back.kind === 'oval') continue;
    for (const [i, side] of back.pieces.entries()) {
      if (side.kind !== 'line') continue;
      const way = unit(minus(side.to, side.from));
      const long = length(minus(side.to, side.from));
      const u = (p: P): number => dot(minus(p, side.from), way);
      const own = cuts.find(({ back: { from, to } }) => {
        const off = Math.max(...[from, to].map((p) => Math.abs(dot(minus(p, side.from), leftOf(way)))));
        return off < ALLOWED && Math.min(u(from), u(to)) < long / 2 && Math.max(u(from), u(to)) > long / 2;
      });
      if (own === undefined) {
        found.push(`nothing cuts side ${i + 1} of opening ${n + 1} on the back`);
        continue;
      }
      const ends = [u(own.back.from), u(own.back.to)].sort((p, q) => p - q);
      const [first, last] = [ends[0]!, ends[1]! - long];
      const allowed = [angleAt(back.pieces, i, 'from'), angleAt(back.pieces, i, 'to')].map(uncut);
      if (first > allowed[0]! + ALLOWED) found.push(`side ${i + 1} hangs on by ${say(first)} on the back`);
      if (-last > allowed[1]! + ALLOWED) found.push(`side ${i + 1} hangs on by ${say(-last)} on the back`);
    }
  }
  return found;
}

/** The turn at a corner, radians; nought where it runs on. */
function angleAt(pieces: readonly Piece[], i: number, end: 'from' | 'to'): number {
  const own = pieces[i]!;
  const other = pieces[(i + (end === 'from' ? pieces.length - 1 : 1)) % pieces.length]!;
  if (own.kind !== 'line') return 0;
  const way = unit(minus(own.to, own.from));
  const at = other.kind === 'line' ? unit(minus(other.to, other.from)) : tangent(other, end === 'from' ? 'to' : 'from');
  return Math.acos(Math.min(1, Math.max(-1, dot(way, at))));
}

function tangent(arc: Extract<Piece, { kind: 'arc' }>, end: 'from' | 'to'): P {
  const { x, y } = unit(minus(arc[end], arc.centre));
  return arc.clockwise ? { x: -y, y: x } : { x: y, y: -x };
}

/** Whether curves that are drawn are those of the outlines, and all of them. */
export function curveFaults(lines: readonly Figure[], drawn: readonly (readonly [P, P])[]): Faults {
  const found: string[] = [];
  const wished = lines.flatMap((figure) => curvedPoints(figure));
  if (wished.length === 0) return drawn.length === 0 ? [] : ['a curve is drawn where none is'];
  const [there, edges] = [new Near(1), new Near(1)];
  for (const [a, b] of drawn) there.piece(a, b);
  for (const figure of lines) edges.chain(points(figure, 0.5), true);
  const missing = Math.max(...wished.filter((_, k) => k % 7 === 0).map((p) => there.distance(p)));
  if (missing > ALLOWED) found.push(`a curve is drawn ${say(missing)} off its line, or not at all`);
  const wrong = Math.max(0, ...drawn.map(([a]) => edges.distance(a)));
  if (wrong > ALLOWED) found.push(`a curve is drawn ${say(wrong)} from any line`);
  return found;
}

function curvedPoints(figure: Figure): readonly P[] {
  if (figure.kind === 'oval') return points(figure, 0.5);
  return figure.pieces.flatMap((piece) =>
    piece.kind === 'arc' ? points({ kind: 'pieces', pieces: [piece] }, 0.5) : [],
  );
}

/** Whether a cut runs off a board. */
export function leavesBoard(
  cuts: readonly P[],
  { width, height }: { readonly width: number; readonly height: number },
): Faults {
  const out = cuts.find(({ x, y }) => x < -ALLOWED || y < -ALLOWED || x > width + ALLOWED || y > height + ALLOWED);
  return out === undefined ? [] : [`a cut leaves the board at ${say(out.x)} ${say(out.y)}`];
}

export interface Swept {
  /** The ways of a beam, in the board's own place; open ones leave tabs. */
  readonly ways: readonly { readonly points: readonly P[]; readonly closed: boolean }[];
  readonly kerf: P;
  readonly allowed: number;
}

/**
 * A beam takes away an ellipse as wide as its kerf, wherever it goes: what it leaves is compared with the edge that is
 * wished, all but the corners, which stay as round as the beam is. `waste`: on which side of the edge it runs.
 */
export function beamFaults(
  edge: Figure,
  { ways, kerf, allowed }: Swept,
  waste: 'inside' | 'outside',
  tabs: boolean,
): Faults {
  const found: string[] = [];
  const round = (all: readonly P[]): P[] => all.map(({ x, y }) => ({ x: (2 * x) / kerf.x, y: (2 * y) / kerf.y }));
  const scale = Math.min(kerf.x, kerf.y) / 2;
  const outline = points(edge, 0.3);
  const edges = new Near(4).chain(round(outline), true);
  const inside = new Within(outline);
  const beam = new Near(4);
  for (const way of ways) beam.chain(round(way.points), way.closed);
  const clear = 4 * Math.max(kerf.x, kerf.y);
  const sharp = corners(edge);
  if (!tabs) {
    for (const p of outline.filter((_, k) => k % 5 === 0)) {
      if (sharp.some((c) => length(minus(c, p)) < clear)) continue;
      const off = (beam.distance(round([p])[0]!) - 1) * scale;
      if (off > allowed) return [...found, `board is left standing by ${say(off)} at ${say(p.x)} ${say(p.y)}`];
    }
  }
  for (const way of ways)
    for (const p of along(way.points, 0.7, way.closed)) {
      const away = edges.distance(round([p])[0]!);
      const into = (1 - (inside.holds(p) === (waste === 'inside') ? away : -away)) * scale;
      if (into > allowed) return [...found, `the beam eats ${say(into)} into what is kept at ${say(p.x)} ${say(p.y)}`];
    }
  return found;
}

export interface Severed {
  readonly allowed: number;
  /** So far cuts may run on into what is kept. */
  readonly past: number;
  /** So near its corners the edge may stay uncut. */
  readonly hangs: number;
  /** So much of a cut's ends is straight where the line bends on: what a blade cuts before its head moves. */
  readonly straight?: number;
}

/** A line that was cut against the edge that is wished: how much stays uncut, and how far it runs into what is kept. */
export function lineFaults(
  edge: Figure,
  cuts: readonly (readonly P[])[],
  waste: 'inside' | 'outside',
  { allowed, past, hangs, straight = 0 }: Severed,
): Faults {
  const outline = points(edge, 0.3);
  const inside = new Within(outline);
  const edges = new Near(2).chain(outline, true);
  const cut = new Near(2);
  for (const way of cuts) cut.chain(way, false);
  const sharp = corners(edge);
  // A chord so long leaves a bend by its square over twice the radius.
  const ends = cuts
    .flatMap((way) => [way[0]!, way.at(-1)!])
    .map((at) => ({ at, aside: straight === 0 ? 0 : straight ** 2 / (2 * bendAt(edge, at)) }));
  for (const p of outline.filter((_, k) => k % 4 === 0)) {
    if (hangs > 0 && sharp.some((c) => length(minus(c, p)) < hangs)) continue;
    const off = cut.distance(p);
    const aside = ends.filter(({ at }) => length(minus(at, p)) < 2 * straight).map((end) => end.aside);
    if (off > allowed + Math.max(0, ...aside))
      return [`the edge is not cut at ${say(p.x)} ${say(p.y)}: ${say(off)} off`];
  }
  // At a corner a cut has to begin or to end, bend or no bend; elsewhere there are straights to begin on.
  const bent = ends.filter(({ at }) => sharp.some((c) => length(minus(c, at)) < 2 * straight));
  for (const way of cuts)
    for (const p of along(way, 0.5, false)) {
      if (inside.holds(p) === (waste === 'inside')) continue;
      const off = edges.distance(p);
      const aside = bent.filter(({ at }) => length(minus(at, p)) < straight).map((end) => end.aside);
      if (off > past + allowed + Math.max(0, ...aside))
        return [`a cut runs ${say(off)} into what is kept at ${say(p.x)} ${say(p.y)}`];
    }
  return [];
}
