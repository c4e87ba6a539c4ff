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

/** Chords are so near to the line, and so is what is said. */
const FINE = 0.001;

/** How far the ellipse that pins and loop draw lies from the true line, at most: never less than it is. */
export function offEllipse(path: Path, around: Box): number {
  const middle = centre(around);
  const [a, b] = [around.width / 2, around.height / 2];
  const points = flattened(path, FINE);
  return (
    FINE + Math.max(...points.map(({ x, y }) => fromEllipse(Math.abs(x - middle.x), Math.abs(y - middle.y), a, b)))
  );
}

const HALVINGS = 100;

/**
 * From a point in the first quarter to an ellipse about the origin: the nearest point's normal goes through it, which gives one
 * equation in one unknown, solved by halving (D. Eberly, Distance from a Point to an Ellipse; from memory).
 */
export function fromEllipse(x: number, y: number, a: number, b: number): number {
  if (a < b) return fromEllipse(y, x, b, a);
  if (y === 0) {
    const across = a * x < a * a - b * b ? (a * a * x) / (a * a - b * b) : a;
    return Math.hypot(across - x, b * Math.sqrt(Math.max(0, 1 - (across / a) ** 2)));
  }
  const ratio = (a / b) ** 2;
  const [u, v] = [x / a, y / b];
  let [low, high] = [v - 1, Math.hypot(ratio * u, v) - 1];
  for (let n = 0; n < HALVINGS; n++) {
    const t = (low + high) / 2;
    if (((ratio * u) / (t + ratio)) ** 2 + (v / (t + 1)) ** 2 > 1) low = t;
    else high = t;
  }
  const t = (low + high) / 2;
  return Math.hypot((ratio * x) / (t + ratio) - x, y / (t + 1) - y);
}
