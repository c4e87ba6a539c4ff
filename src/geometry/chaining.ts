import { box } from './box.ts';
import { boxTree, touched } from './box-tree.ts';
import { type Piece, partOf, sweepOf } from './curves.ts';
import type { Path, Segment } from './path.ts';
import { between, distance, dot, minus, type Point } from './point.ts';

/** A part of a moved piece. */
export interface Stretch {
  readonly of: Piece;
  readonly t0: number;
  readonly t1: number;
  readonly from: Point;
  readonly to: Point;
}

/** Joins stretches end to start, in their order; of two that lie on each other one is left over. */
export function chained(stretches: readonly Stretch[], slack: number): Path | 'nothing' | 'parts' {
  // Two that are left out beside each other, as the two sides of a blunt corner are, must not open a gap.
  const rest = stretches.filter((each) => distance(each.from, each.to) > slack / 3 || isRound(each));
  const starts = rest.map(({ from }) => box(from.x, from.y, 0, 0));
  const tree = boxTree(starts);
  const taken = rest.map(() => false);
  const nextOf = (end: Point): number | undefined => {
    let best: number | undefined;
    touched(tree, starts, box(end.x, end.y, 0, 0), slack, (k) => {
      const away = distance(end, rest[k]!.from);
      if (taken[k] || away > slack) return;
      const known = best === undefined ? Number.POSITIVE_INFINITY : distance(end, rest[best]!.from);
      if (away < known || (away === known && k < best!)) best = k;
    });
    return best;
  };
  const loops: Stretch[][] = [];
  for (const [first, stretch] of rest.entries()) {
    if (taken[first]) continue;
    taken[first] = true;
    const loop = [stretch];
    const isClosed = (): boolean =>
      distance(loop.at(-1)!.to, loop[0]!.from) <= slack && (loop.length > 1 || isRound(loop[0]!));
    while (!isClosed()) {
      const next = nextOf(loop.at(-1)!.to);
      if (next === undefined) break;
      taken[next] = true;
      loop.push(rest[next]!);
    }
    // What was passed over where the way round closed without it is no part of its own.
    if (isClosed() && (loop.some(isRound) || lengthOf(loop) > 3 * slack)) loops.push(loop);
  }
  if (loops.length !== 1) return loops.length === 0 ? 'nothing' : 'parts';
  return closed(whole(loops[0]!));
}

const lengthOf = (loop: readonly Stretch[]): number => loop.reduce((sum, { from, to }) => sum + distance(from, to), 0);

/** Stretches that follow each other on one piece, or on one straight line, become one piece again. */
function whole(loop: readonly Stretch[]): readonly Piece[] {
  const runs: Stretch[] = [];
  for (const each of loop) {
    const joined = runs.length === 0 ? undefined : together(runs.at(-1)!, each);
    if (joined === undefined) runs.push(each);
    else runs[runs.length - 1] = joined;
  }
  const around = runs.length > 2 ? together(runs.at(-1)!, runs[0]!) : undefined;
  const turned = around === undefined ? runs : [around, ...runs.slice(1, -1)];
  return turned.map(({ of, t0, t1 }) => (t0 === 0 && t1 === 1 ? of : partOf(of, t0, t1)));
}

function together(a: Stretch, b: Stretch): Stretch | undefined {
  if (a.of === b.of && Math.abs(a.t1 - b.t0) < 1e-9) return { ...a, t1: b.t1, to: b.to };
  if (a.of.segment.kind !== 'line' || b.of.segment.kind !== 'line') return undefined;
  const [u, v] = [minus(a.to, a.from), minus(b.to, b.from)];
  const cross = Math.abs(u.x * v.y - u.y * v.x);
  if (cross > 1e-9 * Math.hypot(u.x, u.y) * Math.hypot(v.x, v.y) || dot(u, v) < 0) return undefined;
  const of: Piece = { from: a.from, segment: { kind: 'line', to: b.to } };
  return { of, t0: 0, t1: 1, from: a.from, to: b.to };
}

const isRound = ({ of, t0, t1 }: Stretch): boolean =>
  of.segment.kind === 'arc' && Math.abs(sweepOf(of.from, of.segment).sweep) * (t1 - t0) > Math.PI;

/** One path whose pieces really share their ends. */
function closed(loop: readonly Piece[]): Path {
  const start = loop[0]!.from;
  const segments = loop.map(({ segment }, i): Segment => {
    const next = loop[i + 1];
    const to = next === undefined ? start : between(segment.to, next.from, 0.5);
    return { ...segment, to };
  });
  return { start, segments, closed: true };
}
