import { type Box, bottom, right } from '../../geometry/box.ts';
import { Axis } from './axis.ts';
import type { Obstacle } from './obstacle.ts';
import { type Rim, rimOf } from './rim.ts';

/** What is laid out, seen along both axes: the same for every window that it is looked at through. */
export interface Seen {
  readonly x: Axis;
  readonly y: Axis;
  readonly avoid: readonly Obstacle[];
  /** The boxes by where they begin downwards. */
  readonly order: Int32Array;
  readonly rim: Rim;
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
  const places: number[] = [];
  for (let i = 0; i < drawn.length; i++) places.push(i);
  const order = Int32Array.from(places.sort((a, b) => y.lows[a]! - y.lows[b]!));
  return { x, y, avoid, order, rim: rimOf(x, y) };
}
