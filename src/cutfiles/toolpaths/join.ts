import { piecesOf, pointAt } from '../../geometry/curves.ts';
import { type Path, reversed, type Segment } from '../../geometry/path.ts';
import { distance, dot, minus, type Point, plus, times, unit } from '../../geometry/point.ts';

/** Nearer than this two lines are one cut, mm. */
const SAME_CUT = 0.01;

/**
 * Paths of one operation without anything that is cut twice: stretches of straight lines that lie on each other are kept
 * once, in the path that comes first, curves that are alike are kept once; what is left and touches is joined. A closed
 * path from which nothing was taken stays closed as it was.
 */
export function cutOnce(paths: readonly Path[]): readonly Path[] {
  const kept: Line[] = [];
  const curves: Curve[] = [];
  const whole: Path[] = [];
  const parts: Path[] = [];
  for (const path of paths) {
    const runs = remaining(path, kept, curves);
    if (runs === 'all') whole.push(path);
    else parts.push(...runs);
    for (const { from, segment } of piecesOf(path)) {
      if (segment.kind === 'line') kept.push({ from, to: segment.to });
      else curves.push({ from, to: segment.to, middle: pointAt({ from, segment }, 0.5) });
    }
  }
  const open = whole.filter((path) => !path.closed);
  return [...whole.filter((path) => path.closed), ...joined([...open, ...parts])];
}

interface Line {
  readonly from: Point;
  readonly to: Point;
}
interface Curve extends Line {
  readonly middle: Point;
}

/** The stretches of a path that no earlier line or curve covers, or `all` of it. */
function remaining(path: Path, lines: readonly Line[], curves: readonly Curve[]): 'all' | readonly Path[] {
  const runs: { start: Point; segments: Segment[] }[] = [];
  let cut = false;
  let open: { start: Point; segments: Segment[] } | undefined;
  const add = (from: Point, segment: Segment): void => {
    if (open === undefined) {
      open = { start: from, segments: [] };
      runs.push(open);
    }
    open.segments.push(segment);
  };
  for (const { from, segment } of piecesOf(path)) {
    if (segment.kind !== 'line') {
      if (curves.some((curve) => sameCurve(curve, from, segment))) {
        cut = true;
        open = undefined;
      } else add(from, segment);
      continue;
    }
    const long = distance(from, segment.to);
    const left = uncovered({ from, to: segment.to }, lines);
    if (left.length === 1 && left[0]![0] === 0 && left[0]![1] === long) {
      add(from, segment);
      continue;
    }
    cut = true;
    const along = times(minus(segment.to, from), 1 / long);
    for (const [a, b] of left) {
      if (a > 0) open = undefined;
      add(plus(from, times(along, a)), { kind: 'line', to: b === long ? segment.to : plus(from, times(along, b)) });
      if (b < long) open = undefined;
    }
    if (left.length === 0) open = undefined;
  }
  if (!cut) return 'all';
  const found = runs.map((run): Path => ({ ...run, closed: false }));
  // What runs on over the beginning of a closed path is one stretch.
  const [first, last] = [found[0], found.at(-1)];
  const onwards = path.closed && found.length > 1 && distance(last!.segments.at(-1)!.to, first!.start) < SAME_CUT;
  return onwards ? [{ ...last!, segments: [...last!.segments, ...first!.segments] }, ...found.slice(1, -1)] : found;
}

function sameCurve(curve: Curve, from: Point, segment: Exclude<Segment, { kind: 'line' }>): boolean {
  const near = (p: Point, q: Point): boolean => distance(p, q) <= SAME_CUT;
  const ends = near(curve.from, from) && near(curve.to, segment.to);
  const swapped = near(curve.from, segment.to) && near(curve.to, from);
  return (ends || swapped) && near(curve.middle, pointAt({ from, segment }, 0.5));
}

/** The stretches of a line, from its beginning in mm, that none of the others lies on. */
function uncovered(line: Line, others: readonly Line[]): readonly (readonly [number, number])[] {
  const long = distance(line.from, line.to);
  const along = unit(minus(line.to, line.from));
  let left: (readonly [number, number])[] = [[0, long]];
  for (const other of others) {
    const [a, b] = [other.from, other.to].map((p) => dot(minus(p, line.from), along)) as [number, number];
    const [low, high] = a < b ? [a, b] : [b, a];
    if (high - low < SAME_CUT || !lieTogether(line, along, other)) continue;
    left = left.flatMap(([from, to]) => {
      const before: readonly [number, number] = [from, Math.min(to, low)];
      const after: readonly [number, number] = [Math.max(from, high), to];
      return [before, after].filter(([p, q]) => q - p > SAME_CUT);
    });
  }
  return left;
}

function lieTogether(line: Line, along: Point, other: Line): boolean {
  const off = (p: Point): number => {
    const away = minus(p, line.from);
    return Math.abs(away.x * along.y - away.y * along.x);
  };
  return off(other.from) <= SAME_CUT && off(other.to) <= SAME_CUT;
}

/** Open paths that touch at their ends, as one; closed where they come round. */
function joined(paths: readonly Path[]): readonly Path[] {
  const rest = [...paths];
  const done: Path[] = [];
  while (rest.length > 0) {
    let path = rest.shift()!;
    for (let grown = true; grown; ) {
      grown = false;
      for (const [i, other] of rest.entries()) {
        const longer = joinedTo(path, other);
        if (longer === undefined) continue;
        path = longer;
        rest.splice(i, 1);
        grown = true;
        break;
      }
    }
    done.push(closedIfRound(path));
  }
  return done;
}

const endOf = (path: Path): Point => path.segments.at(-1)!.to;

function joinedTo(path: Path, other: Path): Path | undefined {
  const touch = (p: Point, q: Point): boolean => distance(p, q) <= SAME_CUT;
  const after = (a: Path, b: Path): Path => ({ ...a, segments: [...a.segments, ...startedAt(b, endOf(a)).segments] });
  if (touch(endOf(path), other.start)) return after(path, other);
  if (touch(endOf(path), endOf(other))) return after(path, reversed(other));
  if (touch(path.start, endOf(other))) return after(other, path);
  if (touch(path.start, other.start)) return after(reversed(other), path);
  return undefined;
}

/** An arc that is begun elsewhere would get another radius; it keeps its own by a line of no more than the slack before it. */
function startedAt(path: Path, start: Point): Path {
  if (path.segments[0]!.kind !== 'arc' || distance(start, path.start) === 0) return { ...path, start };
  return { ...path, start, segments: [{ kind: 'line', to: path.start }, ...path.segments] };
}

function closedIfRound(path: Path): Path {
  if (path.segments.length < 2 || distance(endOf(path), path.start) > SAME_CUT) return path;
  const last = path.segments.at(-1)!;
  if (last.kind === 'arc' && distance(last.to, path.start) > 0)
    return { ...path, segments: [...path.segments, { kind: 'line', to: path.start }], closed: true };
  return { ...path, segments: [...path.segments.slice(0, -1), { ...last, to: path.start }], closed: true };
}
