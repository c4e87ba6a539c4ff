import { error, fail, type Problem, type Result, succeed, warning } from '../problems/problem.ts';
import { BEVEL } from '../shop/bevel-angle.ts';
import { showLength } from '../units/print.ts';
import { type Context, kept, nameProblems, type Outcome, rounded } from './outcome.ts';
import type { Readings } from './readings.ts';
import { READING } from './statistics.ts';

/** A strip with one bevelled edge: its board's thickness, and how wide the bevel is seen from above, mm. */
export interface BevelReading {
  readonly thickness: number;
  readonly setback: number;
}

export interface BevelCalibration {
  /** Degrees from the face of the board. */
  readonly angle: number;
  /** Standard uncertainty, degrees. */
  readonly uncertainty: number;
  /** Each strip's own, in the order given. */
  readonly strips: readonly { readonly angle: number; readonly uncertainty: number }[];
}

/** A caliper on board, which gives a little. Common practice, no source. */
const CALIPER = 0.05;
/** The angle is worth writing down where it is known better than this, degrees: 4-ply board alone gives two. */
const ROUGH = 1.5;
/** No head is set to a flatter bevel, degrees. */
const FLATTEST = 20;

const DEGREES = 180 / Math.PI;

/**
 * The angle of a bevel, tan θ = t / s. A setback read to 0.1 mm is dθ = sin²θ/t·ds: two degrees on a 4-ply board at 45°,
 * so a thick board counts for more. Problems: `calibrate-reading-unusable`, `calibrate-readings-few`.
 */
export function calibrateBevel(readings: readonly BevelReading[]): Result<BevelCalibration> {
  const problems = unusable(readings);
  if (problems.length > 0) return fail(problems);
  const strips = readings.map(({ thickness, setback }) => {
    const theta = Math.atan2(thickness, setback);
    const bySetback = (Math.sin(theta) ** 2 / thickness) * READING;
    const byThickness = ((Math.sin(theta) * Math.cos(theta)) / thickness) * CALIPER;
    return { angle: theta * DEGREES, uncertainty: Math.hypot(bySetback, byThickness) * DEGREES };
  });
  const weights = strips.map((strip) => 1 / strip.uncertainty ** 2);
  const total = weights.reduce((sum, w) => sum + w, 0);
  const angle = strips.reduce((sum, strip, i) => sum + strip.angle * weights[i]!, 0) / total;
  // Strips that differ by more than they can be read do not know it as well as the reading alone says.
  const chi = strips.reduce((sum, strip, i) => sum + (strip.angle - angle) ** 2 * weights[i]!, 0);
  const wider = strips.length < 2 ? 1 : Math.max(1, Math.sqrt(chi / (strips.length - 1)));
  const result = { angle, uncertainty: wider / Math.sqrt(total), strips };
  return succeed(result, warningsOf(result, readings, wider));
}

function unusable(readings: readonly BevelReading[]): Problem[] {
  if (readings.length === 0) {
    const hint = 'cut a strip of thick board and measure its bevel';
    return [error('calibrate-readings-few', ['strips'], 'there are no readings', hint)];
  }
  return readings.flatMap(({ thickness, setback }, i) => {
    if (!(Number.isFinite(thickness) && thickness > 0)) {
      const message = `${thickness} is no thickness, a length over 0 is needed`;
      return [error('calibrate-reading-unusable', ['strips', i, 'thickness'], message, 'measure the board')];
    }
    if (!(Number.isFinite(setback) && setback >= 0)) {
      const message = `${setback} is no setback, a length of 0 or more is needed`;
      return [error('calibrate-reading-unusable', ['strips', i, 'setback'], message, 'measure it with the wedge')];
    }
    if (Math.atan2(thickness, setback) * DEGREES < FLATTEST) {
      const message = `a bevel ${showLength(setback, 'mm')} wide on a board of ${showLength(thickness, 'mm')} is flatter than ${FLATTEST}°`;
      const hint = 'measure square to the edge, from arris to arris as seen from straight above';
      return [error('calibrate-reading-unusable', ['strips', i, 'setback'], message, hint)];
    }
    return [];
  });
}

function warningsOf(result: BevelCalibration, readings: readonly BevelReading[], wider: number): Problem[] {
  const found: Problem[] = [];
  if (result.uncertainty > ROUGH) {
    const thickest = Math.max(...readings.map((r) => r.thickness));
    const message = `on boards up to ${showLength(thickest, 'mm')} the angle is known to ±${result.uncertainty.toFixed(1)}° only`;
    found.push(warning('calibrate-bevel-rough', ['strips'], message, 'cut a strip of a board twice as thick, or more'));
  }
  if (wider > 2) {
    const message = 'the strips differ by more than the wedge can be misread';
    found.push(warning('calibrate-bevel-uneven', ['strips'], message, 'look for a blade that bends, then cut anew'));
  }
  return found;
}

/** Outside this many of its own uncertainties an angle is another one. */
const CLEARLY = 2;

/** The true angle of a head's bevel; the shop's file is changed only where it clearly says another. */
export function fromBevelReadings(readings: Readings<'bevel'>, { shop, date }: Context): Result<Outcome> {
  const wrong = nameProblems('head', readings.head, [...(shop?.heads.keys() ?? [])]);
  if (wrong.length > 0) return fail(wrong);
  const solved = calibrateBevel(readings.strips);
  if (!solved.ok) return solved;
  const { angle, uncertainty, strips } = solved.value;
  const said = shop?.heads.get(readings.head)?.bevel ?? BEVEL;
  const other = Math.abs(angle - said) > CLEARLY * uncertainty;
  const found = `${angle.toFixed(1)}° ± ${uncertainty.toFixed(1)}°`;
  const bevel = rounded(angle, 1);
  const result = other ? `bevel ${found}` : `bevel ${found}, the ${said}° that it is set to`;
  const words = [
    `head ${readings.head}: the bevel is ${found}`,
    ...strips.map((strip, i) => `  strip ${i + 1}: ${strip.angle.toFixed(1)}° ± ${strip.uncertainty.toFixed(1)}°`),
    other
      ? `  the shop's file said ${said}°: it now says ${bevel}°, and every setback follows it`
      : `  that is the ${said}° that it is set to, as far as it can be read; nothing changes`,
  ];
  const entry = { ...kept({ ...readings, date: readings.date ?? date }, ['thickness', 'setback']), result };
  return succeed(
    {
      words,
      result: { head: readings.head, angle, uncertainty, strips, changed: other },
      edits: [
        ...(other ? [{ kind: 'set', path: ['heads', readings.head], values: { bevel } } as const] : []),
        { kind: 'append', path: ['calibrations', 'bevel'], value: entry },
      ],
    },
    solved.warnings,
  );
}
