import { polygon } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import type { Toolpath } from '../model.ts';

/** Strips side by side, which lose one kerf each: pushed together they lose ten. */
export const STRIPS = 10;
export const PITCH = 10;
const STRIP_LENGTH = 30;
/** The side of a square that drops out: the piece loses one kerf, the hole gains one. */
export const SQUARE = 30;
const MARGIN = 5;

export const LASER_COUPON = { width: 2 * MARGIN + STRIPS * PITCH, height: 3 * MARGIN + STRIP_LENGTH + STRIPS * PITCH };

/** Drawn without any allowance, so that what is measured is the machine's own. */
export function laserCoupon(): readonly Toolpath[] {
  const long = STRIPS * PITCH;
  const across: Point = { x: MARGIN, y: MARGIN };
  const up: Point = { x: MARGIN, y: 2 * MARGIN + STRIP_LENGTH };
  const square: Point = { x: up.x + STRIP_LENGTH + 3 * MARGIN, y: up.y + 2 * MARGIN };
  const cuts = Array.from({ length: STRIPS - 1 }, (_, i) => (i + 1) * PITCH);
  return [
    ...cuts.map((x) =>
      line(`strip-x-${x}`, { x: across.x + x, y: across.y }, { x: across.x + x, y: across.y + STRIP_LENGTH }),
    ),
    ...cuts.map((y) => line(`strip-y-${y}`, { x: up.x, y: up.y + y }, { x: up.x + STRIP_LENGTH, y: up.y + y })),
    frame('inner', 'square', square, SQUARE, SQUARE),
    frame('outer', 'strips-x', across, long, STRIP_LENGTH),
    frame('outer', 'strips-y', up, STRIP_LENGTH, long),
  ];
}

function line(id: string, from: Point, to: Point): Toolpath {
  return { operation: 'inner', id, reversible: true, path: polygon([from, to], false) };
}

function frame(operation: 'inner' | 'outer', id: string, { x, y }: Point, width: number, height: number): Toolpath {
  const corners = [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ];
  return { operation, id, reversible: true, path: polygon(corners) };
}

export const LASER_STEPS: readonly string[] = [
  `Cut it from the board that will be used. Nothing is allowed for: the ${STRIPS} strips of each row are ${PITCH} mm apart.`,
  `Push the ${STRIPS} strips of a row together without a gap and measure their width: kerf = (${STRIPS * PITCH} mm - width) / ${STRIPS}.`,
  'The row of upright strips gives the kerf x, the other row the kerf y.',
  `The square: measure piece and hole, across and up; their mean is ${SQUARE} mm where the machine is true.`,
  'Put the readings into a file, the keys stripsX, stripsY and square, and run: matwright calibrate laser FILE',
];
