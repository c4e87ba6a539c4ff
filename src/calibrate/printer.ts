import { allSides, type BySide, SIDES } from '../geometry/sides.ts';
import { findPaper } from '../papers/find.ts';
import type { Paper } from '../papers/model.ts';
import { defined } from '../problems/defined.ts';
import { error, fail, type Problem, type Result, succeed, warning } from '../problems/problem.ts';
import type { Edit } from '../shop/edit-shop.ts';
import { type Context, inMm, kept, nameProblems, type Outcome, rounded } from './outcome.ts';
import { calibratePrinter, type PrinterReading } from './printer-scale.ts';
import type { Readings } from './readings.ts';

const LINE = 200;

const percent = (scale: number): string => `${(scale * 100).toFixed(2)} %`;

/** Over the length of a sheet that is a millimetre. Common practice, no source. */
const MOST_SKEW = 0.3;

/** A printer's scale from its jig's sheets, as the shop's file holds it. */
export function fromPrinterReadings(readings: Readings<'printer'>, { shop, date }: Context): Result<Outcome> {
  const wrong = [
    ...nameProblems('printer', readings.printer, [...(shop?.printers.keys() ?? [])]),
    ...paperProblems(readings),
  ];
  if (wrong.length > 0) return fail(wrong);
  const nominal = readings.line ?? LINE;
  const { sheets } = readings;
  const solved = calibratePrinter({
    lines: sheets.flatMap((sheet): PrinterReading[] => [
      { axis: 'x', nominal, measured: sheet.across },
      { axis: 'y', nominal, measured: sheet.down },
    ]),
    diagonals: sheets.flatMap(({ falling, rising }) =>
      falling === undefined || rising === undefined ? [] : [{ width: nominal, height: nominal, falling, rising }],
    ),
  });
  if (!solved.ok) return fail(solved.problems.map(inSheets));
  const { x, y, skew } = solved.value;
  const doubt = wrongPaper(solved.warnings, readings);
  if (doubt !== undefined) return fail([doubt]);
  const axis = (value: typeof x) => `${value.scale.toFixed(4)} ± ${value.uncertainty.toFixed(4)}`;
  const over = (value: typeof x) => `${((value.scale - 1) * nominal).toFixed(2)} mm in ${nominal}`;
  const summary = `x ${axis(x)}, y ${axis(y)}`;
  const blank: BySide<number> | undefined =
    readings.blank === undefined
      ? undefined
      : { ...(shop?.printers.get(readings.printer)?.margin ?? allSides(0)), ...readings.blank };
  const values = {
    x: rounded(x.scale, 5),
    y: rounded(y.scale, 5),
    ...defined({
      margin: blank === undefined ? undefined : Object.fromEntries(SIDES.map((side) => [side, inMm(blank[side])])),
    }),
    date: readings.date ?? date,
  };
  const words = [
    `printer ${readings.printer}: ${sheets.length === 1 ? 'one sheet' : `${sheets.length} sheets`}`,
    `  across  ${axis(x)} of the true length (${over(x)})`,
    `  down    ${axis(y)} of the true length (${over(y)})`,
    ...(skew === undefined ? [] : [`  skew    ${Math.abs(skew).toFixed(2)} mm in 100 mm`]),
    ...(blank === undefined
      ? []
      : [`  stays blank: ${SIDES.map((side) => `${side} ${inMm(blank[side])}`).join(', ')}`]),
    '  every sheet that is printed for this printer is corrected by it from now on, the printer jig excepted',
  ];
  const lengths = ['across', 'down', 'falling', 'rising', 'line', ...SIDES];
  const entry = { ...kept({ ...readings, date: values.date }, lengths), result: summary };
  const edits: readonly Edit[] = [
    { kind: 'set', path: ['printers', readings.printer], values },
    { kind: 'append', path: ['calibrations', 'printer'], value: entry },
  ];
  const result = { printer: readings.printer, x, y, ...defined({ skew, blank }) };
  // Every later sheet would come out wrong.
  const fitted = solved.warnings.find(({ code }) => code === 'calibrate-wrong-paper');
  const question = `Is the printer really off by as much as a sheet that was fitted to another paper (${percent(x.scale)} and ${percent(y.scale)})?`;
  const offered = fitted === undefined ? { edits } : { edits: [], offer: { question, edits } };
  return succeed({ words, result, ...offered }, [...solved.warnings.map(inSheets), ...skewWarning(skew)]);
}

function skewWarning(skew: number | undefined): readonly Problem[] {
  if (skew === undefined || Math.abs(skew) <= MOST_SKEW) return [];
  const message = `the sheet is ${Math.abs(skew).toFixed(2)} mm in 100 mm out of square, which no scale corrects`;
  return [warning('calibrate-printer-skew', ['sheets'], message, 'look how the paper feeds; measure another sheet')];
}

const named = (text: string | undefined): Paper | undefined => {
  const found = text === undefined ? undefined : findPaper(text);
  return found?.ok === true ? found.value : undefined;
};

function paperProblems(readings: Readings<'printer'>): readonly Problem[] {
  return (['madeFor', 'paper'] as const).flatMap((key) => {
    const text = readings[key];
    const found = text === undefined ? undefined : findPaper(text, { path: [key] });
    return found === undefined || found.ok ? [] : found.problems;
  });
}

/**
 * Lengths that a page of one paper fitted to another would have are believed only where the paper that is set is said,
 * and is the one that the sheet was made for.
 */
function wrongPaper(warnings: readonly Problem[], readings: Readings<'printer'>): Problem | undefined {
  const doubt = warnings.find(({ code }) => code === 'calibrate-wrong-paper');
  if (doubt === undefined) return undefined;
  const [madeFor, paper] = [named(readings.madeFor), named(readings.paper)];
  if (madeFor !== undefined && paper !== undefined && madeFor.id === paper.id) return undefined;
  const where: Problem['path'] = readings.paper === undefined ? [] : ['paper'];
  if (madeFor !== undefined && paper !== undefined) {
    const hint = `set ${madeFor.name} at 100 %, print the sheet again and measure that`;
    return error(
      'calibrate-wrong-paper',
      where,
      `${doubt.message}, and ${paper.name} is set for a sheet of ${madeFor.name}`,
      hint,
    );
  }
  const hint =
    'say which paper is set (paper: letter) and which the sheet was made for (madeFor: letter), then it is believed or not';
  return error('calibrate-paper-unsaid', where, doubt.message, hint);
}

/** From the arithmetic's list of lines to the sheets that they stand on. */
function inSheets(problem: Problem): Problem {
  const [list, index] = problem.path;
  if (list !== 'lines' || typeof index !== 'number') return { ...problem, path: ['sheets'] };
  return { ...problem, path: ['sheets', Math.floor(index / 2), index % 2 === 0 ? 'across' : 'down'] };
}
