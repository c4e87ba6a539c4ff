import type { ReadBox, ReadPoint } from './pdf-lines.ts';

/** a b c d e f: x' = a·x + c·y + e, y' = b·x + d·y + f. */
export type Matrix = readonly [number, number, number, number, number, number];

export const MM_PER_POINT = 25.4 / 72;
export const IDENTITY: Matrix = [1, 0, 0, 1, 0, 0];

/** `inner` first, then `outer`. */
export function times(outer: Matrix, inner: Matrix): Matrix {
  const [a, b, c, d, e, f] = outer;
  const [p, q, r, s, t, u] = inner;
  return [a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f];
}

export const through = ([a, b, c, d, e, f]: Matrix, x: number, y: number): ReadPoint => ({
  x: a * x + c * y + e,
  y: b * x + d * y + f,
});

export const stretch = ([a, b, c, d]: Matrix): number => Math.sqrt(Math.abs(a * d - b * c));

export function boxOf(points: readonly ReadPoint[]): ReadBox {
  const [xs, ys] = [points.map((p) => p.x), points.map((p) => p.y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

/** What two boxes share; without size where they share nothing. */
export function common(a: ReadBox, b: ReadBox): ReadBox {
  const [x, y] = [Math.max(a.x, b.x), Math.max(a.y, b.y)];
  const width = Math.max(0, Math.min(a.x + a.width, b.x + b.width) - x);
  const height = Math.max(0, Math.min(a.y + a.height, b.y + b.height) - y);
  return { x, y, width, height };
}
