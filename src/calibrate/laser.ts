import { PITCH, SQUARE, STRIPS } from '../cutfiles/coupons/laser.ts';
import { defined } from '../problems/defined.ts';
import { error, fail, type Problem, type Result, succeed } from '../problems/problem.ts';
import type { Machine } from '../shop/machine.ts';
import { printDecimal } from '../units/print.ts';
import { averaged, errorOf } from './caliper.ts';
import { CLEARLY, fine, give, machineOf, type Values, written } from './machine.ts';
import { type Context, type Outcome, rounded } from './outcome.ts';
import type { Readings } from './readings.ts';

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

export function fromLaserReadings(readings: Readings<'laser'>, context: Context): Result<Outcome> {
  const machine = machineOf(readings.machine, 'laser', context);
  if (!machine.ok) return machine;
  const { stripsX, stripsY, square } = readings;
  const solved = calibrateLaser({ stripsX, stripsY, ...defined({ square }) });
  if (!solved.ok) return solved;
  const { kerf, kerfError } = solved.value;
  const scale = scaleOf(solved.value, machine.value);
  const words = [
    `laser ${readings.machine}: kerf x ${give(kerf.x, kerfError.x)}, kerf y ${give(kerf.y, kerfError.y)}`,
    ...scale.words,
  ];
  const values: Values = { kerf: { x: fine(kerf.x), y: fine(kerf.y) }, ...scale.values };
  const lengths = ['stripsX', 'stripsY', 'pieceX', 'holeX', 'pieceY', 'holeY'];
  return written('laser', readings, context, { values, lengths, words, result: solved.value }, solved.warnings);
}

/** A scale is written where it clearly is none, and where the machine had one that it lost. */
function scaleOf({ scale, scaleError }: LaserCalibration, machine: Machine | undefined) {
  if (scale === undefined || scaleError === undefined) return { words: [], values: {} };
  const told = (['x', 'y'] as const).map(
    (axis) => `${axis} ${scale[axis].toFixed(5)} ± ${scaleError[axis].toFixed(5)}`,
  );
  const words = [`  scale ${told.join(', ')}`];
  const off = (['x', 'y'] as const).some((axis) => Math.abs(scale[axis] - 1) > CLEARLY * scaleError[axis]);
  const had = machine !== undefined && (machine.scale.x !== 1 || machine.scale.y !== 1);
  if (!off && !had)
    return { words: [...words, '  that is 1, as far as it can be read: nothing to correct'], values: {} };
  const values = { scale: off ? { x: rounded(scale.x, 5), y: rounded(scale.y, 5) } : { x: 1, y: 1 } };
  const where = "  corrected in a plotter's file (HP-GL) alone; for SVG and DXF set it on the machine";
  return { words: [...words, where], values };
}
