import { arcCubics } from '../../geometry/arc-cubics.ts';
import { piecesOf } from '../../geometry/curves.ts';
import { type Parallel, parallelOf } from '../../geometry/parallel.ts';
import { type Path, placedPath, type Segment } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import { clockwise } from './clockwise.ts';

/** Thinner in one direction than in the other, a beam is taken to be this wide at least, mm: a tenth of what any file resolves. */
const THINNEST = 1e-4;

/**
 * Where the middle of a beam runs so that what it leaves has this outline: half a kerf outside of it, or inside. A beam
 * that is wider in one direction is an ellipse; the plane is stretched until it is round.
 */
export function besideKerf(
  outline: Path,
  kerf: { readonly x: number; readonly y: number },
  side: 'in' | 'out',
): Parallel {
  const sign = side === 'out' ? 1 : -1;
  if (kerf.x === kerf.y) return parallelOf(clockwise(outline), (sign * kerf.x) / 2);
  const [x, y] = [Math.max(kerf.x, THINNEST), Math.max(kerf.y, THINNEST)];
  const stretch =
    (k: number) =>
    (p: Point): Point => ({ x: p.x * k, y: p.y });
  const round = placedPath(clockwise(withoutArcs(outline)), stretch(y / x));
  const moved = parallelOf(round, (sign * y) / 2);
  return typeof moved === 'string' ? moved : placedPath(moved, stretch(x / y));
}

/** Lines and cubics stay what they are when the plane is stretched; arcs do not. */
function withoutArcs(path: Path): Path {
  const segments = piecesOf(path).flatMap(({ from, segment }): readonly Segment[] =>
    segment.kind === 'arc' ? arcCubics(from, segment) : [segment],
  );
  return { ...path, segments };
}
