import { CORNER_LOSS } from '../cutfiles/coupons/knife.ts';
import { error, fail, type Problem, type Result, succeed } from '../problems/problem.ts';
import { printDecimal } from '../units/print.ts';
import { averaged, errorOf } from './caliper.ts';
import { fine, give, machineOf, written } from './machine.ts';
import type { Context, Outcome } from './outcome.ts';
import type { Readings } from './readings.ts';

/** Caliper readings of all squares, mm. */
export interface KnifeReadings {
  readonly sides: readonly number[];
  readonly diagonals: readonly number[];
}

export interface KnifeCalibration {
  readonly offset: number;
  readonly offsetError: number;
}

/** A knife that trails farther is measured wrong. Common practice, no source. */
const FARTHEST = 3;

/** The offset from the corners that squares have lost. Problems: `coupon-reading-unusable`, `coupon-offset-absurd`. */
export function calibrateKnife(readings: KnifeReadings): Result<KnifeCalibration> {
  const problems: Problem[] = [];
  const sides = averaged(['sides'], readings.sides, problems);
  const diagonals = averaged(['diagonals'], readings.diagonals, problems);
  const offset = (Math.SQRT2 * sides.mean - diagonals.mean) / (2 * CORNER_LOSS);
  const offsetError = Math.hypot(Math.SQRT2 * errorOf(sides), errorOf(diagonals)) / (2 * CORNER_LOSS);
  if (offset < -3 * offsetError || offset > FARTHEST) {
    const message = `an offset of ${printDecimal(offset, 'mm', 3).text} mm is none that a drag knife has`;
    problems.push(
      error('coupon-offset-absurd', ['diagonals'], message, 'measure the same squares again, corner to corner'),
    );
  }
  if (problems.some(({ severity }) => severity === 'error')) return fail(problems);
  return succeed({ offset: Math.max(0, offset), offsetError }, problems);
}

export function fromKnifeReadings(readings: Readings<'knife'>, context: Context): Result<Outcome> {
  const machine = machineOf(readings.machine, 'knife', context);
  if (!machine.ok) return machine;
  const solved = calibrateKnife(readings);
  if (!solved.ok) return solved;
  const { offset, offsetError } = solved.value;
  const words = [`knife ${readings.machine}: its tip trails its axis by ${give(offset, offsetError)}`];
  const told = { values: { offset: fine(offset) }, lengths: ['sides', 'diagonals'], words, result: solved.value };
  return written('knife', readings, context, told, solved.warnings);
}
