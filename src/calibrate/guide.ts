import { fitLine, type Line, type Sample } from '../bench/fit.ts';
import { defined } from '../problems/defined.ts';
import { error, fail, type Problem, type Result, succeed, warning } from '../problems/problem.ts';
import { showLength } from '../units/print.ts';
import type { Context, Outcome } from './outcome.ts';
import { inMm, kept, rounded, signed } from './outcome.ts';
import type { Readings } from './readings.ts';
import { READING, standingOutOfLine } from './statistics.ts';

/** A strip cut at one setting of the guide: what the guide showed, and how wide the strip came out at the face, mm. */
export interface GuideReading {
  readonly reading: number;
  readonly measured: number;
}

export interface GuideCalibration {
  /** True setting = a + b × reading, as a shop's file holds it. */
  readonly a: number;
  readonly b: number;
  /** Over the readings that were kept, with standard errors from three on. */
  readonly line: Line;
  /** Indices of the readings that were kept and of those that stand out. */
  readonly kept: readonly number[];
  readonly standOut: readonly number[];
  /**
   * What is left over: nothing a person could read; play that no correction takes away; or a bend that repeats and
   * says that the scale itself is uneven.
   */
  readonly rest: 'none' | 'play' | 'uneven';
  /** How likely strips differ this much from the law before by play and reading alone, 0 to 1. */
  readonly chance: number;
}

/** A scale that is off by more is more likely read in another unit, or from the wrong end. */
const MOST_OFF = 0.05;
/** Five samples leave two degrees of freedom beside a parabola: fewer show no bend. */
const LEAST_FOR_BEND = 5;
/** A correction that chance makes more often than this corrects nothing: the usual level of a test. */
const BY_CHANCE = 0.05;
/** A bend of more than this many of its own standard errors is one. */
const CLEAR_BEND = 4;

/** True setting = a + b × reading. */
interface Law {
  readonly a: number;
  readonly b: number;
}

const TRUE: Law = { a: 0, b: 1 };

/**
 * The true setting of a guide over its reading, by least squares, and whether that is another law than the one `before`.
 * Problems: `calibrate-readings-few`,
 * `calibrate-reading-unusable`.
 */
export function calibrateGuide(readings: readonly GuideReading[], before: Law = TRUE): Result<GuideCalibration> {
  const problems = unusable(readings);
  if (problems.length > 0) return fail(problems);
  const samples = readings.map((r): Sample => ({ x: r.reading, y: r.measured }));
  const out = standingOutOfLine(samples);
  const indices = readings.map((_, i) => i);
  const kept = indices.filter((i) => !out[i]);
  const used = kept.map((i) => samples[i]!);
  const line = fitLine(used);
  const rest = restOf(
    kept.map((i) => samples[i]!.x),
    line.residuals,
  );
  const standOut = indices.filter((i) => out[i]);
  const chance = chanceOf(used, line, before);
  const result = { a: line.intercept, b: line.slope, line, kept, standOut, rest, chance };
  return succeed(result, warningsOf(result, readings));
}

/**
 * The F test of both numbers at once, since one that is a little off makes up for the other: with two of them its tail is
 * (S1 / S0) to the power of half the degrees of freedom that are left, S being the squares that each law leaves. Readings
 * scatter by their own rounding at least; two strips leave nothing to judge by but what a person can read.
 */
function chanceOf(samples: readonly Sample[], line: Line, before: Law): number {
  const squares = (miss: readonly number[]): number => miss.reduce((sum, r) => sum + r * r, 0);
  const left = squares(line.residuals);
  const more = squares(samples.map(({ x, y }) => y - before.a - before.b * x)) - left;
  const free = samples.length - 2;
  if (free === 0) return Math.exp(-more / (2 * READING ** 2));
  const scatter = Math.max(left, (free * READING ** 2) / 12);
  return (scatter / (scatter + more)) ** (free / 2);
}

/** Residuals smaller than the reading are none; otherwise a parabola through them tells a bend from play. */
function restOf(x: readonly number[], residuals: readonly number[]): GuideCalibration['rest'] {
  if (Math.max(...residuals.map(Math.abs)) <= READING + 1e-9) return 'none';
  const n = x.length;
  if (n < LEAST_FOR_BEND) return 'play';
  const middle = x.reduce((sum, v) => sum + v, 0) / n;
  const square = fitLine(x.map((v) => ({ x: v - middle, y: (v - middle) ** 2 }))).residuals;
  const size = square.reduce((sum, q) => sum + q * q, 0);
  if (size === 0) return 'play';
  const bend = square.reduce((sum, q, i) => sum + q * residuals[i]!, 0) / size;
  const left = residuals.reduce((sum, r, i) => sum + (r - bend * square[i]!) ** 2, 0);
  return Math.abs(bend) > CLEAR_BEND * Math.sqrt(left / (n - 3) / size) ? 'uneven' : 'play';
}

function unusable(readings: readonly GuideReading[]): Problem[] {
  const problems = readings.flatMap((r, i) =>
    (['reading', 'measured'] as const)
      .filter((key) => !Number.isFinite(r[key]) || r[key] < 0)
      .map((key) =>
        error('calibrate-reading-unusable', ['readings', i, key], `${r[key]} is no ${key}, a length is needed`),
      ),
  );
  if (problems.length > 0) return problems;
  if (new Set(readings.map((r) => r.reading)).size >= 2) return [];
  const message = 'strips cut at two settings at least are needed, five are better';
  return [error('calibrate-readings-few', ['readings'], message, 'cut strips from a narrow to the widest setting')];
}

