import { fitLine, type Line } from '../bench/fit.ts';
import { defined } from '../problems/defined.ts';
import { error, fail, type Problem, type Result, succeed, warning } from '../problems/problem.ts';
import type { OffsetAt } from '../shop/head.ts';
import { showLength } from '../units/print.ts';
import { mean, READING, standardDeviation, standingOut } from './statistics.ts';

/** One corner end of a test opening, read on the face. */
export interface HeadReading {
  /** Of the board, measured, mm. */
  readonly thickness: number;
  readonly end: 'start' | 'stop';
  /** How far the cut runs past the corner, mm; negative where it stops short. */
  readonly past: number;
}

export interface HeadTest {
  readonly readings: readonly HeadReading[];
  /**
   * How far outside the corners the marks stood, which is taken off every reading: an undercut corner has no crossing to
   * measure from, so a test is cut with its marks some 3 mm long.
   */
  readonly marksBeyond: number;
}

export interface EndCalibration {
  /** The mean of the readings that were kept: o_start or o_stop of the trade's formula, mm. */
  readonly past: number;
  /** How far the blade is ahead of the scribe: −o_start or o_stop. */
  readonly offset: number;
  readonly kept: number;
  /** Of the readings that were kept; undefined for a single one. */
  readonly standardDeviation?: number;
  /** Of the mean. */
  readonly standardError: number;
  /**
   * True where that comes from the head's spread over the whole test: few readings alone would claim too much or too
   * little. An end that scatters clearly more than the others has its own.
   */
  readonly pooled: boolean;
  /** Readings that stand out and do not count: their index in the test. */
  readonly standOut: readonly number[];
}

export interface HeadCalibration {
  readonly thicknesses: readonly {
    readonly thickness: number;
    readonly start: EndCalibration;
    readonly stop: EndCalibration;
  }[];
  /** What a shop's file holds for the head. */
  readonly start: readonly Required<OffsetAt>[];
  readonly stop: readonly Required<OffsetAt>[];
  /** Offsets over thickness; residuals tell how good the fit is, from three thicknesses on. */
  readonly startLine: Line;
  readonly stopLine: Line;
  /** Standard deviation of one cut's end, pooled over everything that was kept. */
  readonly spread: number;
  /** Twice the spread: the overrun to wish for. */
  readonly overrun: number;
}

/** Fewer readings of one end at one thickness cannot show which of them is wrong. */
const FEW = 4;
/** A head that scatters more is loose, or its blade bends. Common practice, no source. */
const WIDE_SPREAD = 0.3;
/** An end whose own scatter is more than this many times the spread of all is another kind of end. */
const OWN_SCATTER = 1.5;
/** A line misses a mean by more only where the offsets do not follow the thickness. */
const POOR_FIT = 0.15;

/**
 * A head's offsets from a test opening that was cut with every scribe mark `marksBeyond` outside the face corners.
 * With a mark at u = 0 the blade starts at u = e_start, so the cut runs −e_start past the corner; with a mark at u = L it
 * ends e_stop past it. Problems: `calibrate-readings-none`, `calibrate-reading-unusable`, `calibrate-end-missing`.
 */
export function calibrateHead(test: HeadTest): Result<HeadCalibration> {
  const problems = unusable(test);
  if (problems.length > 0) return fail(problems);
  const values = test.readings.map((reading, index) => ({ ...reading, index, past: reading.past - test.marksBeyond }));
  const thicknesses = [...new Set(values.map((v) => v.thickness))].sort((a, b) => a - b);
  const groups = thicknesses.map((thickness) => ({
    thickness,
    start: groupOf(values.filter((v) => v.thickness === thickness && v.end === 'start')),
    stop: groupOf(values.filter((v) => v.thickness === thickness && v.end === 'stop')),
  }));
  const spread = pooledSpread(groups.flatMap(({ start, stop }) => [start.pasts, stop.pasts]));
  const calibrated = groups.map((group) => ({
    thickness: group.thickness,
    start: endOf(group.start, spread, -1),
    stop: endOf(group.stop, spread, 1),
  }));
  const start = calibrated.map((at) => ({ thickness: at.thickness, offset: at.start.offset }));
  const stop = calibrated.map((at) => ({ thickness: at.thickness, offset: at.stop.offset }));
  const samples = (offsets: typeof start) => offsets.map((o) => ({ x: o.thickness, y: o.offset }));
  const result: HeadCalibration = {
    thicknesses: calibrated,
    start,
    stop,
    startLine: fitLine(samples(start)),
    stopLine: fitLine(samples(stop)),
    spread,
    overrun: 2 * spread,
  };
  return succeed(result, warningsOf(result, test));
}

interface Group {
  /** Of the readings that are kept, mm past the corner. */
  readonly pasts: readonly number[];
  /** Indices of the others in the test. */
  readonly standOut: readonly number[];
}

function groupOf(readings: readonly { readonly past: number; readonly index: number }[]): Group {
  const out = standingOut(readings.map(({ past }) => past));
  return {
    pasts: readings.filter((_, i) => !out[i]).map(({ past }) => past),
    standOut: readings.filter((_, i) => out[i]).map(({ index }) => index),
  };
}

