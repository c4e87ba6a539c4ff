import type { Size } from '../geometry/point.ts';
import { PAPERS } from '../papers/table.ts';
import { error, fail, type Problem, type Result, succeed, warning } from '../problems/problem.ts';
import { showLength } from '../units/print.ts';

/** A printed scale line as measured, mm. `x` runs across the sheet as it is read, `y` down it. */
export interface PrinterReading {
  readonly axis: 'x' | 'y';
  readonly nominal: number;
  readonly measured: number;
}

/** The two diagonals of a printed rectangle: `falling` from top left to bottom right. */
export interface DiagonalReading extends Size {
  readonly falling: number;
  readonly rising: number;
}

export interface PrinterTest {
  /** Of one sheet or several. */
  readonly lines: readonly PrinterReading[];
  readonly diagonals?: readonly DiagonalReading[];
}

export interface AxisCalibration {
  /** Measured over nominal, as a shop's file holds it. */
  readonly scale: number;
  /** Standard uncertainty of the scale: from the scatter of the readings, never below what the eye reads off a rule. */
  readonly uncertainty: number;
  readonly count: number;
}

export interface PrinterCalibration {
  readonly x: AxisCalibration;
  readonly y: AxisCalibration;
  /** How far the sheet's right angle is off, mm in 100 mm; positive where the top right corner leans to the right. */
  readonly skew?: number;
}

/** A steel rule laid along a printed line is read to a quarter of a millimetre over both ends. Common practice, no source. */
const RULE = 0.25;
/** No printer that is set right is farther off. Common practice, no source; readings beyond are asked about, not refused. */
const HONEST = 0.02;
/** Farther off, the length was read in another unit, or off another line. */
const MOST_OFF = 0.5;
/** Both axes this near to a ratio of papers look like it. */
const LIKE = 0.006;

/**
 * Scale factors of a printer from what its test lines measure. A longer line counts for more: least squares through
 * nothing at 0. Problems: `calibrate-reading-unusable`, `calibrate-axis-missing`, `calibrate-scale-absurd`; warnings:
 * `calibrate-wrong-paper`, `calibrate-scale-unusual`, `calibrate-lines-disagree`.
 */
export function calibratePrinter(test: PrinterTest): Result<PrinterCalibration> {
  const problems = unusable(test);
  if (problems.length > 0) return fail(problems);
  const [x, y] = [axisOf(test, 'x'), axisOf(test, 'y')];
  const skews = (test.diagonals ?? []).map((d) => skewOf(d, x.scale, y.scale));
  const skew = skews.length === 0 ? {} : { skew: skews.reduce((sum, s) => sum + s, 0) / skews.length };
  return succeed({ x, y, ...skew }, warningsOf(test, x, y));
}

function axisOf(test: PrinterTest, axis: 'x' | 'y'): AxisCalibration {
  const lines = test.lines.filter((line) => line.axis === axis);
  const weight = lines.reduce((sum, line) => sum + line.nominal ** 2, 0);
  const scale = lines.reduce((sum, line) => sum + line.nominal * line.measured, 0) / weight;
  const left = lines.reduce((sum, line) => sum + (line.measured - scale * line.nominal) ** 2, 0);
  const scatter = lines.length < 2 ? 0 : Math.sqrt(left / (lines.length - 1));
  return { scale, uncertainty: Math.max(scatter, RULE) / Math.sqrt(weight), count: lines.length };
}

/** A rectangle w × h sheared sideways by d over its height has diagonals whose squares differ by 4·w·d. */
function skewOf(d: DiagonalReading, scaleX: number, scaleY: number): number {
  const [width, height] = [d.width * scaleX, d.height * scaleY];
  const sheared = (d.rising ** 2 - d.falling ** 2) / (4 * width);
  return (sheared / height) * 100;
}

function unusable(test: PrinterTest): Problem[] {
  const problems: Problem[] = [];
  const check = (value: number, path: Problem['path'], key: string): void => {
    if (Number.isFinite(value) && value > 0) return;
    problems.push(
      error('calibrate-reading-unusable', [...path, key], `${value} is no ${key}, a length over 0 is needed`),
    );
  };
  test.lines.forEach((line, i) => {
    check(line.nominal, ['lines', i], 'nominal');
    check(line.measured, ['lines', i], 'measured');
  });
  (test.diagonals ?? []).forEach((d, i) => {
    for (const key of ['width', 'height', 'falling', 'rising'] as const) check(d[key], ['diagonals', i], key);
  });
  if (problems.length > 0) return problems;
  for (const axis of ['x', 'y'] as const) {
    if (test.lines.some((line) => line.axis === axis)) continue;
    const message = `there is no line measured in ${axis}, printers differ in the two directions`;
    problems.push(
      error('calibrate-axis-missing', ['lines'], message, 'measure one line across the sheet and one down it'),
    );
  }
  test.lines.forEach((line, i) => {
    if (Math.abs(line.measured / line.nominal - 1) <= MOST_OFF) return;
    const message = `the line of ${showLength(line.nominal, 'mm')} cannot measure ${showLength(line.measured, 'mm')}`;
    const hint = 'measure the line from end to end, and give the length with its unit';
    problems.push(error('calibrate-scale-absurd', ['lines', i, 'measured'], message, hint));
  });
  return problems;
}

/** Pages of one paper fitted to another, where the sheet that is set is not the one that lies in the tray. */
function fittedPapers(): { readonly made: string; readonly into: string; readonly scale: number }[] {
  const papers = ['a4', 'letter'].flatMap((id) => PAPERS.filter((paper) => paper.id === id));
  return papers.flatMap((made) =>
    papers
      .filter((into) => into !== made)
      .map((into) => ({
        made: made.name,
        into: into.name,
        scale: Math.min(into.width / made.width, into.height / made.height),
      })),
  );
}

function warningsOf(test: PrinterTest, x: AxisCalibration, y: AxisCalibration): Problem[] {
  const found: Problem[] = [];
  const scales = [x.scale, y.scale];
  const percent = scales.map((s) => `${(s * 100).toFixed(2)} %`).join(' and ');
  const fitted = fittedPapers().find((paper) => scales.every((s) => Math.abs(s - paper.scale) < LIKE));
  if (fitted !== undefined) {
    const message = `lines come out at ${percent}: that is ${fitted.made} fitted to ${fitted.into}`;
    const hint = `which paper is set? print at 100 %, on the paper that the sheet was made for, before this is believed`;
    found.push(warning('calibrate-wrong-paper', ['lines'], message, hint));
  } else if (scales.some((s) => Math.abs(s - 1) > HONEST)) {
    const message = `lines come out at ${percent}, a printer that is set to 100 % stays within ${HONEST * 100} %`;
    const hint = 'look for "fit to page" or a scale in the print dialogue, then measure again';
    found.push(warning('calibrate-scale-unusual', ['lines'], message, hint));
  }
  test.lines.forEach((line, i) => {
    const miss = line.measured - (line.axis === 'x' ? x : y).scale * line.nominal;
    if (Math.abs(miss) <= 3 * RULE) return;
    const message = `a line of ${showLength(line.nominal, 'mm')} in ${line.axis} measures ${showLength(Math.abs(miss), 'mm')} ${miss > 0 ? 'more' : 'less'} than the others say`;
    found.push(warning('calibrate-lines-disagree', ['lines', i], message, 'measure that line again'));
  });
  return found;
}
