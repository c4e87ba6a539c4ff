import type { Drawing, Item } from '../drawing/model.ts';
import { type Result, succeed } from '../problems/problem.ts';
import type { Document, Page } from './model.ts';
import type { LayoutOptions } from './options.ts';
import type { Plan } from './plan.ts';
import { wholePlan } from './whole.ts';
import { wholePages } from './whole-pages.ts';

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
  const sheets = wholePages(drawing, plan, options, 2).map(({ page }) => page);
  const title = options.title ?? drawing.title;
  const pages = [checkPage(plan, title), ...sheets];
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

const PENS: Page['pens'] = { scale: { width: 0.2, colour: 0, dash: [], cap: 'butt' } };

function checkPage(plan: Plan, title: string): Page {
  const { sheet } = plan;
  const { x, y } = sheet.area;
  const under: Item[] = [
    {
      kind: 'text',
      text: `${title}: print this first, at 100 %`,
      at: { x, y: y + 8 },
      anchor: 'start',
      size: 6,
      weight: 'bold',
      turn: 0,
      colour: 0,
    },
    { kind: 'line', pen: 'scale', from: { x: x + 10, y: y + 20 }, to: { x: x + 110, y: y + 20 }, id: 'scale-x-100mm' },
    { kind: 'line', pen: 'scale', from: { x: x + 5, y: y + 25 }, to: { x: x + 5, y: y + 125 }, id: 'scale-y-100mm' },
  ];
  return { number: 1, name: 'check', paper: sheet.paper, rotation: 0, scale: sheet.scale, under, over: [], pens: PENS };
}
