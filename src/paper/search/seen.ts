import { type Box, bottom, right } from '../../geometry/box.ts';
import { once } from '../../problems/once.ts';
import { Axis } from './axis.ts';
import { type Bands, bandsOf } from './bands.ts';
import type { Obstacle } from './obstacle.ts';
import { type Rim, rimOf } from './rim.ts';
import { DrawnSquares } from './squares.ts';

/** What is laid out, seen along both axes: the same for every window that it is looked at through. */
export interface Seen {
  readonly x: Axis;
  readonly y: Axis;
  readonly avoid: readonly Obstacle[];
  readonly rim: Rim;
  /** Only asked for where grids have to be counted. */
  readonly bands: () => Bands;
  readonly squares: () => DrawnSquares;
}

/** `drawn` are boxes that together hold everything drawn; what runs level or upright is held exactly. */
export function seenOf(drawn: readonly Box[], avoid: readonly Obstacle[]): Seen {
  const x = new Axis(
    drawn.map((b) => [b.x, right(b)]),
    avoid.map(({ box: b, weight }) => ({ stretch: [b.x, right(b)], weight })),
  );
  const y = new Axis(
    drawn.map((b) => [b.y, bottom(b)]),
    avoid.map(({ box: b, weight }) => ({ stretch: [b.y, bottom(b)], weight })),
  );
  const bands = once(() => bandsOf(x.lows, x.highs, y.lows, y.highs));
  return { x, y, avoid, rim: rimOf(x, y), bands, squares: once(() => new DrawnSquares(x, y)) };
}
