import type { HeadReading } from '../../bench/calibrate-head.ts';
import { located } from '../../bench/calibration.ts';
import { THICKNESS_PLAY } from '../../bench/offsets.ts';
import { type Context, inMm, kept, nameProblems, type Outcome, rounded } from '../../bench/outcome.ts';
import { type Readings, readReadings } from '../../job/readings.ts';
import { error, fail, type Problem, type Result, succeed } from '../../problems/problem.ts';
import type { Plain } from '../../read/edit/yaml-print.ts';
import type { CouponKind } from '../../shop/coupon-readings-schema.ts';
import type { OffsetAt } from '../../shop/head.ts';
import type { BevelMachine, Machine, MachineKind } from '../../shop/machine.ts';
import { type BevelCalibration, calibrateBevel } from './bevel.ts';
import { calibrateKnife } from './knife.ts';
import { calibrateLaser, type LaserCalibration } from './laser.ts';

/** What differs from its nominal by no more standard errors than this is taken to be it. */
const CLEARLY = 2;

interface Values {
  readonly [key: string]: Plain;
}

interface Request {
  readonly text: string;
  readonly file: string;
}

/** What the coupon of a machine comes to, as the shop's file holds it. Problems carry file, line and column. */
export function couponOutcome(kind: CouponKind, request: Request, context: Context): Result<Outcome> {
  switch (kind) {
    case 'laser':
      return located(readReadings('laser', request), (readings) => laser(readings, context));
    case 'knife':
      return located(readReadings('knife', request), (readings) => knife(readings, context));
    case 'bevel-coupon':
      return located(readReadings('bevel-coupon', request), (readings) => bevel(readings, context));
    default: {
      const never: never = kind;
      throw new TypeError(`unknown kind ${JSON.stringify(never)}`);
    }
  }
}

/** A caliper on ten strips reads finer than a hundredth. */
const fine = (mm: number): string => `${rounded(mm, 3)} mm`;
const give = (mm: number, by: number): string => `${mm.toFixed(3)} ± ${by.toFixed(3)} mm`;

function laser(readings: Readings<'laser'>, context: Context): Result<Outcome> {
  const machine = machineOf(readings.machine, 'laser', context);
  if (!machine.ok) return machine;
  const { stripsX, stripsY, square } = readings;
  const solved = calibrateLaser({ stripsX, stripsY, ...(square === undefined ? {} : { square }) });
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

function knife(readings: Readings<'knife'>, context: Context): Result<Outcome> {
  const machine = machineOf(readings.machine, 'knife', context);
  if (!machine.ok) return machine;
  const solved = calibrateKnife(readings);
  if (!solved.ok) return solved;
  const { offset, offsetError } = solved.value;
  const words = [`knife ${readings.machine}: its tip trails its axis by ${give(offset, offsetError)}`];
  const told = { values: { offset: fine(offset) }, lengths: ['sides', 'diagonals'], words, result: solved.value };
  return written('knife', readings, context, told, solved.warnings);
}

function bevel(readings: Readings<'bevel-coupon'>, context: Context): Result<Outcome> {
  const machine = machineOf(readings.machine, 'bevel', context);
  if (!machine.ok) return machine;
  const { thickness, starts, stops, face, back } = readings;
  const ends = [
    ...starts.map((past) => ({ end: 'start', past }) as const),
    ...stops.map((past) => ({ end: 'stop', past }) as const),
  ];
  const fallout = face === undefined || back === undefined ? {} : { face, back };
  const solved = calibrateBevel({ thickness, ends, ...fallout });
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

function endWords({ thicknesses }: BevelCalibration): readonly string[] {
  return thicknesses.flatMap((at) =>
    (['start', 'stop'] as const).map((end) => {
      const { offset, standardError, kept: counted, standOut } = at[end];
      const of = counted + standOut.length;
      return `  ${end} ${rounded(offset, 2).toFixed(2)} ± ${standardError.toFixed(2)} mm, ${counted} of ${of} readings count`;
    }),
  );
}

/** What the fallout tells is set on the machine itself: a layer's bevel is what the job says, not what came out. */
function falloutWords({ angle, aside }: BevelCalibration, machine: BevelMachine | undefined): readonly string[] {
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

/** Less is not worth a new setting of the head, mm. Common practice, no source. */
const ASIDE = 0.05;

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
function merged(had: readonly OffsetAt[] | undefined, found: readonly OffsetAt[], thickness: number): Plain {
  const others = (had ?? []).filter(
    (each) => each.thickness !== undefined && Math.abs(each.thickness - thickness) > THICKNESS_PLAY + 1e-9,
  );
  return [...others, ...found]
    .sort((a, b) => a.thickness! - b.thickness!)
    .map((each) => ({ thickness: `${rounded(each.thickness!, 4)} mm`, offset: inMm(each.offset) }));
}

/** The machine that is meant: one of the shop's, or undefined for one that is new to it. */
function machineOf<K extends MachineKind>(
  name: string,
  kind: K,
  { shop }: Context,
): Result<Extract<Machine, { kind: K }> | undefined> {
  const machine = shop?.machines.get(name);
  if (machine === undefined) {
    const wrong = nameProblems('machine', name, [...(shop?.machines.keys() ?? [])]);
    return wrong.length > 0 ? fail(wrong) : succeed(undefined);
  }
  if (machine.kind === kind) return succeed(machine as Extract<Machine, { kind: K }>);
  const own = [...(shop?.machines.values() ?? [])].filter((each) => each.kind === kind).map(({ id }) => id);
  const hint = own.length === 0 ? 'is it the right name?' : `of that kind there is ${own.join(', ')}`;
  const message = `${name} is a machine of the kind ${machine.kind}, these are readings of a ${kind}`;
  return fail([error('coupon-machine-kind', ['machine'], message, hint)]);
}

interface Told {
  readonly values: Values;
  /** Keys of the readings that are lengths. */
  readonly lengths: readonly string[];
  readonly words: readonly string[];
  readonly result: object;
}

function written(
  kind: CouponKind,
  readings: Readings<CouponKind>,
  { shop, date }: Context,
  { values, lengths, words, result }: Told,
  warnings: readonly Problem[],
): Result<Outcome> {
  const { machine } = readings;
  const its: MachineKind = kind === 'bevel-coupon' ? 'bevel' : kind;
  // A name that is its kind's own says it already.
  const named = shop?.machines.has(machine) === true || machine === its ? {} : { kind: its };
  const entry = { ...kept({ ...readings, date: readings.date ?? date }, lengths), result: words.slice(0, 3).join(';') };
  return succeed(
    {
      words,
      result: { machine, ...result },
      edits: [
        { kind: 'set', path: ['machines', machine], values: { ...named, ...values } },
        { kind: 'append', path: ['calibrations', kind], value: entry },
      ],
    },
    warnings,
  );
}
