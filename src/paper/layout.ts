import { layersOf } from '../drawing/document.ts';
import type { FullScale } from '../drawing/full-scale.ts';
import type { SheetPaper } from '../papers/model.ts';
import { defined } from '../problems/defined.ts';
import { error, fail, type Problem, type Result, succeed, toldOnce, warning } from '../problems/problem.ts';
import { cornerGroups, cornerSheets, sheetsOf } from './corners.ts';
import { checkPages } from './first-sheet/page.ts';
import { type CheckFacts, cornerSteps, gridCaption, joiningSteps } from './first-sheet/words.ts';
import type { MapPlan } from './furniture/assembly-map.ts';
import type { LaidDocument, LaidPage } from './model.ts';
import { onePage } from './one-page.ts';
import type { LayoutOptions } from './options.ts';
import { lapX, lapY, type Plan } from './plan.ts';
import { type MadeSheets, mapSheets, planPages } from './plan-pages.ts';
import { MOST_SHEETS, wholePlan } from './search/whole.ts';
import type { MadeSheet } from './sheet-page.ts';
import { wrongOptions } from './wrong-options.ts';

/** A finished document together with what is said of it before it is written. */
export interface Layout extends LaidDocument {
  /** How many of the pages show a part of the drawing. */
  readonly sheets: number;
  /** Sheets of the grid on which nothing is drawn. */
  readonly skipped: number;
  /** In plain words, for the terminal: `7 pages of Letter: 6 sheets and the first one that checks the printer`. */
  readonly summary: string;
  /** Advice that is no problem: when corner sheets would be the truer way. */
  readonly advice: readonly string[];
}

/** So many of the crowded sheets are named, the others counted. */
const NAMED_SHEETS = 4;

/**
 * Lays a drawing out on paper: the check sheet first, then the sheets in the order of taping; on a roll or to fit, one
 * page. Errors have the codes of `wrongOptions`, `too-many-sheets`, and those of `onePage`.
 */
export function layOut(work: FullScale, options: LayoutOptions): Result<Layout> {
  const wrong = wrongOptions(work, options);
  if (wrong.length > 0) return fail(wrong);
  const { paper } = options;
  if (paper.kind !== 'sheet') {
    const made = onePage(work, paper, options);
    if (!made.ok) return made;
    const { page, crowded, summary } = made.value;
    return finished(work, options, [page], { sheets: 1, skipped: 0, summary, advice: [] }, crowded);
  }
  const lap = options.join === 'butt' ? 0 : options.lap;
  if (options.extent === 'corners') return onCorners(work, paper, lap, options);
  return onGrid(work, paper, lap, options);
}

function onGrid(work: FullScale, paper: SheetPaper, lap: number, options: LayoutOptions): Result<Layout> {
  const plan = wholePlan(work, paper, lap, options);
  if (plan === undefined) {
    return fail([
      error(
        'too-many-sheets',
        [...(options.path ?? []), 'paper'],
        `more than ${MOST_SHEETS} sheets of ${paper.name} would be needed`,
        'take a larger paper or smaller margins and laps',
      ),
    ]);
  }
  const { cells, rows, columns } = plan;
  const skipped = rows * columns - cells.length;
  const facts: CheckFacts = {
    work,
    options,
    paperName: paper.name,
    sheet: plan.sheet,
    rotation: plan.orientation.rotation,
    sheets: cells.length,
    skipped,
    ...defined({ laps: cells.length === 1 ? undefined : { x: lapX(plan), y: lapY(plan) } }),
    joining: joiningSteps(cells.length, options.join),
  };
  const made = planPages(work, plan, options, { sheet: 1, of: cells.length });
  const map = { work, orientation: plan.orientation, sheets: mapSheets(plan), caption: gridCaption(skipped) };
  const check = checkPages(minding(facts, made.warnings), map);
  const advice = cells.length === 1 ? [] : cornerAdvice(work, paper, options, cells.length);
  const summary = summaryOf(check.length, cells.length, paper, plan, skipped);
  return assembled(work, options, check, made, { skipped, summary, advice });
}

