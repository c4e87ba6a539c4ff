import type { Drawing } from '../drawing/model.ts';
import { type Result, succeed } from '../problems/problem.ts';
import { checkPages } from './check-page.ts';
import { joiningSteps } from './check-words.ts';
import type { Document } from './model.ts';
import type { LayoutOptions } from './options.ts';
import { lapX, lapY } from './plan.ts';
import { wholePlan } from './whole.ts';
import { mapOf, wholePages } from './whole-pages.ts';

/** A finished document together with what is said of it before it is written. */
export interface Layout extends Document {
  /** How many of the pages show a part of the drawing. */
  readonly sheets: number;
  /** Sheets of the grid on which nothing is drawn. */
  readonly skipped: number;
  /** In plain words, for the terminal: `6 sheets of Letter and the first, which checks the printer`. */
  readonly summary: string;
  /** Advice that is no problem: when corner sheets would be the truer way. */
  readonly advice: readonly string[];
}

/** Lays a drawing out on paper: the check page first, then the sheets in the order of taping. */
export function layOut(drawing: Drawing, options: LayoutOptions): Result<Layout> {
  const { paper } = options;
  if (paper.kind !== 'sheet') throw new TypeError('rolls are not laid out yet');
  const plan = wholePlan(drawing, paper, options.join === 'butt' ? 0 : options.lap, options);
  if (plan === undefined) throw new TypeError('too many sheets');
  const check = checkPages(
    {
      drawing,
      options,
      paperName: paper.name,
      sheet: plan.sheet,
      rotation: plan.turn.rotation,
      sheets: plan.cells.length,
      skipped: plan.rows * plan.columns - plan.cells.length,
      ...(plan.cells.length === 1 ? {} : { laps: { x: lapX(plan), y: lapY(plan) } }),
      joining: joiningSteps(plan.cells.length, options.join),
    },
    mapOf(drawing, plan),
  );
  const sheets = wholePages(drawing, plan, options, check.length + 1).map(({ page }) => page);
  const title = options.title ?? drawing.title;
  const pages = [...check, ...sheets];
  return succeed({
    title,
    subject: options.subject ?? title,
    language: options.language ?? 'en',
    drawing,
    pages,
    sheets: sheets.length,
    skipped: plan.rows * plan.columns - plan.cells.length,
    summary: `${sheets.length} sheets of ${paper.name} and the check page`,
    advice: [],
  });
}
