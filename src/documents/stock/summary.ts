import type { Drawing } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import type { Prices } from '../../shop/prices.ts';
import { type JobToCut, jobName } from '../../stock/blanks.ts';
import type { BoardLayouts } from '../../stock/layouts.ts';
import { money } from '../../stock/prices.ts';
import type { Density, Section } from '../../text/bench-flow.ts';
import { action, BOLD, level, type Part, pair, scaled, TEXT, textPart } from '../../text/bench-type.ts';
import { listedSheets } from '../ticket/page.ts';
import { fine } from '../ticket/steps.ts';
import type { BoardRecord, StockRecord } from './record.ts';
import type { StockSheetOptions } from './sheet.ts';
import { blankName, percent, type Tape, tapeSize } from './words.ts';

type Money = Pick<Prices, 'currency' | 'decimals'>;

const plural = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

/** What is fetched, how good the plan is and what goes back onto the shelf, in front of the sheets. */
export function stockSummary(
  day: readonly BoardLayouts[],
  record: StockRecord,
  jobs: readonly JobToCut[],
  prices: Money,
  { paper, tape, fonts }: StockSheetOptions,
): readonly Drawing[] {
  const shelved = day.flatMap(({ board, layouts }) =>
    layouts.flatMap(({ offcuts, numbers }) =>
      offcuts.flatMap((offcut) =>
        offcut.marks.map(
          (mark, i) => `${mark}: ${board.material.name}, ${tapeSize(offcut, tape)}, from sheet ${numbers[i]}`,
        ),
      ),
    ),
  );
  const actions =
    (texts: readonly string[]) =>
    (width: number, { scale }: Density): readonly Part[] =>
      texts.map((text) => action(text, width, scaled(TEXT, scale), fonts));
  const sections: Section[] = [
    { title: 'Fetch', parts: actions(record.boards.flatMap(fetched)) },
    ...record.boards.map((board): Section => {
      const aside = `${fine(board.thickness)}, ${plural(board.blanks, 'blank')}`;
      return { title: board.name, aside, parts: (width, density) => figures(board, prices, width, density, fonts) };
    }),
    ...(shelved.length === 0
      ? []
      : [{ title: 'Onto the shelf', aside: 'write the mark on each', parts: actions(shelved) }]),
    {
      title: 'Where each blank lies',
      parts: (width, { scale }) => whereabouts(day, jobs, tape, width, scale, fonts),
    },
  ];
  const of = jobs.length === 1 ? jobName(jobs, 0) : plural(jobs.length, 'job');
  const cost = record.cost === undefined ? '' : `, ${money(record.cost, prices)}`;
  const lead = `${of}: ${plural(record.sheets, 'new sheet')}${cost}`;
  return listedSheets({ title: 'Stock plan', name: 'Stock plan', lead, group: 'stock', sections, paper, fonts });
}

function fetched({ name, fetch, shelf, fallouts }: BoardRecord): readonly string[] {
  return [
    ...fetch.map(({ sheet, count }) => `${name}: ${plural(count, 'sheet')} of ${sheet}`),
    ...(shelf.length === 0 ? [] : [`${name}, from the shelf: ${shelf.join(', ')}`]),
    ...(fallouts === 0 ? [] : [`${name}: ${plural(fallouts, 'fallout')}, as the mats are cut`]),
  ];
}

function figures(board: BoardRecord, prices: Money, width: number, { scale }: Density, fonts: Fonts): readonly Part[] {
  const row = (name: string, value: string): Part => pair(name, value, 24 * scale, width, scaled(TEXT, scale), fonts);
  return [
    row('Sheets', `${board.sheets}`),
    row('Proof', proofOf(board, prices)),
    row('Cost', board.cost === undefined ? 'no price listed' : money(board.cost, prices)),
    ...(board.credit === undefined ? [] : [row('Less offcuts', money(board.credit, prices))]),
    ...(board.other === undefined ? [] : [row('Or', otherOf(board.other, prices))]),
    row('Yield', percent(board.yield)),
    row('Kept', percent(board.kept)),
    row('Waste', percent(board.waste)),
  ];
}

/** How good the plan is, in what counts first. */
function proofOf({ first, bound, verdict, gap }: BoardRecord, prices: Money): string {
  if (first === 'sheets') {
    return gap === 0 ? `${verdict}: no plan needs fewer than ${bound.value}` : `${verdict}, which is ${bound.value}`;
  }
  const least = money(bound.value, prices);
  return gap === 0
    ? `${verdict}: no plan costs less than ${least}`
    : `at most ${money(gap, prices)} above the least possible, which is ${least} or more`;
}

/** The best plan by the other rule. */
function otherOf({ first, count, cost }: NonNullable<BoardRecord['other']>, prices: Money): string {
  const said = `${plural(count, 'sheet')} for ${money(cost, prices)}`;
  return `${said}, where ${first === 'cost' ? 'the least cost counts' : 'the fewest sheets count'} first`;
}

/** Every blank with its sheets, job by job. */
function whereabouts(
  day: readonly BoardLayouts[],
  jobs: readonly JobToCut[],
  tape: Tape,
  width: number,
  scale: number,
  fonts: Fonts,
): readonly Part[] {
  const [text, bold] = [scaled(TEXT, scale), scaled(BOLD, scale)];
  const all = day.flatMap(({ board, layouts }) =>
    [...board.blanks].map(([id, blank]) => {
      const on = layouts.filter(({ pieces }) => pieces.some(({ piece }) => piece === id));
      return { blank, sheets: on.flatMap(({ numbers }) => numbers) };
    }),
  );
  const sorted = all.sort((a, b) => a.blank.job - b.blank.job || (a.blank.layer ?? 99) - (b.blank.layer ?? 99));
  return sorted.map(({ blank, sheets }) => {
    const count = blank.count === 1 ? '' : `${blank.count} of `;
    const words = `${count}${blankName({ blank }, jobs)}, ${tapeSize(blank, tape)}`;
    const where = 26 * scale;
    return level([
      [0, textPart(words, width - where, text, fonts)],
      [
        width - where + 2,
        textPart(`${sheets.length === 1 ? 'sheet' : 'sheets'} ${listed(sheets)}`, where - 2, bold, fonts),
      ],
    ]);
  });
}

/** `1, 2, 4 to 6`. */
function listed(numbers: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const number of numbers) {
    const last = runs.at(-1);
    if (last !== undefined && last[1] === number - 1) last[1] = number;
    else runs.push([number, number]);
  }
  const said = ([from, to]: readonly [number, number]): string =>
    to - from < 2 ? `${from}, ${to}` : `${from} to ${to}`;
  return runs.map((run) => (run[0] === run[1] ? `${run[0]}` : said(run))).join(', ');
}
