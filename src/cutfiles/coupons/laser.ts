import { polygon } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import { error, fail, type Problem, type Result, succeed } from '../../problems/problem.ts';
import { printDecimal } from '../../units/print.ts';
import type { Toolpath } from '../model.ts';
import { averaged, errorOf } from './readings.ts';

/** Strips side by side, which lose one kerf each: pushed together they lose ten. */
const STRIPS = 10;
const PITCH = 10;
const STRIP_LENGTH = 30;
/** The side of a square that drops out: the piece loses one kerf, the hole gains one. */
const SQUARE = 30;
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

/** Caliper readings of a coupon, mm; several of each where they were repeated. */
export interface LaserReadings {
  /** The upright strips pushed together. */
  readonly stripsX: readonly number[];
  /** The other ones. */
  readonly stripsY: readonly number[];
  /** Piece and hole of the square, where they were measured. */
  readonly square?: {
    readonly pieceX: readonly number[];
    readonly holeX: readonly number[];
    readonly pieceY: readonly number[];
    readonly holeY: readonly number[];
  };
}

export interface LaserCalibration {
  readonly kerf: { readonly x: number; readonly y: number };
  /** Standard error of each. */
  readonly kerfError: { readonly x: number; readonly y: number };
  /** Length moved over length told, where the square was measured. */
  readonly scale?: { readonly x: number; readonly y: number };
  readonly scaleError?: { readonly x: number; readonly y: number };
}

/** A wider one is a slip: the widest beams for board stay below a millimetre. Common practice, no source. */
const WIDEST = 1;
/** A machine whose lengths are farther from true was told another size, or was measured wrong. */
const SCALES = { least: 0.9, most: 1.1 };

/**
 * Kerf and scale from a coupon: strips measure STRIPS·(PITCH·scale − kerf), piece and hole SQUARE·scale ∓ kerf. Without the
 * square the scale is taken as 1. Problems: `coupon-reading-unusable`, `coupon-kerf-absurd`, `coupon-scale-absurd`.
 */
export function calibrateLaser(readings: LaserReadings): Result<LaserCalibration> {
  const problems: Problem[] = [];
  const { square } = readings;
  const axis = (name: 'x' | 'y') => {
    const upper = name.toUpperCase() as 'X' | 'Y';
    const strips = averaged([`strips${upper}`], readings[`strips${upper}`], problems);
    const parts =
      square === undefined
        ? undefined
        : (['piece', 'hole'] as const).map((part) =>
            averaged(['square', `${part}${upper}`], square[`${part}${upper}`], problems),
          );
    const scale = parts === undefined ? 1 : (parts[0]!.mean + parts[1]!.mean) / (2 * SQUARE);
    const kerf = PITCH * scale - strips.mean / STRIPS;
    const scaleError = parts === undefined ? 0 : Math.hypot(errorOf(parts[0]!), errorOf(parts[1]!)) / (2 * SQUARE);
    const kerfError = Math.hypot(errorOf(strips) / STRIPS, PITCH * scaleError);
    if (scale < SCALES.least || scale > SCALES.most) problems.push(scaleAbsurd(name, scale));
    else if (kerf < 0 || kerf > WIDEST) problems.push(absurd(name, kerf));
    return { kerf, kerfError, scale, scaleError };
  };
  const [x, y] = [axis('x'), axis('y')];
  if (problems.some(({ severity }) => severity === 'error')) return fail(problems);
  const found: LaserCalibration = {
    kerf: { x: x.kerf, y: y.kerf },
    kerfError: { x: x.kerfError, y: y.kerfError },
    ...(square === undefined
      ? {}
      : { scale: { x: x.scale, y: y.scale }, scaleError: { x: x.scaleError, y: y.scaleError } }),
  };
  return succeed(found, problems);
}

function absurd(axis: 'x' | 'y', kerf: number): Problem {
  const message = `a kerf of ${printDecimal(kerf, 'mm', 3).text} mm in ${axis} is none that a beam makes`;
  const hint = `were all ${STRIPS} strips measured, and was the coupon cut at full scale?`;
  return error('coupon-kerf-absurd', [`strips${axis.toUpperCase()}`], message, hint);
}

function scaleAbsurd(axis: 'x' | 'y', scale: number): Problem {
  const upper = axis.toUpperCase();
  const message = `piece and hole of the square mean a scale of ${printDecimal(scale, 'mm', 4).text} in ${axis}, which no machine has`;
  const hint = `their mean is near ${SQUARE} mm; was the coupon cut at full scale?`;
  return error('coupon-scale-absurd', ['square', `piece${upper}`], message, hint);
}
