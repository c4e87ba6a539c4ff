/** Lengths are millimetres; x runs right, y runs down. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

export const point = (x: number, y: number): Point => ({ x, y });
export const plus = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y });
export const minus = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });
export const times = (a: Point, k: number): Point => ({ x: a.x * k, y: a.y * k });
export const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;
export const length = (a: Point): number => Math.hypot(a.x, a.y);
export const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
/** `a + (b − a)·k`. */
export const between = (a: Point, b: Point, k: number): Point => ({
  x: a.x + (b.x - a.x) * k,
  y: a.y + (b.y - a.y) * k,
});
/** Unit vector along `a`; `a` must not be zero. */
export const unit = (a: Point): Point => times(a, 1 / length(a));
/** The unit vector a quarter turn to the left of `a` as the eye sees it (x right, y down). */
export const leftOf = (a: Point): Point => {
  const u = unit(a);
  return { x: u.y, y: -u.x };
};
