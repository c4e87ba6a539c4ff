import type { Segment } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';

type Arc = Extract<Segment, { readonly kind: 'arc' }>;
type Cubic = Extract<Segment, { readonly kind: 'cubic' }>;

/** Farthest that a curve written for an arc may lie from it, mm. */
const TOLERANCE = 0.0005;
/** Ends nearer to each other than this are the same point, so that the arc is a full circle, mm. */
const SAME = 1e-9;

/** The angle that an arc runs through, in (0, 2π]; a full circle where it ends at its start. */
export function sweep(from: Point, arc: Arc): number {
  if (Math.hypot(arc.to.x - from.x, arc.to.y - from.y) < SAME) return 2 * Math.PI;
  const begin = Math.atan2(from.y - arc.centre.y, from.x - arc.centre.x);
  const end = Math.atan2(arc.to.y - arc.centre.y, arc.to.x - arc.centre.x);
  const turned = arc.clockwise ? end - begin : begin - end;
  return turned <= 0 ? turned + 2 * Math.PI : turned;
}

/** Farthest that the usual cubic for an arc through `angle` lies from it, as a part of its radius (always outside). */
function deviation(angle: number): number {
  const s = Math.sin(angle / 4);
  const c = Math.cos(angle / 4);
  return ((2 / 27) * s ** 6) / c ** 2;
}

/** An arc as cubics that touch it at their ends, none of them more than 0.0005 mm away; four at least for a full circle. */
export function arcCubics(from: Point, arc: Arc): readonly Cubic[] {
  const total = sweep(from, arc);
  const radius = Math.hypot(from.x - arc.centre.x, from.y - arc.centre.y);
  let count = Math.ceil(total / (Math.PI / 2) - 1e-9);
  while (radius * deviation(total / count) > TOLERANCE) count++;
  const step = (arc.clockwise ? 1 : -1) * (total / count);
  const reach = (4 / 3) * Math.tan(step / 4) * radius;
  const begin = Math.atan2(from.y - arc.centre.y, from.x - arc.centre.x);
  const at = (angle: number): Point => ({
    x: arc.centre.x + radius * Math.cos(angle),
    y: arc.centre.y + radius * Math.sin(angle),
  });
  return Array.from({ length: count }, (_, i): Cubic => {
    const a = begin + i * step;
    const b = a + step;
    const start = i === 0 ? from : at(a);
    const to = i === count - 1 ? arc.to : at(b);
    return {
      kind: 'cubic',
      c1: { x: start.x - reach * Math.sin(a), y: start.y + reach * Math.cos(a) },
      c2: { x: to.x + reach * Math.sin(b), y: to.y - reach * Math.cos(b) },
      to,
    };
  });
}