function endOf({ pasts, standOut }: Group, spread: number, sign: 1 | -1): EndCalibration {
  const past = mean(pasts);
  const deviation = standardDeviation(pasts);
  const pooled = deviation === undefined || deviation <= OWN_SCATTER * spread;
  return {
    past,
    offset: sign * past,
    kept: pasts.length,
    ...defined({ standardDeviation: deviation }),
    standardError: (pooled ? spread : deviation) / Math.sqrt(pasts.length),
    pooled,
    standOut,
  };
}

/**
 * Pooled over groups, each about its own mean. Readings rounded to 0.1 mm scatter by 0.1/√12 even where the head does not,
 * so that much is always there.
 */
function pooledSpread(groups: readonly (readonly number[])[]): number {
  let square = 0;
  let free = 0;
  for (const group of groups) {
    const middle = mean(group);
    square += group.reduce((sum, v) => sum + (v - middle) ** 2, 0);
    free += group.length - 1;
  }
  const rounding = READING / Math.sqrt(12);
  return free === 0 ? READING : Math.max(Math.sqrt(square / free), rounding);
}

function unusable(test: HeadTest): Problem[] {
  if (test.readings.length === 0) {
    const hint = 'cut the test opening and measure at each corner how far the cut runs past it';
    return [error('calibrate-readings-none', ['readings'], 'there are no readings', hint)];
  }
  const problems: Problem[] = [];
  test.readings.forEach((reading, i) => {
    for (const [key, value] of [
      ['thickness', reading.thickness],
      ['past', reading.past],
    ] as const) {
      const usable = Number.isFinite(value) && (key === 'past' || value > 0);
      if (usable) continue;
      const allowed = key === 'past' ? 'a length, negative for an undercut, is needed' : 'a length over 0 is needed';
      problems.push(error('calibrate-reading-unusable', ['readings', i, key], `${value} is no ${key}, ${allowed}`));
    }
  });
  if (problems.length > 0) return problems;
  for (const thickness of new Set(test.readings.map((r) => r.thickness))) {
    for (const end of ['start', 'stop'] as const) {
      if (test.readings.some((r) => r.thickness === thickness && r.end === end)) continue;
      const message = `there is no reading of a ${end} at ${showLength(thickness, 'mm')}`;
      const hint = 'measure both ends of every side, or leave this thickness out';
      problems.push(error('calibrate-end-missing', ['readings'], message, hint));
    }
  }
  return problems;
}

function warningsOf(result: HeadCalibration, test: HeadTest): Problem[] {
  const found: Problem[] = [];
  const path = ['readings'];
  for (const { thickness, start, stop } of result.thicknesses) {
    for (const [end, its] of [
      ['start', start],
      ['stop', stop],
    ] as const) {
      const where = `${end}s at ${showLength(thickness, 'mm')}`;
      for (const index of its.standOut) {
        const past = showLength(test.readings[index]!.past - test.marksBeyond, 'mm');
        const message = `${past} past the corner stands out of the ${where} and does not count`;
        const hint = 'measure that corner again; if it is so, cut another test';
        found.push(warning('calibrate-reading-stands-out', [...path, index], message, hint));
      }
      if (its.kept < FEW) {
        const message = `only ${its.kept} of the ${where} count, ${FEW} are needed to tell a wrong one`;
        found.push(warning('calibrate-readings-few', path, message, 'cut another test opening'));
      }
    }
  }
  if (result.spread > WIDE_SPREAD) {
    const message = `the ends scatter by ${showLength(result.spread, 'mm')}, a sound head stays under ${showLength(WIDE_SPREAD, 'mm')}`;
    found.push(
      warning('calibrate-head-scatters', path, message, 'look for play in the slide and for a blade that bends'),
    );
  }
  for (const [end, line] of [
    ['start', result.startLine],
    ['stop', result.stopLine],
  ] as const) {
    const largest = Math.max(...line.residuals.map(Math.abs));
    if (line.residuals.length < 3 || largest <= POOR_FIT) continue;
    const message = `the ${end} offsets miss a straight line over thickness by up to ${showLength(largest, 'mm')}`;
    const hint = 'was the blade set or changed between boards? cut all thicknesses with one setting of it';
    found.push(warning('calibrate-fit-poor', path, message, hint));
  }
  return [...found, ...unequalEnds(result)];
}

/** A blade that bends as it is pushed in, or a slide with play at one end of its way, shows as one kind of end scattering alone. */
function unequalEnds(result: HeadCalibration): Problem[] {
  const pooled = (end: 'start' | 'stop'): number => {
    const groups = result.thicknesses.map((t) => t[end]);
    const free = groups.reduce((sum, g) => sum + g.kept - 1, 0);
    const square = groups.reduce((sum, g) => sum + (g.standardDeviation ?? 0) ** 2 * (g.kept - 1), 0);
    return free === 0 ? 0 : Math.sqrt(square / free);
  };
  const [start, stop] = [pooled('start'), pooled('stop')];
  const [worse, wider, narrower] =
    start > stop ? (['starts', start, stop] as const) : (['stops', stop, start] as const);
  if (wider < 2 * READING || wider < 3 * Math.max(narrower, READING / 2)) return [];
  const message = `the ${worse} scatter by ${showLength(wider, 'mm')}, the other ends by ${showLength(narrower, 'mm')}`;
  const hint =
    worse === 'starts'
      ? 'a blade set too deep or worn bends as it is pushed in: set or change it, then calibrate again'
      : 'look for play in the slide towards the end of the stroke, then calibrate again';
  return [warning('calibrate-ends-unequal', ['readings'], message, hint)];
}