function onCorners(work: FullScale, paper: SheetPaper, lap: number, options: LayoutOptions): Result<Layout> {
  const groups = cornerGroups(work, work.board!, paper, lap, options);
  const { plan } = groups[0]!;
  const count = sheetsOf(groups);
  const several = groups.some((group) => group.plan.cells.length > 1);
  const facts: CheckFacts = {
    work,
    options,
    paperName: paper.name,
    sheet: plan.sheet,
    rotation: plan.orientation.rotation,
    sheets: count,
    skipped: 0,
    joining: cornerSteps(count, several, options.join),
  };
  const naming = (i: number) => ({ prefix: `C${i + 1}-`, alone: `C${i + 1}` });
  const map: MapPlan = {
    work,
    orientation: plan.orientation,
    sheets: groups.flatMap((group, i) => mapSheets(group.plan, naming(i)).filter((sheet) => !sheet.skipped)),
    caption: 'Where the sheets lie on the board.',
  };
  const sheets: MadeSheet[] = [];
  const warnings: Problem[] = [];
  groups.forEach((group, i) => {
    const named = { ...naming(i), place: group.label, corner: true, sheet: 1 + sheets.length, of: count };
    const made = planPages(work, group.plan, options, named);
    sheets.push(...made.sheets);
    warnings.push(...made.warnings);
  });
  const made: MadeSheets = { sheets, warnings: toldOnce(warnings) };
  const check = checkPages(minding(facts, made.warnings), map);
  const summary = `${summaryOf(check.length, count, paper, plan, 0)}, laid on by the corners of the board`;
  return assembled(work, options, check, made, { skipped: 0, summary, advice: [] });
}

/**
 * The pages that come out of the printer, and what they are: `7 pages of Letter on its side: 6 sheets (2 blank ones left
 * out) and the first one that checks the printer`.
 */
function summaryOf(
  first: number,
  sheets: number,
  paper: SheetPaper,
  { sheet, orientation }: Plan,
  skipped: number,
): string {
  const side = sheet.sideways ? ' on its side' : '';
  const quarter = orientation.rotation === 0 ? '' : ', the pattern turned by a quarter';
  const count = sheets === 1 ? '1 sheet' : `${sheets} sheets`;
  const blank = skipped === 0 ? '' : ` (${skipped} blank ${skipped === 1 ? 'one' : 'ones'} left out)`;
  const check = first === 1 ? 'the first one that checks the printer' : `the first ${first} that check the printer`;
  return `${first + sheets} pages of ${paper.name}${side}${quarter}: ${count}${blank} and ${check}`;
}

/** A board that is larger than one sheet is served more truly by its own corners. */
function cornerAdvice(work: FullScale, paper: SheetPaper, options: LayoutOptions, sheets: number): readonly string[] {
  if (work.board === undefined) return [];
  const count = cornerSheets(work, work.board, paper, options);
  if (count === undefined) {
    return [
      "Corner sheets (--extent corners) are laid on by the board's own edges: that is truer for a board larger than a sheet, though its corners are too deep for one sheet each, so that some are still taped.",
    ];
  }
  const fewer = count < sheets ? ` and takes ${count} instead of ${sheets}` : '';
  return [
    `Corner sheets (--extent corners) are laid on by the board's own edges instead of being taped: that is truer for a board larger than a sheet${fewer}.`,
  ];
}

function assembled(
  work: FullScale,
  options: LayoutOptions,
  check: readonly LaidPage[],
  { sheets, warnings }: MadeSheets,
  said: Pick<Layout, 'skipped' | 'summary' | 'advice'>,
): Result<Layout> {
  const pages = [...check, ...sheets.map(({ page }) => page)];
  return finished(work, options, pages, { ...said, sheets: sheets.length }, withSheets(sheets), warnings);
}

/** The first sheet warns of what found no room on the others too. */
const minding = (facts: CheckFacts, more: readonly Problem[]): CheckFacts => ({
  ...facts,
  work: { ...facts.work, warnings: [...facts.work.warnings, ...more] },
});

/** What found no room, each with the sheets that it is missing on. */
function withSheets(made: readonly MadeSheet[]): readonly string[] {
  const sheets = new Map<string, string[]>();
  for (const { page, crowded } of made) {
    for (const what of new Set(crowded)) sheets.set(what, [...(sheets.get(what) ?? []), page.name]);
  }
  return [...sheets].map(([what, names]) => {
    const more = names.length - NAMED_SHEETS;
    return `${what} (${names.slice(0, NAMED_SHEETS).join(', ')}${more > 0 ? ` and ${more} more` : ''})`;
  });
}

function finished(
  work: FullScale,
  options: LayoutOptions,
  pages: readonly LaidPage[],
  said: Pick<Layout, 'sheets' | 'skipped' | 'summary' | 'advice'>,
  crowded: readonly string[],
  unset: readonly Problem[] = [],
): Result<Layout> {
  const { drawing, board } = work;
  const title = options.title ?? drawing.title;
  const warnings: readonly Problem[] =
    crowded.length === 0
      ? unset
      : [
          ...unset,
          warning(
            'sheet-crowded',
            [...(options.path ?? []), 'paper'],
            `some sheets are too full for ${crowded.join(', ')}`,
            'take a larger paper',
          ),
        ];
  return succeed(
    {
      title,
      subject: options.subject ?? title,
      language: options.language ?? 'en',
      layers: options.flat === true ? [] : layersOf(drawing),
      drawing,
      ...defined({ board }),
      pages,
      ...said,
    },
    warnings,
  );
}