function warningsOf(result: GuideCalibration, readings: readonly GuideReading[]): Problem[] {
  const found: Problem[] = [];
  for (const i of result.standOut) {
    const { reading, measured } = readings[i]!;
    const message = `the strip of ${showLength(measured, 'mm')} at ${showLength(reading, 'mm')} stands out and does not count`;
    found.push(warning('calibrate-reading-stands-out', ['readings', i], message, 'measure it again, or cut it again'));
  }
  if (Math.abs(result.b - 1) > MOST_OFF) {
    const message = `the guide's scale comes to ${result.b.toFixed(3)} of the truth, a rule is far nearer to 1`;
    found.push(
      warning('calibrate-guide-scale', ['readings'], message, 'look at the units, and at which edge was read'),
    );
  }
  const largest = showLength(Math.max(...result.line.residuals.map(Math.abs)), 'mm');
  if (result.rest === 'play') {
    const message = `strips differ from the corrected scale by up to ${largest} without a pattern, which is play`;
    found.push(
      warning('calibrate-guide-play', ['readings'], message, 'tighten the guide, press the board to it alike'),
    );
  }
  if (result.rest === 'uneven') {
    const message = `the guide's scale is uneven: strips differ from a straight correction by up to ${largest}`;
    const hint = 'look whether the bar is bent, or the guide not square to it';
    found.push(warning('calibrate-guide-uneven', ['readings'], message, hint));
  }
  return found;
}

/** The guide's scale from strips, as the shop's file holds it. */
export function fromGuideReadings(readings: Readings<'guide'>, { shop, state, date }: Context): Result<Outcome> {
  const { strips } = readings;
  const { a: aBefore, b: bBefore } = shop?.guide ?? TRUE;
  const solved = calibrateGuide(
    strips.map(({ setting, width }) => ({ reading: setting, measured: width })),
    { a: aBefore, b: bBefore },
  );
  if (!solved.ok) return { ok: false, problems: solved.problems.map(inStrips) };
  const { a, b, line, standOut, rest, chance } = solved.value;
  const clear = chance < BY_CHANCE;
  const before = shop?.guide?.setAt;
  const setAt = readings.thickness ?? before;
  const missing: Problem[] = [];
  if (before !== undefined && readings.thickness === undefined) {
    const message = `the thickness of the strips' board is not given; it is taken for the ${showLength(before, 'mm')} that the guide was set at`;
    missing.push(warning('calibrate-thickness-missing', [], message, 'give thickness: as measured'));
  }
  const errors =
    line.slopeError === undefined ? '' : ` (a ± ${line.interceptError!.toFixed(2)}, b ± ${line.slopeError.toFixed(4)})`;
  const summary = `a ${inMm(a)}, b ${rounded(b, 5)}${errors}${clear ? '' : ', not clear of chance'}`;
  const words = [
    `guide: true setting = ${signed(a)} mm + ${b.toFixed(5)} × reading${errors}`,
    ...keptStrips(solved.value.kept, strips, line.residuals),
    ...standOut.map((i) => `  set to ${inMm(strips[i]!.setting)}: stands out, does not count`),
    `  ${REST[rest]}`,
    ...(clear
      ? []
      : [`  chance alone makes strips differ so much in ${percent(chance)} of tests: ${stays(aBefore, bBefore)}`]),
  ];
  const correction = { a: inMm(a), b: rounded(b, 5) };
  // A guide that was found true is calibrated as well.
  const unchanged = state.guide ? {} : { a: inMm(aBefore), b: bBefore };
  const day = readings.date ?? date;
  const values = { ...(clear ? correction : unchanged), ...defined({ setAt: setAt && inMm(setAt) }), date: day };
  const entry = { ...kept({ ...readings, date: day }, ['thickness', 'setting', 'width']), result: summary };
  return succeed(
    {
      words,
      result: { a, b, line, standOut, rest, chance, ...defined({ setAt }) },
      edits: [
        { kind: 'set', path: ['guide'], values },
        { kind: 'append', path: ['calibrations', 'guide'], value: entry },
      ],
      ...(clear ? {} : { offer: { question: OFFER, edits: [{ kind: 'set', path: ['guide'], values: correction }] } }),
    },
    [...missing, ...solved.warnings.map(inStrips)],
  );
}

const OFFER = 'Write this correction all the same?';

const percent = (share: number): string => `${(share * 100).toFixed(0)} %`;

const stays = (a: number, b: number): string =>
  a === 0 && b === 1 ? 'the scale counts as true' : `a ${inMm(a)} and b ${rounded(b, 5)} stay`;

const REST = {
  none: 'what is left over is less than can be read: the scale is true with this correction',
  play: 'what is left over has no pattern: it is play, which no correction takes away',
  uneven: 'what is left over bends: the scale itself is uneven, and a straight correction only halves it',
} as const;

function keptStrips(
  indices: readonly number[],
  strips: Readings<'guide'>['strips'],
  residuals: readonly number[],
): readonly string[] {
  return indices.map((strip, i) => {
    const { setting, width } = strips[strip]!;
    return `  set to ${inMm(setting)}: ${inMm(width)} wide, ${signed(residuals[i]!)} mm from the corrected scale`;
  });
}

const KEYS: Readonly<Record<string, string>> = { readings: 'strips', reading: 'setting', measured: 'width' };

/** The arithmetic's own names for what the readings call otherwise. */
const inStrips = (problem: Problem): Problem => ({
  ...problem,
  path: problem.path.map((step) => (typeof step === 'string' ? (KEYS[step] ?? step) : step)),
});
