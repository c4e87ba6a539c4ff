import { THICKNESS_PLAY } from '../bench/offsets.ts';
import { BEYOND, SIDE } from '../cutfiles/coupons/bevel.ts';
import { error, fail, type Problem, type Result, succeed } from '../problems/problem.ts';
import type { Plain } from '../read/edit/yaml-print.ts';
import type { OffsetAt } from '../shop/head.ts';
import type { BevelMachine } from '../shop/machine.ts';
import { averaged, errorOf } from './caliper.ts';
import { ofRow } from './head.ts';
import { calibrateHead, type HeadCalibration, type HeadReading } from './head-offsets.ts';
import { CLEARLY, machineOf, written } from './machine.ts';
import { type Context, inMm, type Outcome, rounded } from './outcome.ts';
import type { Readings } from './readings.ts';

/** Readings of one coupon, mm. */
export interface BevelCouponReadings {
  readonly thickness: number;
  /** Eight of them, on the face, as they are read: past the corner. */
  readonly ends: readonly { readonly end: HeadReading['end']; readonly past: number }[];
  /** Of the fallout, across and up together. */
  readonly face?: readonly number[];
  readonly back?: readonly number[];
}

export interface BevelCouponCalibration extends HeadCalibration {
  /** Degrees between blade and face, where the fallout was measured. */
  readonly angle?: { readonly degrees: number; readonly error: number };
  /** How far outside its line the blade comes out at the face; the opening is larger by twice this. */
  readonly aside?: number;
}

/**
 * A head's offsets by the bench's own arithmetic, and from the fallout the angle it really cuts: its back is smaller than
 * its face by 2·t·cot θ. Problems of `calibrateHead`, and `coupon-reading-unusable`, `coupon-fallout-absurd`.
 */
export function calibrateBevelCoupon(readings: BevelCouponReadings): Result<BevelCouponCalibration> {
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

export function fromBevelCoupon(readings: Readings<'bevel-coupon'>, context: Context): Result<Outcome> {
  const machine = machineOf(readings.machine, 'bevel', context);
  if (!machine.ok) return machine;
  const { thickness, starts, stops, face, back } = readings;
  const ends = [
    ...starts.map((past) => ({ end: 'start', past }) as const),
    ...stops.map((past) => ({ end: 'stop', past }) as const),
  ];
  const fallout = face === undefined || back === undefined ? {} : { face, back };
  const solved = calibrateBevelCoupon({ thickness, ends, ...fallout });
  const found = solved.ok ? solved.warnings : solved.problems;
  const problems = [...halfFallout(face, back), ...found.map((problem) => onEnds(problem, ends))];
  if (!solved.ok || problems.some(({ severity }) => severity === 'error')) return fail(problems);
  const known = machine.value?.calibrated === true ? machine.value : undefined;
  const spread = Math.max(0.01, rounded(solved.value.spread, 2));
  const { start, stop } = solved.value;
  const values = {
    start: merged(known?.start, start, thickness),
    stop: merged(known?.stop, stop, thickness),
    spread: inMm(spread),
  };
  const wished = context.state.machineOverruns.has(readings.machine) ? machine.value?.overrun : undefined;
  const words = [
    `bevel head ${readings.machine}, on ${inMm(thickness)} board`,
    ...endWords(solved.value),
    `  one end strays by ${inMm(spread)}; twice that is the overrun, ${inMm(2 * spread)}${wished === undefined ? '' : `, but the shop's file wishes ${inMm(wished)}, which stays`}`,
    ...falloutWords(solved.value, machine.value),
  ];
  const lengths = ['thickness', 'starts', 'stops', 'face', 'back'];
  return written('bevel-coupon', readings, context, { values, lengths, words, result: solved.value }, problems);
}

function endWords({ thicknesses }: BevelCouponCalibration): readonly string[] {
  return thicknesses.flatMap((at) =>
    (['start', 'stop'] as const).map((end) => {
      const { offset, kept: counted, standOut } = at[end];
      const of = counted + standOut.length;
      return `  ${end} ${rounded(offset, 2).toFixed(2)} ± ${ofRow(at[end])} mm, ${counted} of ${of} readings count`;
    }),
  );
}

/** Less is not worth a new setting of the head, mm. Common practice, no source. */
const ASIDE = 0.05;

/** What the fallout tells is set on the machine itself: a layer's bevel is what the job says, not what came out. */
function falloutWords({ angle, aside }: BevelCouponCalibration, machine: BevelMachine | undefined): readonly string[] {
  if (angle === undefined || aside === undefined) return ['  the fallout was not measured: angle and place not known'];
  const said = machine?.bevel;
  const found = `${angle.degrees.toFixed(1)}° ± ${angle.error.toFixed(1)}°`;
  const off = said !== undefined && Math.abs(angle.degrees - said) > CLEARLY * angle.error;
  const where = aside < 0 ? 'inside' : 'outside';
  return [
    `  the blade cuts ${found}${said === undefined ? '' : `, the machine is said to cut ${said}°`}${off ? ': set the head right, then cut the coupon anew' : ''}`,
    `  the face edges lie ${Math.abs(aside).toFixed(2)} mm ${where} of their lines${Math.abs(aside) < ASIDE ? '' : ': move the head by that across its travel, then cut the coupon anew'}`,
  ];
}

function halfFallout(face: readonly number[] | undefined, back: readonly number[] | undefined): readonly Problem[] {
  if ((face === undefined) === (back === undefined)) return [];
  const message = 'face or back of the fallout alone says nothing of the bevel';
  return [error('coupon-reading-unusable', [], message, 'measure both, or leave both out')];
}

/** From the arithmetic's list of ends to the lists that were written. */
function onEnds(problem: Problem, ends: readonly Pick<HeadReading, 'end'>[]): Problem {
  const [first, index] = problem.path;
  if (first !== 'readings') return problem;
  if (typeof index !== 'number') return { ...problem, path: [] };
  const { end } = ends[index]!;
  return { ...problem, path: [`${end}s`, ends.slice(0, index).filter((each) => each.end === end).length] };
}

/** Offsets at other thicknesses stay; what serves for any thickness goes, now that there is one for its own. */
function merged(had: readonly OffsetAt[] | undefined, found: readonly Required<OffsetAt>[], thickness: number): Plain {
  const others = (had ?? []).flatMap(({ thickness: own, offset }) =>
    own !== undefined && Math.abs(own - thickness) > THICKNESS_PLAY + 1e-9 ? [{ thickness: own, offset }] : [],
  );
  return [...others, ...found]
    .sort((a, b) => a.thickness - b.thickness)
    .map((each) => ({ thickness: `${rounded(each.thickness, 4)} mm`, offset: inMm(each.offset) }));
}
