import { calibrateHead, type HeadCalibration, type HeadReading } from '../../bench/calibrate-head.ts';
import { polygon } from '../../geometry/path.ts';
import { error, fail, type Problem, type Result, succeed } from '../../problems/problem.ts';
import type { Board } from '../../shop/board.ts';
import type { BevelMachine } from '../../shop/machine.ts';
import type { LaidBoard } from '../model.ts';
import { averaged, errorOf } from './readings.ts';

/** Of the test opening's face. */
const SIDE = 80;
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

/** Readings of one coupon, mm. */
export interface BevelReadings {
  readonly thickness: number;
  /** Eight of them, on the face, as they are read: past the corner. */
  readonly ends: readonly { readonly end: HeadReading['end']; readonly past: number }[];
  /** Of the fallout, across and up together. */
  readonly face?: readonly number[];
  readonly back?: readonly number[];
}

export interface BevelCalibration extends HeadCalibration {
  /** Degrees between blade and face, where the fallout was measured. */
  readonly angle?: { readonly degrees: number; readonly error: number };
  /** How far outside its line the blade comes out at the face; the opening is larger by twice this. */
  readonly aside?: number;
}

/**
 * A head's offsets by the bench's own arithmetic, and from the fallout the angle it really cuts: its back is smaller than
 * its face by 2·t·cot θ. Problems of `calibrateHead`, and `coupon-reading-unusable`, `coupon-fallout-absurd`.
 */
export function calibrateBevel(readings: BevelReadings): Result<BevelCalibration> {
  const { thickness } = readings;
  const head = calibrateHead({
    readings: readings.ends.map(({ end, past }) => ({ thickness, end, past })),
    marksBeyond: BEYOND,
  });
  const problems: Problem[] = [...(head.ok ? head.warnings : head.problems)];
  if (readings.face === undefined || readings.back === undefined) {
    return head.ok ? succeed(head.value, problems) : fail(problems);
  }
  const face = averaged(['face'], readings.face, problems);
  const back = averaged(['back'], readings.back, problems);
  const setback = Math.abs(face.mean - back.mean) / 2;
  if (setback > 5 * thickness || Math.abs(face.mean - SIDE) > SIDE / 10) {
    const hint = `the test opening has ${SIDE} mm at its face; was the fallout measured there and at its back?`;
    problems.push(error('coupon-fallout-absurd', ['face'], 'the fallout is none of this coupon', hint));
  }
  if (!head.ok || problems.some(({ severity }) => severity === 'error')) return fail(problems);
  const setbackError = Math.hypot(errorOf(face), errorOf(back)) / 2;
  const degrees = (Math.atan2(thickness, setback) * 180) / Math.PI;
  const slope = thickness / (thickness ** 2 + setback ** 2);
  return succeed(
    {
      ...head.value,
      angle: { degrees, error: (slope * setbackError * 180) / Math.PI },
      aside: (face.mean - SIDE) / 2,
    },
    problems,
  );
}
