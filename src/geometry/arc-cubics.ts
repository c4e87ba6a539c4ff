import { type Piece, partOf, sweepOf } from './curves.ts';
import type { Segment } from './path.ts';
import { distance, type Point } from './point.ts';

type Arc = Extract<Segment, { readonly kind: 'arc' }>;
type Cubic = Extract<Segment, { readonly kind: 'cubic' }>;

/** Farthest that a curve written for an arc may lie from it, mm. */
const TOLERANCE = 0.0005;
const QUARTER = Math.PI / 2;

/** How many equal parts of at most a quarter turn make a sweep; four for a full circle. */
function quarters(sweep: number): number {
  return Math.max(1, Math.ceil(Math.abs(sweep) / QUARTER - 1e-9));
}

/** Farthest that the cubic below lies from an arc through `angle`, as a part of its radius (it bulges outwards). */
function deviation(angle: number): number {
  return ((2 / 27) * Math.sin(angle / 4) ** 6) / Math.cos(angle / 4) ** 2;
}

/** An arc as cubics that touch it at their ends, none of them more than `tolerance` away. */
export function arcCubics(from: Point, arc: Arc, tolerance = TOLERANCE): readonly Cubic[] {
  const { begin, sweep } = sweepOf(from, arc);
  const radius = distance(from, arc.centre);
  let count = quarters(sweep);
  while (radius * deviation(sweep / count) > tolerance) count++;
  const step = sweep / count;
  const reach = (4 / 3) * Math.tan(step / 4) * radius;
  return Array.from({ length: count }, (_, i): Cubic => {
    const part = partOf({ from, segment: arc }, i / count, (i + 1) / count);
    const { to } = part.segment;
    const [a, b] = [begin + i * step, begin + (i + 1) * step];
    return {
      kind: 'cubic',
      c1: { x: part.from.x - reach * Math.sin(a), y: part.from.y + reach * Math.cos(a) },
      c2: { x: to.x + reach * Math.sin(b), y: to.y - reach * Math.cos(b) },
      to,
    };
  });
}

/**
 * An arc as parts of at most a quarter turn each, for formats that give an arc by its radius and ends: near a half turn
 * the centre that follows from rounded ends would wander by far more than the rounding.
 */
export function quarterArcs(from: Point, arc: Arc): readonly Piece[] {
  const count = quarters(sweepOf(from, arc).sweep);
  return Array.from({ length: count }, (_, i) => partOf({ from, segment: arc }, i / count, (i + 1) / count));
}
