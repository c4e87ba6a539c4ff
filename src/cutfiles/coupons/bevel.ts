import { polygon } from '../../geometry/path.ts';
import type { Board } from '../../shop/board.ts';
import type { BevelMachine } from '../../shop/machine.ts';
import type { LaidBoard } from '../model.ts';

/** Of the test opening's face. */
export const SIDE = 80;
const BORDER = 30;
/** How far outside the face corners the head starts and stops: an end that falls short has nothing to be measured from. */
export const BEYOND = 3;

export const BEVEL_COUPON = { width: SIDE + 2 * BORDER, height: SIDE + 2 * BORDER };

/** A head with nothing allowed for, but that every stroke is `BEYOND` longer at both ends. */
export const uncorrected = (machine: BevelMachine): BevelMachine => ({
  ...machine,
  start: [{ offset: 0 }],
  stop: [{ offset: 0 }],
  overrun: BEYOND,
  outside: false,
});

/** A blank with one opening, which strokes are made for as for any other. */
export function bevelCoupon(board: Board): LaidBoard {
  const square = (at: number, side: number) =>
    polygon([
      { x: at, y: at },
      { x: at + side, y: at },
      { x: at + side, y: at + side },
      { x: at, y: at + side },
    ]);
  const face = square(BORDER, SIDE);
  return {
    layer: 1,
    name: 'coupon',
    board,
    size: BEVEL_COUPON,
    at: { x: 0, y: 0 },
    turned: false,
    outline: square(0, BEVEL_COUPON.width),
    openings: [{ id: 'opening-1', path: ['openings', 0], name: 'test opening', face, back: face }],
    place: (p) => p,
  };
}

export const BEVEL_STEPS: readonly string[] = [
  `Cut it from the board that will be used. The head starts and stops ${BEYOND} mm outside the face corners, nothing else is allowed for.`,
  'Read on the face, at all eight ends of cuts, how far each runs past the corner.',
  `Starts: offset = ${BEYOND} mm - mean. Stops: offset = mean - ${BEYOND} mm.`,
  `Measure the fallout at its face and at its back, across and up: the face has ${SIDE} mm where the blade comes out at the right place.`,
  'Put the readings into a file, the keys thickness, starts, stops, face and back, and run: matwright calibrate bevel-coupon FILE',
];
