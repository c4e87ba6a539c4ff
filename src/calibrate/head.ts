import type { Line } from '../bench/fit.ts';
import { beyondCorners, THICKNESS_PLAY } from '../bench/offsets.ts';
import { SIDES } from '../geometry/sides.ts';
import { defined } from '../problems/defined.ts';
import { error, fail, type Problem, type Result, succeed, warning } from '../problems/problem.ts';
import { HEAD, type Head } from '../shop/head.ts';
import { MARKS_BEYOND } from '../shop/readings/head.ts';
import { showLength } from '../units/print.ts';
import { calibrateHead, type EndCalibration, type HeadCalibration, type HeadReading } from './head-offsets.ts';
import { type Context, inMm, kept, nameProblems, type Outcome, rounded, signed } from './outcome.ts';
import type { Readings } from './readings.ts';
import { mean, READING } from './statistics.ts';

/** A corner that ends within this of where it should is clean. Common practice, no source. */
const CLEAN = 0.25;

interface Reading extends HeadReading {
  readonly prick?: number;
  readonly path: Problem['path'];
}

/** A head's offsets from test openings, as the shop's file holds them; or, from a proof, whether they are right. */
export function fromHeadReadings(readings: Readings<'head'>, context: Context): Result<Outcome> {
  const { shop } = context;
  const wrong = nameProblems('head', readings.head, [...(shop?.heads.keys() ?? [])]);
  if (wrong.length > 0) return fail(wrong);
  const head = shop?.heads.get(readings.head);
  if (readings.proof === true && (head === undefined || !context.state.heads.has(readings.head))) {
    const message = `the head ${readings.head} has no offsets that a proof could prove`;
    return fail([
      error('calibrate-proof-first', ['proof'], message, 'calibrate it from the first test, then print the proof'),
    ]);
  }
  const list = ends(readings);
  const proof = readings.proof === true ? head : undefined;
  const marksBeyond = proof?.overrun ?? readings.marks ?? MARKS_BEYOND;
  const solved = calibrateHead({ readings: list, marksBeyond });
  if (!solved.ok) return fail(solved.problems.map((problem) => inPieces(problem, list)));
  const warnings = [
    ...solved.warnings.map((problem) => inPieces(problem, list)),
    ...(proof === undefined ? prickWarnings(list, marksBeyond) : []),
  ];
  const made = proof === undefined ? offsets(solved.value, readings, context) : proved(solved.value, list, proof);
  const date = readings.date ?? context.date;
  const lengths = ['thickness', 'start', 'stop', 'startPrick', 'stopPrick', 'marks'];
  const entry = { ...kept({ ...readings, date }, lengths), result: made.summary };
  return succeed(
    {
      words: [...made.words, `  ${directionWords(head ?? HEAD)}`],
      result: made.result,
      edits: [...made.edits, { kind: 'append', path: ['calibrations', 'head'], value: entry }],
    },
    warnings,
  );
}

/**
 * Boards that differ by no more than a maker's own do are one thickness, their mean: a line through two that lie so near
 * each other would say anything of a third.
 */
function oneThickness(pieces: Readings<'head'>['pieces']): ReadonlyMap<number, number> {
  const groups: number[][] = [];
  for (const thickness of pieces.map((piece) => piece.thickness).sort((a, b) => a - b)) {
    const group = groups.at(-1);
    if (group !== undefined && thickness - group[0]! <= THICKNESS_PLAY + 1e-9) group.push(thickness);
    else groups.push([thickness]);
  }
  return new Map(groups.flatMap((group) => group.map((thickness) => [thickness, rounded(mean(group), 3)] as const)));
}

function ends({ pieces }: Readings<'head'>): readonly Reading[] {
  const thicknesses = oneThickness(pieces);
  return pieces.flatMap((piece, p) =>
    SIDES.flatMap((side) =>
      (['start', 'stop'] as const).flatMap((end): Reading[] => {
        const past = piece[side]?.[end];
        const prick = piece[side]?.[`${end}Prick`];
        if (past === undefined) return [];
        const path = ['pieces', p, side, end];
        return [{ thickness: thicknesses.get(piece.thickness)!, end, past, path, ...defined({ prick }) }];
      }),
    ),
  );
}

/** From the arithmetic's list of readings to the test pieces that they stand on. */
function inPieces(problem: Problem, list: readonly Reading[]): Problem {
  const [, index] = problem.path;
  return { ...problem, path: typeof index === 'number' ? list[index]!.path : ['pieces'] };
}

interface Made extends Outcome {
  /** For the shop's file, on one line. */
  readonly summary: string;
}

/** The uncertainty of a row, which says where it is not the row's own. */
export const ofRow = ({ standardError, pooled }: EndCalibration): string =>
  `${standardError.toFixed(2)}${pooled ? ' (pooled)' : ''}`;

const endWords = (end: 'start' | 'stop', its: EndCalibration, all: number): string => {
  const past = rounded(its.past, 2);
  const deviation =
    its.standardDeviation === undefined ? '' : `, standard deviation ${its.standardDeviation.toFixed(2)}`;
  return `${end}s ${Math.abs(past).toFixed(2)} mm ${past < 0 ? 'short' : 'over'} ± ${ofRow(its)}${deviation}, ${its.kept} of ${all} count`;
};

function thicknessWords({ thicknesses }: HeadCalibration): readonly string[] {
  return thicknesses.flatMap(({ thickness, start, stop }) =>
    [['start', start] as const, ['stop', stop] as const].map(
      ([end, its]) => `  ${inMm(thickness)}: ${endWords(end, its, its.kept + its.standOut.length)}`,
    ),
  );
}

