import { type Box, centre } from '../geometry/box.ts';
import { flattened } from '../geometry/flatten.ts';
import type { Path } from '../geometry/path.ts';

/**
 * What a hand needs for an oval with two pins and a loop of thread: the pins stand in the foci, the loop is the long axis
 * and the distance of the pins together (J. Rose, Mechanical Drawing Self-Taught, on the ellipse; Fine Woodworking, a
 * precise method for drawing an ellipse).
 */
export interface PinsAndLoop {
  /** From the middle to each pin, along the long axis. */
  readonly pin: number;
  /** All round the loop, once it lies about both pins and the pencil. */
  readonly loop: number;
  readonly along: 'x' | 'y';
}

export function pinsAndLoop(width: number, height: number): PinsAndLoop {
  const [long, short] = [Math.max(width, height) / 2, Math.min(width, height) / 2];
  const pin = Math.sqrt(Math.max(0, long * long - short * short));
  return { pin, loop: 2 * long + 2 * pin, along: width >= height ? 'x' : 'y' };
}

/** Bulge of an arc over a chord, as DXF has it: the tangent of a quarter of the angle (DXF reference, LWPOLYLINE). */
export const bulge = (angle: number): number => Math.tan(angle / 4);

/** How far the ellipse that pins and loop draw lies from the true line, at most. */
export function offEllipse(path: Path, around: Box): number {
  const [a, b] = [around.width / 2, around.height / 2];
  const middle = centre(around);
  return Math.max(
    ...flattened(path, 0.01).map((p) => {
      const [x, y] = [(p.x - middle.x) / a, (p.y - middle.y) / b];
      // First order: the equation's value over its slope.
      return Math.abs(x * x + y * y - 1) / (2 * Math.hypot(x / a, y / b));
    }),
  );
}
