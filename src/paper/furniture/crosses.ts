import type { Fonts } from '../../fonts/model.ts';
import { type Box, bottom, right } from '../../geometry/box.ts';
import { distance, type Point } from '../../geometry/point.ts';
import { widthOf } from '../../text/line.ts';
import { outwardsFrom } from '../../text/places.ts';
import type { Room } from '../../text/room.ts';
import { FINE } from '../../text/styles.ts';
import { lapX, lapY, type Plan } from '../plan.ts';
import type { Seam } from '../seams.ts';

/** A registration cross: both sheets of a seam draw it at the same place of the drawing. */
export interface Cross {
  /** `A1|A2 b`. */
  readonly name: string;
  /** On the join line, turned space. */
  readonly at: Point;
}

/** Half of a cross, where the lap leaves room for it. */
export const ARM = 4;
/** A longer seam gets a third cross in its middle. */
const LONG_SEAM = 320;

/** Two crosses near the ends of a seam, and one in the middle of a long one, where they are clear of the drawing. */
export function crossesOf(
  seam: Seam,
  pair: string,
  plan: Plan,
  drawing: Box,
  room: Room,
  fonts: Fonts,
): readonly Cross[] {
  const upright = seam.kind === 'beside';
  const [low, high] = upright ? [drawing.y, bottom(drawing)] : [drawing.x, right(drawing)];
  const shared = upright ? lapY(plan) : lapX(plan);
  const inset = Math.min(shared + ARM + 3, (seam.to - seam.from) / 5);
  let [from, to] = [Math.max(seam.from + inset, low + ARM), Math.min(seam.to - inset, high - ARM)];
  if (to - from < Math.min(40, (seam.to - seam.from) / 2)) [from, to] = [seam.from + inset, seam.to - inset];
  const wide = widthOf(`${pair} m`, FINE, fonts) + 2;

  const parts = to - from > LONG_SEAM ? [0.08, 0.5, 0.92] : [0.1, 0.9];
  const reach = (to - from) / (2 * parts.length);
  return parts.map((part, i) => {
    const ideal = from + part * (to - from);
    const along = outwardsFrom(ideal, Math.max(from, ideal - reach), Math.min(to, ideal + reach), 1);
    const size = upright ? { width: 2 * wide, height: 2 * ARM + 1 } : { width: ARM + wide, height: 2 * ARM + 2 };
    const corner = (at: number): Point =>
      upright ? { x: seam.at - wide, y: at - ARM - 1 } : { x: at - ARM, y: seam.at - ARM - 1 };
    const clear = room.best(size, (isTaken) =>
      along.some((at) => {
        const { x, y } = corner(at);
        return isTaken(x, y);
      }),
    );
    const isThere = (at: number): boolean => clear !== undefined && distance(corner(at), clear) === 0;
    const at = along.find(isThere) ?? along[0]!;
    return { name: `${pair} ${'abc'[i]}`, at: upright ? { x: seam.at, y: at } : { x: at, y: seam.at } };
  });
}