function offsets(found: HeadCalibration, readings: Readings<'head'>, { shop, state, date }: Context): Made {
  const { head } = readings;
  const spread = Math.max(0.01, rounded(found.spread, 2));
  const wished = state.overruns.has(head) ? shop?.heads.get(head)?.overrun : undefined;
  const listed = (offsets: HeadCalibration['start']) =>
    offsets.map(({ thickness, offset }) => ({ thickness: inMm(thickness), offset: inMm(offset) }));
  const values = {
    start: listed(found.start),
    stop: listed(found.stop),
    spread: inMm(spread),
    ...defined({ blade: readings.blade, depth: readings.depth }),
    date: readings.date ?? date,
  };
  const x = wished ?? 2 * spread;
  const first = found.thicknesses[0]!;
  const marks = beyondCorners({ start: first.start.offset, stop: first.stop.offset }, x);
  const words = [
    `head ${head}: ${readings.pieces.length === 1 ? 'one test opening' : `${readings.pieces.length} test openings`}`,
    ...thicknessWords(found),
    ...fitWords('start', found.startLine),
    ...fitWords('stop', found.stopLine),
    `  one end strays by ${inMm(spread)}; twice that is the overrun, ${inMm(2 * spread)}${wished === undefined ? '' : `, but the shop's file wishes ${inMm(wished)}, which stays`}`,
    `  on ${inMm(first.thickness)} board: start mark at u = ${signed(-marks.before)} mm, stop mark at u = L ${signed(marks.after)} mm, from the face corners`,
    '  print the proof (matwright jig head-proof), cut it and measure it before the next job',
  ];
  const summary = found.thicknesses
    .map(({ thickness, start, stop }) => `${inMm(thickness)}: start ${end(start)}, stop ${end(stop)}`)
    .join('; ');
  return {
    summary: shortened(`${summary}; spread ${found.spread.toFixed(2)} mm`),
    words,
    result: { head, ...found, overrun: x },
    edits: [{ kind: 'set', path: ['heads', head], values }],
  };
}

const end = (its: EndCalibration): string => `${rounded(its.offset, 2)} ± ${ofRow(its)} mm`;

/** The shop's file keeps a line of 200 characters at most. */
const shortened = (text: string): string => (text.length > 190 ? `${text.slice(0, 190)} …` : text);

function fitWords(end: 'start' | 'stop', line: Line): readonly string[] {
  const n = line.residuals.length;
  if (n < 2) return [];
  const law = `  ${end} offset = ${signed(line.intercept)} mm ${signed(line.slope)} × thickness`;
  if (n === 2) return [`${law}, exact through the two`];
  const miss = Math.max(...line.residuals.map(Math.abs));
  return [`${law}, misses by ${miss.toFixed(2)} mm at most (R² ${line.determination.toFixed(3)})`];
}

/** The marks already hold offsets and overrun, so the ends should run past the corners by the overrun and no more. */
function proved(found: HeadCalibration, list: readonly Reading[], head: Head): Made {
  const misses = list.map((reading) => reading.past - head.overrun);
  const good = misses.filter((miss) => Math.abs(miss) <= CLEAN + 1e-9).length;
  const hanging = list.filter((reading) => reading.past < -READING / 2).length;
  const means = found.thicknesses.flatMap(({ start, stop }) => [start, stop]);
  const off = means.filter((its) => Math.abs(its.past) > Math.max(2 * its.standardError, READING));
  const clean = off.length === 0 && good >= Math.ceil(0.9 * misses.length);
  const said = `${good} of ${misses.length} ends within ${CLEAN} mm of the wished overrun of ${inMm(head.overrun)}`;
  const words = [
    `head ${head.id}: proof`,
    ...thicknessWords(found).map((line) => `${line}, against the wished overrun`),
    `  ${said}${hanging === 0 ? '' : `; ${hanging} corners hang`}`,
    clean
      ? '  proved: the marks land where the blade does'
      : '  not proved: look to the blade, the slide and the guide, then print the first test again (matwright jig head)',
  ];
  return {
    summary: `${clean ? 'proved' : 'not proved'}: ${said}`,
    words,
    result: { head: head.id, proved: clean, good, ends: misses.length, hanging, thicknesses: found.thicknesses },
    edits: [],
  };
}

/** An end that is read from its pricked mark does not know where the corner is: the two differ where the borders are wrong. */
function prickWarnings(list: readonly Reading[], marksBeyond: number): readonly Problem[] {
  const differences = list.flatMap(({ past, prick }) => (prick === undefined ? [] : [past - marksBeyond - prick]));
  if (differences.length < 4) return [];
  const off = mean(differences);
  if (Math.abs(off) <= 2 * READING) return [];
  const how = off < 0 ? 'narrow' : 'wide';
  const message = `from the corners the ends read ${showLength(Math.abs(rounded(off, 2)), 'mm')} ${off < 0 ? 'less' : 'more'} than from the pricked marks: the borders came out that much too ${how}`;
  const hint = 'calibrate the printer and the guide first, then cut this test again';
  return [warning('calibrate-pricks-disagree', ['pieces'], message, hint)];
}

/** What the readings speak for. */
function directionWords({ opening }: Head): string {
  const round = opening === 'left' ? 'counterclockwise' : 'clockwise';
  return `this speaks for strokes with the opening on the ${opening} hand, ${round} round it as seen from the back; a stroke the other way has its own offsets`;
}
