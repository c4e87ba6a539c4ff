import type { Readings } from '../job/readings.ts';
import { type Problem, type Result, succeed, warning } from '../problems/problem.ts';
import { showLength } from '../units/print.ts';
import { calibrateGuide } from './calibrate-guide.ts';
import { type Context, inMm, kept, type Outcome, rounded, signed } from './outcome.ts';

/** The guide's scale from strips, as the shop's file holds it. */
export function fromGuideReadings(readings: Readings<'guide'>, { shop, date }: Context): Result<Outcome> {
  const { strips } = readings;
  const solved = calibrateGuide(strips.map(({ setting, width }) => ({ reading: setting, measured: width })));
  if (!solved.ok) return { ok: false, problems: solved.problems.map(inStrips) };
  const { a, b, line, standOut, rest } = solved.value;
  const before = shop?.guide?.setAt;
  const setAt = readings.thickness ?? before;
  const missing: Problem[] = [];
  if (before !== undefined && readings.thickness === undefined) {
    const message = `the thickness of the strips' board is not given; it is taken for the ${showLength(before, 'mm')} that the guide was set at`;
    missing.push(warning('calibrate-thickness-missing', [], message, 'give thickness: as measured'));
  }
  const errors =
    line.slopeError === undefined ? '' : ` (a ± ${line.interceptError!.toFixed(2)}, b ± ${line.slopeError.toFixed(4)})`;
  const summary = `a ${inMm(a)}, b ${rounded(b, 5)}${errors}`;
  const words = [
    `guide: true setting = ${signed(a)} mm + ${b.toFixed(5)} × reading${errors}`,
    ...keptStrips(solved.value.kept, strips, line.residuals),
    ...standOut.map((i) => `  set to ${inMm(strips[i]!.setting)}: stands out, does not count`),
    `  ${REST[rest]}`,
  ];
  const values = {
    a: inMm(a),
    b: rounded(b, 5),
    ...(setAt === undefined ? {} : { setAt: inMm(setAt) }),
    date: readings.date ?? date,
  };
  const entry = { ...kept({ ...readings, date: values.date }, ['thickness', 'setting', 'width']), result: summary };
  return succeed(
    {
      words,
      result: { a, b, line, standOut, rest, ...(setAt === undefined ? {} : { setAt }) },
      edits: [
        { kind: 'set', path: ['guide'], values },
        { kind: 'append', path: ['calibrations', 'guide'], value: entry },
      ],
    },
    [...missing, ...solved.warnings.map(inStrips)],
  );
}

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
